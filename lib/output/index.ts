export type {
  Colours,
  CutSheetToDraw,
  Drawing,
  DrawingWriter,
  DrawnCircle,
  DrawnEntity,
  DrawnPath,
  Layer,
  PartToDraw,
} from './types.js';
export { operationKey } from './key.js';
export { drawPart, drawSheet, drillLayer, partEntities, sheetEntities } from './drawing.js';
export { writeDxf } from './dxf/write.js';
export { writeSvg } from './svg.js';
export { type NgcHeader, routerCautions, writeNgc } from './gcode/index.js';
export { escapeXml } from './xml.js';
export { type Cell, writeCsv } from './csv.js';
export { writeCutList } from './cut-list.js';
export { type MarkingTable, type MarkingToWrite, markingTable, writeMarkingOut } from './marking-table.js';
export {
  type JobRecord,
  listFiles,
  type RecordedFile,
  type RecordedPart,
  type RecordedProcess,
  type RecordedSheet,
  recordPart,
  sealJob,
  writeJob,
} from './job.js';
export type { Paper, PrintOptions } from './print/index.js';
