export type { CutSheetToDraw, Drawing, DrawnEntity, DrawnPath, PartToDraw } from './types.js';
export { drawPart, drawSheet, partEntities, sheetEntities } from './drawing.js';
export { writeDxf } from './dxf/write.js';
export { writeSvg } from './svg.js';
export { writeLaserNgc, writeNgc } from './gcode/index.js';
export { escapeXml } from './xml.js';
export { writeCsv } from './csv.js';
export { writeCutList } from './cut-list.js';
export { type ListedSheet, writeSheetList } from './sheet-list.js';
export { markingTable, writeMarkingOut } from './marking-table.js';
export {
  type JobRecord,
  listFiles,
  type RecordedProcess,
  type RecordedSheet,
  recordPart,
  sealJob,
  writeJob,
} from './job.js';
