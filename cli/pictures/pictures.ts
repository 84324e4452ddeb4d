/** Pictures of the README, taken from a build book as files of their own. */

/** What is shown, by the name of its file, and where it stands in the book. */
const shown: readonly { readonly name: string; readonly start: string }[] = [
  { name: 'dish', start: '<figure id="drawn"><svg ' },
  { name: 'step', start: '<svg class="dish stepped" viewBox="0 0 1000 800" role="img" aria-label="Ribs ' },
  { name: 'sheet', start: '<svg class="sheet" ' },
  { name: 'forecast', start: 'aria-labelledby="plot-heat-up-title' },
];

/** The rules for pictures of the book's style, as they hold for a picture that stands alone by day. */
function styleOf(book: string): string {
  const style = /<style>(.*?)<\/style>/s.exec(book)?.[1];
  if (style === undefined) throw new Error('the book has no style');
  const [screen = ''] = style.split('@media print');
  return screen
    .split('\n')
    .filter((line) => line.trim() !== '' && !line.startsWith('@media') && !/^(?:html|body|table|nav|th)\b/.test(line))
    .join('\n')
    .replace(/@media screen and \(prefers-color-scheme:dark\)\{:root.*?\}\}/s, '')
    .replaceAll(':is(figure,.pane)>svg', 'svg')
    .replaceAll('svg:not(.forecast-plot,.shop)', 'svg')
    .concat('\nsvg{background:#fffdf8;font-family:sans-serif;color:#1f2d36}');
}

function pictureAt(book: string, start: string): string {
  const found = book.indexOf(start);
  const from = book.lastIndexOf('<svg ', found + start.length);
  const end = book.indexOf('</svg>', from);
  if (found < 0 || from < 0 || end < 0) throw new Error(`the book has no picture that starts with ${start}`);
  return book.slice(from, end + '</svg>'.length);
}

/** Each picture as the text of an SVG file, by its name. */
export function picturesOf(book: string): ReadonlyMap<string, string> {
  const style = styleOf(book);
  return new Map(
    shown.map(({ name, start }) => {
      const svg = pictureAt(book, start);
      const named = svg.includes('xmlns=') ? svg : svg.replace('<svg ', '<svg xmlns="http://www.w3.org/2000/svg" ');
      const own = name === 'forecast' ? 'svg{background:#fffdf8;font-family:sans-serif;color:#1f2d36}' : style;
      return [name, `${named.replace('>', () => `><style>${own}</style>`)}\n`] as const;
    }),
  );
}
