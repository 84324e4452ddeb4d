/** A packing as the caller sees it. */
import type { Packing } from './packing.js';
import type { Space } from './space.js';
import { f64 } from '../geometry/typed-arrays.js';
import type { Offcut, PlacedPart } from '../part/index.js';
import type { NestedSheet } from './types.js';

/** A rest narrower than this (mm) is waste. */
const MIN_OFFCUT = 100;

function clearOfKeepOuts(box: Offcut, space: Space): boolean {
  return space.stock.keepOuts.every((ring) => {
    const xs = ring.map(({ x }) => x);
    const ys = ring.map(({ y }) => y);
    return (
      Math.max(...xs) <= box.x ||
      Math.min(...xs) >= box.x + box.width ||
      Math.max(...ys) <= box.y ||
      Math.min(...ys) >= box.y + box.height
    );
  });
}

/** The larger of the two rectangles that one straight cut takes off: right of all parts, or above them. */
function offcutOf(space: Space, usedX: number, usedY: number): Offcut | null {
  const { width, height, stock } = space;
  if (stock.shape.kind === 'roll') return null;
  if (stock.shape.kind === 'offcut' && Math.abs(space.area - width * height) > 1e-6) return null;
  const { originX, originY } = space;
  const boxes: Offcut[] = [
    { x: originX + usedX, y: originY, width: width - usedX, height },
    { x: originX, y: originY + usedY, width, height: height - usedY },
  ];
  const worth = boxes.filter((box) => Math.min(box.width, box.height) >= MIN_OFFCUT && clearOfKeepOuts(box, space));
  worth.sort((a, b) => b.width * b.height - a.width * a.height);
  return worth[0] ?? null;
}

/** The sheets that have parts on them, in order, with what they cost. */
export function sheetsOf(packing: Packing): { sheets: NestedSheet[]; cost: number } {
  const sheets: NestedSheet[] = [];
  let cost = 0;
  packing.sheets.forEach(({ space }, index) => {
    const placed: PlacedPart[] = [];
    let usedX = 0;
    let usedY = 0;
    packing.pieces.forEach(({ part, copy }, i) => {
      if (packing.sheet[i] !== index) return;
      const orientation = packing.orientation(i);
      const x = f64(packing.x, i);
      const y = f64(packing.y, i);
      usedX = Math.max(usedX, x + orientation.shape.width + space.margin);
      usedY = Math.max(usedY, y + orientation.shape.height + space.margin);
      placed.push({
        part: part.id,
        copy,
        x: x + orientation.originX + space.originX,
        y: y + orientation.originY + space.originY,
        rotationDeg: orientation.rotationDeg,
        mirrored: orientation.mirrored,
      });
    });
    if (placed.length === 0) return;
    const roll = isRoll(space);
    cost += roll ? (space.stock.price * usedX) / 1000 : space.stock.price;
    sheets.push({
      stock: space.stock.id,
      width: roll ? usedX : space.width,
      height: space.height,
      placed,
      usedLength: space.originX + usedX,
      offcut: offcutOf(space, usedX, usedY),
    });
  });
  return { sheets, cost };
}

export const isRoll = ({ stock }: Space): boolean => stock.shape.kind === 'roll';

/** Cost of a packing's sheets that have parts on them, and the used length of the last of those. */
export function costAndLength(packing: Packing): { cost: number; last: number } {
  let cost = 0;
  let last = 0;
  packing.sheets.forEach(({ space }, index) => {
    const used = packing.used(index);
    if (used === 0) return;
    cost += isRoll(space) ? (space.stock.price * used) / 1000 : space.stock.price;
    last = used;
  });
  return { cost, last };
}
