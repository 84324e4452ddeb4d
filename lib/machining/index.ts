export type * from './types.js';
export { cutWidth, spacingFor } from './process.js';
export { type HoleKind, holeKind } from './holes.js';
export { cutProblems, machine, type MachineOptions } from './machine.js';
export { inCuttingOrder } from './order.js';
export * from './router/index.js';
