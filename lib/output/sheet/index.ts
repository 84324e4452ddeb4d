export { type HungSheet, sheetDrawings } from './drawings.js';
export { copyName, sheetLabels } from './labels.js';
export { laidOut, type LaidPicture, type Length } from './lengths.js';
