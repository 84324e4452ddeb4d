export type {
  Colours,
  CutSheetToDraw,
  Drawing,
  DrawingWriter,
  DrawnCircle,
  DrawnEntity,
  DrawnPath,
  Layer,
  Operation,
  PartToDraw,
  SheetOperation,
} from './types.js';
export { drawPart, drawSheet, drillLayer } from './drawing.js';
export { writeDxf } from './dxf/write.js';
export { writeSvg } from './svg.js';
export { escapeXml } from './xml.js';
