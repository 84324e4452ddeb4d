/**
 * The letters of the single-line font: what a scribing tool draws with one pass. Drawn for this program from straight
 * runs and circular arcs, on a grid of which 6 are the capital height, 4 the height of small letters, and -2 the
 * depth of descenders. Strokes of a letter that run side by side keep 1.5 or more apart (a quarter of the capital
 * height), so that a wide groove does not fill it. Letters that are taken for one another at the bench differ
 * plainly: 0 is crossed, 1 stands on a foot, I has two bars, l a hook, Q and R tails.
 *
 * A stroke is a list of points `x,y`; `x,y@90` says that an arc of 90 degrees (anticlockwise positive) follows.
 * Strokes are divided by `;`. The width is the letter's own; the gap to the next letter comes on top.
 */
export interface GlyphSource {
  readonly width: number;
  readonly strokes: string;
}

const glyph = (width: number, strokes: string): GlyphSource => ({ width, strokes });

const ring = '4,2@180 0,2@180 4,2';
const capitalRing = '4,2 4,4@180 0,4 0,2@180 4,2';

export const glyphSources: Readonly<Record<string, GlyphSource>> = {
  A: glyph(4, '0,0 2,6 4,0;0.667,2 3.333,2'),
  B: glyph(4, '0,0 0,6 2.5,6@-180 2.5,3 0,3;2.5,3@-180 2.5,0 0,0'),
  C: glyph(4, '4,4@180 0,4 0,2@180 4,2'),
  D: glyph(4, '0,0 0,6 1,6@-180 1,0 0,0'),
  E: glyph(4, '4,6 0,6 0,0 4,0;0,3 3,3'),
  F: glyph(4, '4,6 0,6 0,0;0,3 3,3'),
  G: glyph(4, '4,4@180 0,4 0,2@180 4,2 4,3 2.5,3'),
  H: glyph(4, '0,0 0,6;4,6 4,0;0,3 4,3'),
  I: glyph(3, '0,0 3,0;1.5,0 1.5,6;0,6 3,6'),
  J: glyph(4, '4,6 4,2@-180 0,2'),
  K: glyph(4, '0,6 0,0;4,6 0,2;1.333,3.333 4,0'),
  L: glyph(4, '0,6 0,0 4,0'),
  M: glyph(5, '0,0 0,6 2.5,2 5,6 5,0'),
  N: glyph(4, '0,0 0,6 4,0 4,6'),
  O: glyph(4, capitalRing),
  P: glyph(4, '0,0 0,6 2.5,6@-180 2.5,3 0,3'),
  Q: glyph(4, `${capitalRing};2.25,1.75 4.25,-0.25`),
  R: glyph(4, '0,0 0,6 2.5,6@-180 2.5,3 0,3;2,3 4,0'),
  S: glyph(4, '4,4.5@90 2.5,6 1.5,6@180 1.5,3 2.5,3@-180 2.5,0 1.5,0@-90 0,1.5'),
  T: glyph(4, '0,6 4,6;2,6 2,0'),
  U: glyph(4, '0,6 0,2@180 4,2 4,6'),
  V: glyph(4, '0,6 2,0 4,6'),
  W: glyph(6, '0,6 1.5,0 3,4 4.5,0 6,6'),
  X: glyph(4, '0,6 4,0;0,0 4,6'),
  Y: glyph(4, '0,6 2,3 4,6;2,3 2,0'),
  Z: glyph(4, '0,6 4,6 0,0 4,0'),

  a: glyph(4, `${ring};4,4 4,0`),
  b: glyph(4, '0,6 0,0;0,2@-180 4,2@-180 0,2'),
  c: glyph(3.414, '3.414,3.414@270 3.414,0.586'),
  d: glyph(4, `${ring};4,6 4,0`),
  e: glyph(4, '0,2 4,2@180 0,2@135 3.414,0.586'),
  f: glyph(3, '3,6 2.5,6@90 1,4.5 1,0;0,4 2.5,4'),
  g: glyph(4, `${ring};4,4 4,0@-90 2,-2 0.5,-2`),
  h: glyph(4, '0,6 0,0;0,2@-180 4,2 4,0'),
  i: glyph(1, '0.5,4 0.5,0;0.5,5.4 0.5,6.2'),
  j: glyph(1, '1,4 1,-1@-90 0,-2;1,5.4 1,6.2'),
  k: glyph(3, '0,6 0,0;3,4 0,1;1,2 3,0'),
  l: glyph(1, '0,6 0,1@90 1,0'),
  m: glyph(6, '0,4 0,0;0,2.5@-180 3,2.5 3,0;3,2.5@-180 6,2.5 6,0'),
  n: glyph(4, '0,4 0,0;0,2@-180 4,2 4,0'),
  o: glyph(4, ring),
  p: glyph(4, '0,4 0,-2;0,2@-180 4,2@-180 0,2'),
  q: glyph(4, `${ring};4,4 4,-2`),
  r: glyph(2.5, '0,4 0,0;0,2@-90 2,4 2.5,4'),
  s: glyph(3, '3,3@90 2,4 1,4@180 1,2 2,2@-180 2,0 1,0@-90 0,1'),
  t: glyph(3, '1,6 1,1.5@90 2.5,0 3,0;0,4 2.5,4'),
  u: glyph(4, '0,4 0,2@180 4,2;4,4 4,0'),
  v: glyph(4, '0,4 2,0 4,4'),
  w: glyph(6, '0,4 1.5,0 3,4 4.5,0 6,4'),
  x: glyph(4, '0,4 4,0;0,0 4,4'),
  y: glyph(4, '0,4 2,0;4,4 1,-2'),
  z: glyph(4, '0,4 4,4 0,0 4,0'),
  ø: glyph(4, `${ring};0,-0.5 4,4.5`),
  Ø: glyph(4, `${capitalRing};0,-0.5 4,6.5`),

  0: glyph(4, `${capitalRing};1,1.5 3,4.5`),
  1: glyph(4, '0.5,4.5 2,6 2,0;0.5,0 3.5,0'),
  2: glyph(4, '0,4.5@-90 1.5,6 2.5,6@-90 4,4.5@-45 3.561,3.439 0,0 4,0'),
  3: glyph(4, '0,4.5@-90 1.5,6 2.5,6@-180 2.5,3 1.5,3;2.5,3@-180 2.5,0 1.5,0@-90 0,1.5'),
  4: glyph(4, '3,0 3,6 0,2 4,2'),
  5: glyph(4, '3.5,6 0.5,6 0.5,3.5 2.25,3.5@-180 2.25,0 1.75,0@-90 0,1.75'),
  6: glyph(4, '4,6@90 0,2@180 4,2@180 0,2'),
  7: glyph(4, '0,6 4,6 1.5,0'),
  8: glyph(4, '2.5,3@180 2.5,6 1.5,6@180 1.5,3 2.5,3;1.5,3@180 1.5,0 2.5,0@180 2.5,3'),
  9: glyph(4, '0,0@90 4,4@180 0,4@180 4,4'),

  '.': glyph(1, '0.5,0 0.5,0.8'),
  ',': glyph(1, '0.75,0.8 0.25,-1'),
  ':': glyph(1, '0.5,0.2 0.5,1;0.5,3 0.5,3.8'),
  "'": glyph(1, '0.5,6 0.5,4.5'),
  '"': glyph(2, '0.25,6 0.25,4.5;1.75,6 1.75,4.5'),
  '-': glyph(3, '0,3 3,3'),
  _: glyph(4, '0,-1 4,-1'),
  '/': glyph(3, '0,0 3,6'),
  '(': glyph(1.1, '1.1,7@60 1.1,-1'),
  ')': glyph(1.1, '0,7@-60 0,-1'),
  '+': glyph(4, '2,1 2,5;0,3 4,3'),
  '=': glyph(4, '0,2 4,2;0,4 4,4'),
  '#': glyph(4.4, '0.6,0 1.8,6;2.6,0 3.8,6;0,2 4,2;0.4,4 4.4,4'),
  '×': glyph(3, '0,1.5 3,4.5;0,4.5 3,1.5'),
  '°': glyph(2, '2,5@180 0,5@180 2,5'),
};

/** Stands for a character that the font lacks: an upright box. */
export const missingGlyph = glyph(3, '0,0 3,0 3,6 0,6 0,0');
