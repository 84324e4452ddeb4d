export type * from './types.js';
export { drawSimulation } from './picture.js';
export { simulate } from './simulate.js';
