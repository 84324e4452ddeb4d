/** Pieces laid one by one on sheets that are all there: in the usual order, in others, and by chance. */
import { element, type Random } from '../geometry/index.js';
import type { Budget } from './budget.js';
import { placeLeftmost, type Floors } from './first.js';
import type { NoFits } from './no-fit.js';
import { Packing, type Piece } from './packing.js';
import { Search } from './search.js';
import type { Space } from './space.js';

/** Pieces times pieces that are worth laying one by one, over all tries. */
const TRIES = 4000;
const MAX_TRIES = 60;

function lay(
  pieces: readonly Piece[],
  order: readonly number[],
  spaces: readonly Space[],
  noFits: NoFits,
  budget: Budget,
): Packing | null {
  const packing = new Packing(pieces);
  const search = new Search();
  const floors = spaces.map((): Floors => new Map());
  for (const space of spaces) packing.sheets.push({ space, right: space.width });
  for (const i of order) {
    const found = floors.some((floor, sheet) => placeLeftmost(search, packing, noFits, i, sheet, floor));
    budget.spend(search.work);
    search.work = 0;
    if (!found) return null;
  }
  return packing;
}

function shuffled<T>(items: readonly T[], random: Random): T[] {
  const list = [...items];
  for (let k = list.length - 1; k > 0; k--) {
    const other = random.integer(k + 1);
    const kept = element(list, k);
    list[k] = element(list, other);
    list[other] = kept;
  }
  return list;
}

/** Orders that often do: by area as they come, by the longer side, by width, by height. */
function orders(pieces: readonly Piece[]): number[][] {
  const indices = pieces.map((_, i) => i);
  const shapeOf = (i: number) => element(element(pieces, i).orientations, 0).shape;
  const by = (size: (i: number) => number): number[] => [...indices].sort((a, b) => size(b) - size(a) || a - b);
  return [
    indices,
    by((i) => Math.max(shapeOf(i).width, shapeOf(i).height)),
    by((i) => shapeOf(i).width),
    by((i) => shapeOf(i).height),
  ];
}

/** A valid packing of all pieces on just these sheets, or null when none of some tries gives one. */
export function layOut(
  pieces: readonly Piece[],
  spaces: readonly Space[],
  noFits: NoFits,
  random: Random,
  budget: Budget,
): Packing | null {
  const tries = Math.min(MAX_TRIES, Math.floor(TRIES / pieces.length ** 2));
  const known = orders(pieces);
  const smallFirst = [...spaces].sort((a, b) => a.area - b.area);
  for (let k = 0; k < tries && !budget.over(); k++) {
    const usual = known[k >> 1];
    const order = usual ?? shuffled(element(known, 0), random);
    const sheets = usual ? (k % 2 === 0 ? smallFirst : smallFirst.toReversed()) : shuffled(spaces, random);
    const packing = lay(pieces, order, sheets, noFits, budget);
    if (packing) return packing;
  }
  return null;
}
