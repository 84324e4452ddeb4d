export { partModel, sheetModel } from './model.js';
export { makerExtra } from './extra.js';
