/** Whether a drawing has the size of its sheet, and everything on it. */
import type { ReadBackPath, ReadBackSheet } from './drawn.js';
import { type FaultList, mm } from './faults.js';
import type { ProcessRead, SheetRead } from './job-reader.js';
import { agreementTolerance } from './limits.js';
import type { Box, Line } from './ring.js';

function runsOff({ minX, minY, maxX, maxY }: Box, { width, height }: SheetRead, over: number): boolean {
  const slack = over + agreementTolerance;
  return minX < -slack || minY < -slack || maxX > width + slack || maxY > height + slack;
}

/**
 * Checks a drawing's page and sheet edge against the sheet. A drawing for a laser must not have an edge: the beam would
 * cut along it.
 * @param edgeOf the edge of the sheet by the record
 * @param over how far a line may stand over the edge: half the cut, for a part that lies on the edge itself
 * @returns the edge of the sheet; null when it is not drawn at the sheet's size, so that nothing else would fit
 */
export function checkPage(
  drawing: ReadBackSheet,
  sheet: SheetRead,
  kind: ProcessRead['kind'],
  edgeOf: Line,
  over: number,
  file: string,
  faults: FaultList,
): Line | null {
  const { width, height } = sheet;
  const wrongPage = Math.max(Math.abs(drawing.width - width), Math.abs(drawing.height - height)) > agreementTolerance;
  if (wrongPage) {
    const page = `${mm(drawing.width)} x ${mm(drawing.height)}`;
    faults.add('page-size', file, { page, sheet: `${mm(width)} x ${mm(height)}` });
  }
  const edges = drawing.entities.filter(
    (one): one is ReadBackPath => one.kind === 'path' && one.layer === 'sheet-edge',
  );
  if (kind === 'laser' && edges.length > 0) faults.add('edge-for-laser', file, {});
  const edge = kind === 'laser' ? edgeOf : edges[0]?.line;
  if (edge === undefined || (kind !== 'laser' && edges.length > 1)) {
    faults.add('edge-count', file, { count: edges.length });
    return null;
  }
  const { minX, minY, maxX, maxY } = edge.box;
  const off = Math.max(Math.abs(minX), Math.abs(minY), Math.abs(maxX - width), Math.abs(maxY - height));
  if (off > agreementTolerance) {
    const times = Number(((maxX - minX) / width).toPrecision(4));
    const size = `${mm(maxX - minX)} x ${mm(maxY - minY)}`;
    faults.add('edge-size', file, { size, times });
    return null;
  }
  for (const entity of drawing.entities) {
    const { x, y } = entity.kind === 'circle' ? entity : { x: entity.line.box.minX, y: entity.line.box.minY };
    const box = entity.kind === 'path' ? entity.line.box : { minX: x, minY: y, maxX: x, maxY: y };
    if (runsOff(box, sheet, over)) faults.add('off-sheet', file, { layer: entity.layer }, { x, y });
  }
  return edge;
}
