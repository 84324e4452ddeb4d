export type * from './types.js';
export { simulate } from './simulate.js';
