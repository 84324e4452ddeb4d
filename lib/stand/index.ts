export { type Cradle, type StandSource } from './cradle.js';
export type { Holder } from './holder.js';
export { makeStand, type Stand, type StandValues } from './make.js';
export { mountProblems, rangeProblems, standProblems } from './problems.js';
export { tilts } from './places.js';
export { type Bought, boughtFor } from './bought.js';
export type { Prism } from './motion.js';
export { tilted } from './motion.js';
export { type AxisTable, axisTable, liftAlone, type Setting, settingsOf, type StandRow, standRows } from './rows.js';
