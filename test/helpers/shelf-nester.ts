import { boundsOfAll, type Bounds, type Polygon } from '../../lib/geometry/index.js';
import type { Layout, NestedSheet, NestOptions, NestPart, NestStock } from '../../lib/nest/index.js';
import type { PlacedPart } from '../../lib/part/index.js';

const boxOf = (outline: Polygon): Bounds =>
  boundsOfAll(outline.map(({ x, y }) => ({ minX: x, maxX: x, minY: y, maxY: y })));

/** Rows of bounding boxes: a quick, wasteful, correct nest for tests that are about something else. */
export function shelfNester(parts: readonly NestPart[], stock: readonly NestStock[], options: NestOptions): Layout {
  const sheets: NestedSheet[] = [];
  for (const group of new Set(parts.map((part) => part.group))) {
    const item = stock.find((each) => each.group === group);
    if (!item || item.shape.kind === 'offcut') throw new Error(`no sheets of ${group}`);
    const { shape, margin } = item;
    const width = shape.kind === 'roll' ? shape.maxLength : shape.width;
    let placed: PlacedPart[] = [];
    let [x, y, row, used] = [margin, margin, 0, 0];
    const close = (): void => {
      if (placed.length === 0) return;
      const length = used + margin;
      sheets.push({
        stock: item.id,
        width: shape.kind === 'roll' ? length : width,
        height: shape.height,
        placed,
        usedLength: length,
        offcut: null,
      });
      placed = [];
      [x, y, row, used] = [margin, margin, 0, 0];
    };
    for (const part of parts.filter((each) => each.group === group)) {
      const box = boxOf(part.outline);
      const [wide, high] = [box.maxX - box.minX, box.maxY - box.minY];
      for (let copy = 1; copy <= part.quantity; copy += 1) {
        if (x + wide > width - margin) [x, y, row] = [margin, y + row + options.spacing, 0];
        if (y + high > shape.height - margin) close();
        placed.push({ part: part.id, copy, x: x - box.minX, y: y - box.minY, rotationDeg: 0, mirrored: false });
        used = Math.max(used, x + wide);
        row = Math.max(row, high);
        x += wide + options.spacing;
      }
    }
    close();
  }
  return { sheets, unplaced: [], cost: 0 };
}
