/** Holds a layout against what was asked, with arithmetic of its own. */
import { gapBetween, placedSolid, type PlainRing, type PlainSolid } from '../../cli/bench/nest-overlap.js';
import type { Layout, NestPart, NestStock } from '../../lib/nest/index.js';
import type { PlacedPart } from '../../lib/part/index.js';

/** Lengths may miss by this (mm). */
const TOLERANCE = 1e-6;

const ringOf = (points: readonly { readonly x: number; readonly y: number }[]): PlainRing =>
  points.map(({ x, y }) => [x, y]);

function solidOf(part: NestPart, { x, y, rotationDeg, mirrored }: PlacedPart): PlainSolid {
  const lay = (points: NestPart['outline']): PlainRing => placedSolid(ringOf(points), x, y, rotationDeg, mirrored);
  return { outer: lay(part.outline), openings: part.openings.map(lay) };
}

/** The stock as a hole in a wide frame, so that a gap to the frame is a distance to the stock's edge. */
function outsideFit(stock: NestStock, width: number): PlainSolid {
  const { shape } = stock;
  const edge: PlainRing =
    shape.kind === 'offcut'
      ? ringOf(shape.outline)
      : [
          [0, 0],
          [width, 0],
          [width, shape.height],
          [0, shape.height],
        ];
  const far = 1e5;
  return {
    outer: [
      [-far, -far],
      [far, -far],
      [far, far],
      [-far, far],
    ],
    openings: [edge],
  };
}

/** Everything that is wrong with a layout; empty when it is right. */
export function faultsOf(
  parts: readonly NestPart[],
  stock: readonly NestStock[],
  spacing: number,
  layout: Layout,
): string[] {
  const faults: string[] = [];
  const partOf = new Map(parts.map((part) => [part.id, part]));
  const stockOf = new Map(stock.map((item) => [item.id, item]));
  const seen = new Map<string, number>();
  const usedStock = new Map<string, number>();
  let cost = 0;
  layout.sheets.forEach((sheet, number) => {
    const item = stockOf.get(sheet.stock);
    if (!item) return faults.push(`sheet ${number} is of unknown stock ${sheet.stock}`);
    usedStock.set(item.id, (usedStock.get(item.id) ?? 0) + 1);
    cost += item.shape.kind === 'roll' ? (item.price * sheet.width) / 1000 : item.price;
    if (item.shape.kind === 'roll' && sheet.width > item.shape.maxLength + TOLERANCE)
      faults.push(`roll ${number} is too long`);
    const frame = outsideFit(item, sheet.width);
    const laid = sheet.placed.flatMap((place) => {
      const part = partOf.get(place.part);
      if (!part) {
        faults.push(`unknown part ${place.part}`);
        return [];
      }
      const name = `${place.part}-${place.copy}`;
      seen.set(name, (seen.get(name) ?? 0) + 1);
      if (part.group !== item.group) faults.push(`${name} is on stock of another group`);
      if (part.rotations !== 'any' && !part.rotations.includes(place.rotationDeg))
        faults.push(`${name} lies at ${place.rotationDeg}`);
      if (!part.faces.includes(place.mirrored ? 'back' : 'front')) faults.push(`${name} lies with the wrong face up`);
      return [{ name, solid: solidOf(part, place) }];
    });
    const keepOuts = item.keepOuts.map((ring, i) => ({
      name: `keep-out ${i}`,
      solid: { outer: ringOf(ring), openings: [] },
    }));
    laid.forEach((one, i) => {
      const edge = gapBetween(one.solid, frame, item.margin);
      if (edge < item.margin - TOLERANCE) faults.push(`${one.name} is ${edge} from the edge of sheet ${number}`);
      for (const other of [...laid.slice(0, i), ...keepOuts]) {
        const gap = gapBetween(one.solid, other.solid, spacing);
        if (gap < spacing - TOLERANCE) faults.push(`${one.name} is ${gap} from ${other.name} on sheet ${number}`);
      }
    });
    const right = Math.max(...laid.flatMap(({ solid }) => solid.outer.map(([x]) => x)));
    if (Math.abs(right + item.margin - sheet.usedLength) > TOLERANCE)
      faults.push(`sheet ${number} uses ${right + item.margin}, not ${sheet.usedLength}`);
    const { offcut } = sheet;
    if (offcut) {
      const box: PlainRing = [
        [offcut.x, offcut.y],
        [offcut.x + offcut.width, offcut.y],
        [offcut.x + offcut.width, offcut.y + offcut.height],
        [offcut.x, offcut.y + offcut.height],
      ];
      if (laid.some(({ solid }) => gapBetween(solid, { outer: box, openings: [] }) < -TOLERANCE))
        faults.push(`the offcut of sheet ${number} is not free`);
    }
    return undefined;
  });
  for (const [id, count] of usedStock)
    if (count > (stockOf.get(id)?.count ?? 0)) faults.push(`${count} of stock ${id}`);
  for (const [name, times] of seen) if (times > 1) faults.push(`${name} is laid ${times} times`);
  for (const part of parts) {
    const laid = [...seen.keys()].filter((name) => name.slice(0, name.lastIndexOf('-')) === part.id).length;
    const left = layout.unplaced.find((unplaced) => unplaced.part === part.id)?.copies ?? 0;
    if (laid + left !== part.quantity) faults.push(`${laid} of ${part.quantity} ${part.id} laid, ${left} left`);
  }
  if (Math.abs(cost - layout.cost) > 1e-9 * Math.max(1, cost)) faults.push(`costs ${cost}, not ${layout.cost}`);
  return faults;
}
