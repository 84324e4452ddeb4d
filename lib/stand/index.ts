export type { StandSource } from './cradle.js';
export { makeStand, type Stand } from './make.js';
export { mountProblems, rangeProblems, standProblems } from './problems.js';
export { tilts } from './places.js';
export { type Bought, boughtFor } from './bought.js';
export { tilted } from './motion.js';
export { type AxisTable, axisTable, liftAlone, type Setting, settingsOf, standRows } from './rows.js';
