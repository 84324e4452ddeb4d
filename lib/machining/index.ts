export type * from './types.js';
export { cutWidth, isSameBit, spacingFor } from './process.js';
export { cutProblems, machine } from './machine.js';
export { inCuttingOrder } from './order.js';
export * from './router/index.js';
export { planLaser, smallSlug } from './laser/plan.js';
export type * from './laser/types.js';
