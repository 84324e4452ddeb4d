/** Widths of the one font of all drawings, so that a text's place is known before it is drawn. */

/** Height of the capitals over the size of the font: Helvetica by the AFM of Adobe's core fonts. */
export const CAPITALS = 0.718;
/** Depth of g and y below the base line, over the size. */
const DESCENT = 0.207;

/** Advance widths of the characters from space to tilde, thousandths of the size (the same AFM). */
const ascii = [
  278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556,
  556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833,
  722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556,
  556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334,
  260, 334, 584,
];
const others: Readonly<Record<string, number>> = {
  '°': 400,
  '±': 584,
  '×': 584,
  Ø: 778,
  '–': 556,
  '’': 222,
  '‘': 222,
  '“': 333,
  '”': 333,
  '·': 278,
  '…': 1000,
  '²': 333,
};
/** Of what is not listed: wider than nearly all letters. */
const UNKNOWN = 778;

/** Width of a line of text, mm, with capitals of the given height. */
export function textWidth(text: string, height: number): number {
  let sum = 0;
  for (const letter of text) sum += ascii[(letter.codePointAt(0) ?? 0) - 32] ?? others[letter] ?? UNKNOWN;
  return (sum / 1000) * (height / CAPITALS);
}

/** How far letters reach below the base line, mm. */
export const descentOf = (height: number): number => (DESCENT / CAPITALS) * height;
