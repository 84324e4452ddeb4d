export { type Cradle, type StandSource } from './cradle.js';
export type { Holder } from './holder.js';
export { makeStand, type Stand, type StandValues } from './make.js';
export { mountProblems, rangeProblems, standProblems } from './problems.js';
export { tilts } from './places.js';
