export type * from './types.js';
export { partDrawings, sectionDrawing, type ShopDesign } from './drawings.js';
export { pageSvg } from './svg.js';
