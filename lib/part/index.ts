export type * from './types.js';
export { blank } from './blank.js';
export { faceUp, lineMark, ringMark, textMark, textStrokes, throughHole } from './marks.js';
export { holesUp, linesUp, pocketsUp, ringsOf, textsUp } from './cut-from-above.js';
