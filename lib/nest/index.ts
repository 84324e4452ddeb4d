export type { Layout, NestedSheet, NestOptions, NestPart, NestStock, Unplaced } from './types.js';
export { NestError, type NestErrorCode } from './error.js';
export { billsOf, type CheaperBill, type GroupBill } from './bill-report.js';
export { checkRequest } from './check.js';
export { type SheetSize, smallestSheet, type Unfit, unfitParts } from './fit.js';
export { bestOf } from './merge.js';
export { nest } from './nest.js';
