export type { Design, StockItem } from './design.js';
export { shapeOf } from './dish-shape.js';
export { laserOf, routerOf } from './machine.js';
export { nearestWord, slippedFrom } from './nearest.js';
export { withNest, withProcess, withSheetSize, withUnits } from './overrides.js';
export { machineFileOf, machineProblems, type MachineSource } from './machine-file.js';
export { entryAt } from './entry-at.js';
export { readDesign } from './read.js';
export { defaultColours, designSchema } from './schema.js';
export { laserOnly } from './sections/laser.js';
export { machineKinds, routerOnly } from './sections/machine.js';
export { materialKinds } from './sections/materials.js';
export type { FilledStand } from './stand-sizes.js';
export { processKinds, type ProcessKind } from './sections/process.js';
export { designJsonSchema, schemaFileName, schemaLine, schemaText } from './json-schema.js';
export {
  defaultText,
  explainKey,
  type KeyAnswer,
  keyEntries,
  type KeyEntry,
  limitsText,
  referencePage,
  valueText,
} from './reference.js';
