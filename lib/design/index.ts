export type { Design, Material, StockItem } from './design.js';
export { shapeOf } from './dish-shape.js';
export { editDistance, nearest } from './nearest.js';
export { withNest, withProcess, withSheetSize, withUnits } from './overrides.js';
export type { Locate } from './locate.js';
export { type DesignReading, readDesign } from './read.js';
export { defaultColours, designSchema, type LayerName } from './schema.js';
export { type KeyMeta } from './keys.js';
export { type MaterialKind, materialKinds } from './sections/materials.js';
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
