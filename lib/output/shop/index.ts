export type * from './types.js';
export { paperFor, partDrawings, printingFor, type ShopDesign } from './drawings.js';
export { pageSvg } from './svg.js';
