/** Which stock is taken: first valid nests over several orders of buying, the cheapest of them kept. */
import { element } from '../geometry/index.js';
import { placeLeftmost, type Floors } from './first.js';
import type { NoFits } from './no-fit.js';
import { Packing, type Piece } from './packing.js';
import { costAndLength } from './result.js';
import { Search } from './search.js';
import type { Space } from './space.js';

/** More orders of buying than this are not tried. */
const MAX_ORDERS = 6;

/** Orders in which stock is opened: by price for its area first, then each kind of stock put first. */
function ordersOf(spaces: readonly Space[]): Space[][] {
  const perArea = ({ stock, area, height }: Space): number =>
    stock.shape.kind === 'roll' ? stock.price / 1000 / height : stock.price / area;
  const usual = [...spaces].sort((a, b) => perArea(a) - perArea(b) || b.area - a.area);
  const orders = usual.map((space) => [space, ...usual.filter((other) => other !== space)]);
  return orders.slice(0, MAX_ORDERS);
}

/** One nest with stock opened in the given order. Pieces that fit nowhere keep sheet -1. */
function fill(pieces: readonly Piece[], order: readonly Space[], noFits: NoFits): Packing {
  const packing = new Packing(pieces);
  const search = new Search();
  const floors: Floors[] = [];
  const left = new Map(order.map((space) => [space, space.stock.count]));
  const hopeless = new Set<string>();
  pieces.forEach((_, i) => {
    for (let sheet = 0; sheet < packing.sheets.length; sheet++) {
      if (placeLeftmost(search, packing, noFits, i, sheet, element(floors, sheet))) return;
    }
    for (const [at, space] of order.entries()) {
      const count = left.get(space) ?? 0;
      const name = `${at} ${element(pieces, i).kind}`;
      if (count < 1 || hopeless.has(name)) continue;
      packing.sheets.push({ space, right: space.width });
      floors.push(new Map());
      if (placeLeftmost(search, packing, noFits, i, packing.sheets.length - 1, element(floors, floors.length - 1))) {
        left.set(space, count - 1);
        return;
      }
      packing.sheets.pop();
      floors.pop();
      hopeless.add(name);
    }
  });
  return packing;
}

const unplacedCount = (packing: Packing): number => packing.sheet.reduce((sum, sheet) => sum + (sheet < 0 ? 1 : 0), 0);

/** Whether one packing is the better answer: fewer pieces left over, then cheaper, then shorter on the last sheet. */
export function better(one: Packing, other: Packing): boolean {
  const left = unplacedCount(one) - unplacedCount(other);
  if (left !== 0) return left < 0;
  const a = costAndLength(one);
  const b = costAndLength(other);
  const close = 1e-9 * Math.max(1, Math.abs(a.cost), Math.abs(b.cost));
  if (Math.abs(a.cost - b.cost) > close) return a.cost < b.cost;
  const sheets = one.sheets.length - other.sheets.length;
  return sheets !== 0 ? sheets < 0 : a.last < b.last - 1e-9;
}

/** A first valid nest on the stock that makes it cheapest. */
export function firstNest(pieces: readonly Piece[], spaces: readonly Space[], noFits: NoFits): Packing {
  const packings = ordersOf(spaces).map((order) => fill(pieces, order, noFits));
  return packings.reduce(
    (best, packing) => (better(packing, best) ? packing : best),
    packings[0] ?? new Packing(pieces),
  );
}

/** Whether a piece would fit on an empty sheet of any of the stock. */
export function fitsAlone(piece: Piece, spaces: readonly Space[], noFits: NoFits): boolean {
  return spaces.some((space) => {
    const packing = new Packing([piece]);
    packing.sheets.push({ space, right: space.width });
    return placeLeftmost(new Search(), packing, noFits, 0, 0, new Map());
  });
}
