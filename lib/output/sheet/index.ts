export { type HungSheet, sheetDrawings } from './drawings.js';
export { copyName, sheetLabels } from './labels.js';
export { laidOut, type LaidPicture } from './lengths.js';
