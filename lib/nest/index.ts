export type { Layout, NestedSheet, NestOptions, NestPart, NestStock, PlacedPart, Unplaced } from './types.js';
export { NestError, type NestErrorCode } from './error.js';
export { checkRequest } from './check.js';
export { bestOf } from './merge.js';
export { nest } from './nest.js';
