export type { Layout, NestedSheet, NestOptions, NestPart, NestStock, PlacedPart, Unplaced } from './types.js';
export { NestError, type NestErrorCode } from './error.js';
export { nest } from './nest.js';
