/**
 * Text broken between words into lines of at most `width`; a longer word stands by itself. Runs of white space count
 * as one space.
 * @param widthOf width of a line, in the unit of `width`: characters, unless a font measures it
 */
export function wrapped(
  text: string,
  width: number,
  widthOf: (line: string) => number = (line) => line.length,
): string[] {
  const lines: string[] = [];
  for (const word of text.trim().split(/\s+/)) {
    const last = lines.at(-1);
    if (last === undefined || widthOf(`${last} ${word}`) > width) lines.push(word);
    else lines[lines.length - 1] = `${last} ${word}`;
  }
  return lines;
}
