export type * from './types.js';
export { couponOf } from './parts.js';
export { readingsTemplate, readReadings } from './measured-file.js';
export { type Answer, answerOf } from './answer.js';
export { withValues } from './write-values.js';
export { printerScale, withPrint } from './write-print.js';
