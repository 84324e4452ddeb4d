/**
 * The one writer of DXF tags. A DXF file is a list of tags, each a group code and a value; what kind of value a code
 * takes is fixed by the code (Autodesk, DXF Reference, AutoCAD 2012, "Group Code Value Types").
 *
 * The tags are written here and not by a library, because the one at hand sorts entities by layer, which loses the
 * cutting order; counts handles on from file to file, so that the same drawing gives other bytes the second time; and
 * gives a layer either an index colour or a true colour, never both.
 */
import { decimal } from '../decimal.js';

export type Tag = readonly [code: number, value: string | number];

/** Codes 10 to 59 and 140 to 149 are real numbers. */
function isReal(code: number): boolean {
  return (code >= 10 && code <= 59) || (code >= 140 && code <= 149);
}

/** Bulge of a polyline vertex: a ratio, which needs more decimals than a length to place an arc as well. */
const BULGE = 42;
const BULGE_DIGITS = 12;
/** A nanometre. */
const LENGTH_DIGITS = 6;

function valueText([code, value]: Tag): string {
  if (typeof value === 'string') {
    // a line break would begin a tag of its own
    if (!/^[\x20-\x7e]*$/.test(value)) throw new RangeError(`cannot write ${JSON.stringify(value)} into a DXF file`);
    return value;
  }
  if (isReal(code)) return decimal(value, code === BULGE ? BULGE_DIGITS : LENGTH_DIGITS);
  if (!Number.isSafeInteger(value)) throw new RangeError(`group code ${code} takes a whole number, not ${value}`);
  return String(value);
}

/**
 * The text of a DXF file: a line for each code and each value, lines ended as on Windows, where most readers run.
 * Numbers that are real by their code are rounded to 1e-6 (a bulge to 1e-12).
 * @throws RangeError for text that is not printable ASCII, a fraction where a whole number belongs, or no number
 */
export function dxfText(tags: readonly Tag[]): string {
  return tags.map((tag) => `${String(tag[0]).padStart(3)}\r\n${valueText(tag)}\r\n`).join('');
}

/** The point whose codes begin at `code`: 10, 20, 30. */
export function pointTags(code: number, x: number, y: number, z?: number): Tag[] {
  const plane: Tag[] = [
    [code, x],
    [code + 10, y],
  ];
  return z === undefined ? plane : [...plane, [code + 20, z]];
}
