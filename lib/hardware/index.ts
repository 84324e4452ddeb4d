export * from './barrel-nuts.js';
export * from './bolts.js';
export * from './dowels.js';
export * from './pins.js';
export * from './pipes.js';
export * from './staples.js';
export * from './tee-nuts.js';
export * from './wood-screws.js';
