/**
 * The letters of the single-line font against those of a published typeface (DejaVu Sans, Debian's fonts-dejavu-core),
 * as pictures by resvg. Writer and proof read one table of strokes, so that a letter which is wrong there would be
 * wrong in both, and no other test would see it.
 */
import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { strokeText } from '../../lib/geometry/index.js';

const letters = Array.from('ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789.,-/()ø"\':+=#');
const font = '/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf';
/** Capital height, base line and side of a picture, px; capital height of DejaVu Sans, em. */
const capital = 40;
const baseLine = 64;
const side = 96;
const capitalEm = 0.729;
/** Columns of a picture once its letter is as wide as any other, and the width up to which a letter is left narrow, px. */
const columns = 32;
const narrow = 14;

/** Darkness of each pixel, 0 to 1. */
function drawn(content: string): (x: number, y: number) => number {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${side}" height="${side}">${content}</svg>`;
  const image = new Resvg(svg, { font: { fontFiles: [font], loadSystemFonts: false } }).render();
  const { pixels, width } = image;
  return (x, y) => (x < 0 || y < 0 || x >= width || y >= width ? 0 : pixels[4 * (y * width + x) + 3]! / 255);
}

/** A letter as a picture whose width is normalised, a little blurred, of length 1. */
function picture(content: string): Float64Array {
  const dark = drawn(content);
  const used = Array.from({ length: side }, (_, x) => x).filter((x) =>
    Array.from({ length: side }, (__, y) => dark(x, y)).some((one) => one > 0.5),
  );
  const [from, to] = [used[0] ?? 0, used.at(-1) ?? side - 1];
  const width = Math.max(narrow, to - from);
  const middle = (from + to) / 2;
  const cells = new Float64Array(columns * side);
  for (let y = 0; y < side; y += 1)
    for (let i = 0; i < columns; i += 1) {
      const x = middle + ((i + 0.5) / columns - 0.5) * width * 1.2;
      let sum = 0;
      for (let dy = -3; dy <= 3; dy += 1) for (let dx = -3; dx <= 3; dx += 1) sum += dark(Math.round(x + dx), y + dy);
      cells[y * columns + i] = sum;
    }
  const length = Math.hypot(...cells);
  return cells.map((one) => one / length);
}

const alike = (a: Float64Array, b: Float64Array): number => a.reduce((sum, one, i) => sum + one * b[i]!, 0);

function ours(letter: string): string {
  const paths = strokeText(letter, { x: side / 3, y: 0 }, capital, 0).map((stroke) => {
    // the bulge of an arc gives its radius
    const [first, ...rest] = stroke;
    const to = rest.map(({ x, y }, i) => {
      const { bulge, ...a } = stroke[i]!;
      if (bulge === 0) return `L${x} ${baseLine - y}`;
      const radius = (Math.hypot(x - a.x, y - a.y) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
      return `A${radius} ${radius} 0 ${Math.abs(bulge) > 1 ? 1 : 0} ${bulge > 0 ? 0 : 1} ${x} ${baseLine - y}`;
    });
    return `<path d="M${first!.x} ${baseLine - first!.y}${to.join('')}"/>`;
  });
  return `<g fill="none" stroke="#000" stroke-width="5">${paths.join('')}</g>`;
}

const escaped: Readonly<Record<string, string>> = { '"': '&quot;', "'": '&apos;' };
const theirs = (letter: string): string =>
  `<text x="${side / 3}" y="${baseLine}" font-family="DejaVu Sans" font-size="${capital / capitalEm}">${escaped[letter] ?? letter}</text>`;

describe.runIf(process.env['DISHWRIGHT_OUTSIDE'] === '1')('the letters that are scribed', () => {
  const scribed = letters.map((letter) => picture(ours(letter)));
  const printed = letters.map((letter) => picture(theirs(letter)));
  const likeness = scribed.map((a) => printed.map((b) => alike(a, b)));

  /** Pairs that may be taken for each other as pictures: I has two bars here and none there, a dash is half an equals sign. */
  const unlike = ['Il', '-='];

  it('are like the printed ones: no two would do better exchanged', () => {
    const exchanged = letters.flatMap((a, i) =>
      letters.flatMap((b, k) => {
        const asTheyAre = likeness[i]![i]! + likeness[k]![k]!;
        return k > i && likeness[i]![k]! + likeness[k]![i]! >= asTheyAre ? [a + b] : [];
      }),
    );
    expect(exchanged).toEqual(unlike);
  });

  it('are nearest to their own, or fourth of all signs at the worst', () => {
    // J hangs below the line there and has no hook; a dash is as wide as any letter once widths are alike
    const far = letters.filter((_, i) => likeness[i]!.filter((one) => one > likeness[i]![i]!).length > 4);
    expect(far).toEqual(['J', '-']);
  });

  it.each([
    ['left to right', 'scale(-1 1)', side / 3 + capital / 3],
    ['upside down', 'scale(1 -1)', side / 3 + capital / 3],
  ])('are not %s', (_, scale, x) => {
    const y = baseLine - capital / 2;
    const turn = (content: string): string =>
      `<g transform="translate(${x} ${y}) ${scale} translate(${-x} ${-y})">${content}</g>`;
    // of a letter that is nearly its own image nothing can be seen
    const plain = letters.filter(
      (letter, i) => /[A-Za-z0-9]/.test(letter) && alike(printed[i]!, picture(turn(theirs(letter)))) < 0.85,
    );
    expect(plain.length).toBeGreaterThan(20);
    const turned = plain.filter((letter) => {
      const i = letters.indexOf(letter);
      return alike(picture(turn(ours(letter))), printed[i]!) >= likeness[i]![i]!;
    });
    expect(turned).toEqual([]);
  });
});
