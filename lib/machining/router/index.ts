export type * from './types.js';
export { planRouter } from './plan.js';
export { cuttingOf } from './feeds.js';
export { settledLimits } from './limits.js';
export { toolsAt } from './tools.js';
export { settingProblems } from './settings.js';
