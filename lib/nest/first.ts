/** A first valid nest: pieces from large to small, each as far left, then as low, as it will go. */
import { element } from '../geometry/index.js';
import type { NoFits } from './no-fit.js';
import type { Packing } from './packing.js';
import type { Search } from './search.js';
import type { NestShape } from './shape.js';
import { f64 } from '../geometry/typed-arrays.js';

/** Limits of a shape's reference point on a sheet, given to a search. */
export function startOn(search: Search, packing: Packing, sheet: number, shape: NestShape): boolean {
  const { space, right } = packing.sheetAt(sheet);
  const { margin } = space;
  return search.start(margin, margin, right - margin - shape.width, space.height - margin - shape.height);
}

/** Everything on a sheet that is in a shape's way, with weight 1. */
function addAll(search: Search, packing: Packing, noFits: NoFits, sheet: number, shape: NestShape): void {
  for (const obstacle of packing.sheetAt(sheet).space.obstacles)
    search.add(obstacle.noFit(shape), obstacle.x, obstacle.y, 1);
  for (let j = 0; j < packing.pieces.length; j++) {
    if (packing.sheet[j] !== sheet) continue;
    search.add(noFits.of(packing.orientation(j).shape, shape), f64(packing.x, j), f64(packing.y, j), 1);
  }
}

/** Remembers, for shapes on a sheet that is only ever added to, left of where there is no place. */
export type Floors = Map<number, number>;

/** Lays one piece at the free place where it ends furthest left on the sheet; false when there is none. */
export function placeLeftmost(
  search: Search,
  packing: Packing,
  noFits: NoFits,
  i: number,
  sheet: number,
  floors: Floors,
): boolean {
  let end = Infinity;
  const seen = new Set<NestShape>();
  element(packing.pieces, i).orientations.forEach(({ shape }, orientation) => {
    if (seen.has(shape)) return;
    seen.add(shape);
    const floor = floors.get(shape.index) ?? -Infinity;
    if (floor === Infinity || floor + shape.width >= end) return;
    if (!startOn(search, packing, sheet, shape)) {
      floors.set(shape.index, Infinity);
      return;
    }
    addAll(search, packing, noFits, sheet, shape);
    const x = search.leftmost(floor, end - shape.width);
    if (x === Infinity) {
      if (end === Infinity) floors.set(shape.index, Infinity);
      return;
    }
    floors.set(shape.index, x);
    end = x + shape.width;
    packing.x[i] = search.foundX;
    packing.y[i] = search.foundY;
    packing.orientationIndex[i] = orientation;
  });
  if (end === Infinity) return false;
  packing.sheet[i] = sheet;
  return true;
}
