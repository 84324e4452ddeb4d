export type { StandSource } from './cradle.js';
export { makeStand, type Stand } from './make.js';
export { mountProblems, rangeProblems, standProblems } from './problems.js';
export { motionOf } from './places.js';
export { type Bought, boughtFor } from './bought.js';
export { posed } from './pose.js';
export { type AxisTable, axisTable, liftAlone, type Setting, settingsOf, standRows } from './rows.js';
