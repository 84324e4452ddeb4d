export type * from './types.js';
export { partDrawings, type ShopDesign } from './drawings.js';
export { pageSvg } from './svg.js';
