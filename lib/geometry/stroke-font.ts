/** Text as open paths, for scribing: one pass of the tool or beam draws each stroke. */
import { bulgeOfSweep } from './arc.js';
import { rotate } from './point.js';
import { glyphSources, missingGlyph, type GlyphSource } from './stroke-glyphs.js';
import type { Path, Point } from './types.js';

/** Grid units in the capital height; see the glyphs. */
const CAPITAL = 6;
/** Gap between two letters, and the width of a space, grid units. */
const GAP = 1.75;
const SPACE = 2.5;

interface Glyph {
  readonly width: number;
  readonly strokes: readonly Path[];
}

function readStroke(text: string): Path {
  return text.split(' ').map((token) => {
    const [place = '', degrees = '0'] = token.split('@');
    const [x = NaN, y = NaN] = place.split(',').map(Number);
    return { x, y, bulge: bulgeOfSweep((Number(degrees) * Math.PI) / 180) };
  });
}

const readGlyph = ({ width, strokes }: GlyphSource): Glyph => ({ width, strokes: strokes.split(';').map(readStroke) });

const glyphs: ReadonlyMap<string, Glyph> = new Map([
  [' ', { width: SPACE, strokes: [] }],
  ...Object.entries(glyphSources).map(([letter, source]): [string, Glyph] => [letter, readGlyph(source)]),
]);
const missing = readGlyph(missingGlyph);

/** Characters that are drawn as another. */
const alike: Readonly<Record<string, string>> = {
  '\u2013': '-',
  '\u2014': '-',
  '\u2212': '-',
  '\u2019': "'",
  '\u2033': '"',
  '\u2032': "'",
};

/** The glyphs of a text. An accented letter the font lacks loses its accent; what it lacks altogether becomes a box. */
function glyphsOf(text: string): Glyph[] {
  return Array.from(text.normalize('NFC')).map((letter) => {
    const plain = alike[letter] ?? letter;
    return glyphs.get(plain) ?? glyphs.get(plain.normalize('NFD').charAt(0)) ?? missing;
  });
}

/** Whether the font has this character itself (not a box, and with its accent). */
export function hasStrokes(letter: string): boolean {
  return glyphs.has(alike[letter] ?? letter);
}

/**
 * Width of a line of text (mm) from the first letter's left to the last letter's right.
 * @param height capital height, mm, above 0
 */
export function strokeTextWidth(text: string, height: number): number {
  const line = glyphsOf(text);
  const units = line.reduce((sum, { width }) => sum + width, 0) + GAP * Math.max(0, line.length - 1);
  return (units * height) / CAPITAL;
}

/**
 * A line of text in the single-line font.
 * @param at lower left corner of the first letter, on the base line; descenders reach height/3 below it
 * @param height capital height, mm, above 0
 * @param angle direction of the line, radians, anticlockwise from +x
 * @returns the strokes in the order of writing, as open paths (a ring such as that of `o` ends where it began)
 * @throws RangeError when the height is not above 0
 */
export function strokeText(text: string, at: Point, height: number, angle: number): Path[] {
  if (!(height > 0)) throw new RangeError(`the height of text must be above 0, not ${height}`);
  const scale = height / CAPITAL;
  let pen = 0;
  return glyphsOf(text).flatMap(({ width, strokes }) => {
    const left = pen;
    pen += width + GAP;
    return strokes.map((stroke) =>
      stroke.map(({ x, y, bulge }) => {
        const turned = rotate({ x: (left + x) * scale, y: y * scale }, angle);
        return { x: at.x + turned.x, y: at.y + turned.y, bulge };
      }),
    );
  });
}
