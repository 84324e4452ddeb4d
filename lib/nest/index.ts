export type * from './types.js';
export { nest } from './simple.js';
