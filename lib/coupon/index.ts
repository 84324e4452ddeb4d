export type * from './types.js';
export { couponOf } from './parts.js';
export { type Readings, readingsTemplate, type ReadingsRead, readReadings, type TabsHeld } from './measured-file.js';
export { type Answer, type Answered, answerOf } from './answer.js';
export { type Estimate, type Solved } from './solve.js';
export { withValues, type Written } from './write-values.js';
