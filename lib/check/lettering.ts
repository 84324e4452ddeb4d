/**
 * The strokes that a text should have. The proof reads the font's data (`glyphSources`: points on a grid) and sets the
 * letters by itself, so that neither a slip in setting them nor a change in a file goes by.
 */
import { glyphSources, missingGlyph } from '../geometry/stroke-glyphs.js';
import type { Vertex } from '../geometry/index.js';
import type { LabelRead } from './job-reader.js';

/** Units of the grid in a capital's height, between two letters, and in a space. */
const capital = 6;
const between = 1.75;
const space = 2.5;

/** Dashes, minus, apostrophe, minutes and seconds are drawn as the signs of a typewriter. */
const plainSigns: readonly (readonly [RegExp, string])[] = [
  [/[\u2013\u2014\u2212]/gu, '-'],
  [/[\u2019\u2032]/gu, "'"],
  [/\u2033/gu, '"'],
];

function glyphOf(letter: string): { readonly width: number; readonly strokes: string } {
  if (letter === ' ') return { width: space, strokes: '' };
  // an accent that the font lacks is left out
  const [bare = letter] = Array.from(letter.normalize('NFD'));
  return glyphSources[letter] ?? glyphSources[bare] ?? missingGlyph;
}

/** The strokes of a label of one copy, in the part's own axes. */
export function strokesOf({ text, x, y, height, angleDeg }: LabelRead, copy: number): Vertex[][] {
  const shown = spelling(text, copy);
  const line = plainSigns.reduce((sum, [signs, plain]) => sum.replace(signs, plain), shown.normalize('NFC'));
  const unit = height / capital;
  const cos = Math.cos((angleDeg * Math.PI) / 180);
  const sin = Math.sin((angleDeg * Math.PI) / 180);
  let left = 0;
  return Array.from(line).flatMap((letter) => {
    const { width, strokes } = glyphOf(letter);
    const start = left;
    left += width + between;
    return strokes
      .split(';')
      .filter((stroke) => stroke !== '')
      .map((stroke) =>
        Array.from(stroke.matchAll(/(-?[\d.]+),(-?[\d.]+)(?:@(-?\d+))?/g), ([, across, up, degrees]): Vertex => {
          const along = (start + Number(across)) * unit;
          const rise = Number(up) * unit;
          const bulge = Math.tan((Number(degrees ?? 0) * Math.PI) / 720);
          return { x: x + along * cos - rise * sin, y: y + along * sin + rise * cos, bulge };
        }),
      );
  });
}

/** What a label of one copy reads. */
export function spelling(text: string, copy: number): string {
  return text.split('{n}').join(String(copy));
}
