// a door of its own: the PDF library takes a while to load, and only prints need it
export { type PrintOptions } from './paper.js';
export { writePrint } from './write.js';
