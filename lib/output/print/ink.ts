/** The drawing in black and white: lines differ by width and dashes, because many printers have but one colour. */
import type { PDFPage } from 'pdf-lib';
import { type Point, type Vertex, circle } from '../../geometry/index.js';
import type { Drawing, DrawnEntity } from '../types.js';
import { crossArm } from './pieces.js';
import { drawLine, drawPath, type PageFrame, type LineStyle, onPage } from './pen.js';

/** Lines to cut are full; the middle of the line is the edge. */
const cut: LineStyle = { width: 0.25, grey: 0, dashes: [] };
const mark: LineStyle = { width: 0.1, grey: 0.4, dashes: [] };
const cross: LineStyle = { width: 0.1, grey: 0, dashes: [] };
const head: LineStyle = { width: 0.12, grey: 0, dashes: [1, 0.6] };
/** The sheet's edge, long and short dashes: only on prints of whole sheets. */
const edge: LineStyle = { width: 0.12, grey: 0.4, dashes: [6, 1.5, 0.5, 1.5] };

/** Where two pages join. */
export const joint: LineStyle = { width: 0.1, grey: 0.45, dashes: [3, 2] };

/** How each kind of line looks, for the page that explains the print. */
export const legend: readonly { readonly style: LineStyle; readonly meaning: string }[] = [
  { style: cut, meaning: 'cut: the middle of the line is the finished edge' },
  { style: mark, meaning: 'mark or lettering: do not cut' },
  { style: head, meaning: 'head of a countersink' },
  { style: joint, meaning: 'joint of two pages; the diamonds on it are for lining up, not holes' },
];

function styleOf(layer: string): LineStyle {
  if (layer === 'scribe') return mark;
  if (layer === 'countersink') return head;
  return layer === 'sheet-edge' ? edge : cut;
}

/** A cross that a centre punch can find. */
function drawCross(page: PDFPage, { x, y }: Point, radius: number): void {
  const arm = crossArm(2 * radius);
  drawLine(page, { x: x - arm, y }, { x: x + arm, y }, cross);
  drawLine(page, { x, y: y - arm }, { x, y: y + arm }, cross);
}

function drawEntity(page: PDFPage, entity: DrawnEntity, frame: PageFrame): void {
  const style = styleOf(entity.layer);
  if (entity.kind === 'circle') {
    const centre = onPage(frame, entity);
    const radius = (entity.diameter / 2) * frame.scale;
    drawPath(page, circle(centre, radius), true, style);
    if (entity.layer !== 'countersink') drawCross(page, centre, radius);
    return;
  }
  const placed = entity.vertices.map((vertex): Vertex => ({ ...onPage(frame, vertex), bulge: vertex.bulge }));
  drawPath(page, placed, entity.closed, style);
}

/** Draws everything; what falls outside the page's window is for the caller to cut off. */
export function drawAll(page: PDFPage, drawing: Drawing, frame: PageFrame): void {
  for (const entity of drawing.entities) drawEntity(page, entity, frame);
}
