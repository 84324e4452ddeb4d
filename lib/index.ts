/** The library: design to files. Geometry, nest, optics, proof, book and Maker models have entries of their own. */
export {
  defaultColours,
  type Design,
  designSchema,
  laserOnly,
  machineFileOf,
  machineKinds,
  machineProblems,
  type MachineSource,
  nearestWord,
  slippedFrom,
  processKinds,
  type ProcessKind,
  readDesign,
  routerOnly,
  shapeOf,
  withNest,
  withProcess,
  withSheetSize,
  withUnits,
} from './design/index.js';
export {
  type Diagnostic,
  type DiagnosticCode,
  diagnosticCodes,
  diagnosticText,
  hasError,
  pathText,
  type Place,
  visible,
} from './diagnostic/index.js';
export { type Dish, solveDish } from './dish/index.js';
export { type KeyValue, keyValues } from './key-values.js';
export { type Layout, nest, type NestedSheet, type NestOptions, type NestPart, type NestStock } from './nest/index.js';
export { cautions, cautionsShort } from './output/cautions.js';
export { type KeySteps, type NewValue, type StatedKey, statedKeys, withKey, type Written } from './key-file/index.js';
export { operationKey } from './output/key.js';
export { recordJsonSchema, recordPage } from './output/record-page.js';
export type { Part } from './part/index.js';
export type { ExtraSource } from './parts/index.js';
export { type Answer, answerOf, printerScale, readReadings, withPrint, withValues } from './coupon/index.js';
export { calibrationProblems } from './pipeline/calibration-problems.js';
export {
  buildCoupons,
  buildCutFiles,
  buildJob,
  jobTotals,
  nestPrepared,
  prepare,
  quickTotals,
  templateFiles,
} from './pipeline.js';
export { quickNest } from './pipeline/quick-nest.js';
export { type BoughtStock, type Totals, totalsOf } from './pipeline/totals.js';
export { nestAll } from './pipeline/nest-all.js';
export { remadeRecord, type RemadeRecord } from './pipeline/remade.js';
export type { Job, JobSheet, NestedJob, Nester, Prepared } from './pipeline/types.js';
export { standValues } from './pipeline/stand.js';
export { countedStock, stockProblems } from './pipeline/stock-problems.js';
export { type StockResult, stockResult } from './pipeline/stock-comparison.js';
export {
  checkLineOf,
  formatArea,
  formatLength,
  formatMass,
  inInches,
  LengthError,
  lengthUnits,
  lineText,
  type LengthUnit,
  parseLength,
  parseUsualSize,
  proseIn,
  reachIn,
} from './units/index.js';
export { inWords, rowIn, valueIn } from './pipeline/words.js';
export {
  defaultText,
  designJsonSchema,
  entryAt,
  explainKey,
  type KeyAnswer,
  keyEntries,
  type KeyEntry,
  limitsText,
  materialKinds,
  referencePage,
  schemaFileName,
  schemaLine,
  schemaText,
  valueText,
} from './design/index.js';
export { mmPer, wrapped } from './units/index.js';
export { compareOf, type LogComparison } from './pipeline/compare.js';
export { adviceOf, burnOf, forecastOf, type Lit, litOf } from './pipeline/forecast.js';
export {
  type Advice,
  adviceRows,
  type Burn,
  burnHeads,
  burnNotes,
  burnRows,
  careRows,
  type Forecast,
  logTemplate,
  type SpotWidth,
  type SummaryRow,
  summaryRows,
} from './optics/index.js';
export type * from './public/types.js';
