export type * from './types.js';
export { planRouter } from './plan.js';
export { cuttingOf } from './feeds.js';
export { settingProblems } from './settings.js';
