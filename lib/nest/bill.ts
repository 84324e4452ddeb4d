/** What could be bought: choices of stock that cost less than a known answer, whatever has room for the parts by area. */
import { element } from '../geometry/index.js';
import type { Packing, Piece } from './packing.js';
import type { NoFits } from './no-fit.js';
import { fitsAlone } from './plan.js';
import { costAndLength, isRoll } from './result.js';
import type { Space } from './space.js';
import { i32 } from '../geometry/typed-arrays.js';

/** One choice of stock. */
export interface Bill {
  /** One space a sheet; equal sheets stand side by side. */
  readonly spaces: readonly Space[];
  /** Of rolls the least that could be paid for the area that the sheets leave over. */
  readonly price: number;
  /** Share of its area that the parts cover. */
  readonly filled: number;
}

/** Choices that are looked at, at max; a stock list with more of them is not listed to the end. */
const MAX_LOOKS = 200_000;
/** Choices that are given, at max: the cheapest. */
const MAX_BILLS = 200;

/** Prices closer than this share are equal. */
const CLOSE = 1e-9;

/** What an answer costs, and how many sheets it takes. */
export interface BillLimit {
  readonly cost: number;
  readonly sheets: number;
}

/** What a packing costs and how many sheets hold a part; without limit while parts are left over. */
function limitOf(packing: Packing): BillLimit {
  if (packing.sheet.some((sheet) => sheet < 0)) return { cost: Infinity, sheets: Infinity };
  const used = new Set(packing.pieces.map((_, i) => i32(packing.sheet, i)));
  return { cost: costAndLength(packing).cost, sheets: used.size };
}

function beats(price: number, sheets: number, limit: BillLimit): boolean {
  const close = CLOSE * Math.max(1, price, limit.cost === Infinity ? 0 : limit.cost);
  return price < limit.cost - close || (price <= limit.cost + close && sheets < limit.sheets);
}

/** Least price of a roll that takes up an area. */
const rollPrice = ({ stock, height, margin }: Space, area: number): number =>
  (stock.price / 1000) * (Math.max(0, area) / Math.max(1e-9, height - 2 * margin));

/** Of each kind of piece one. */
const kindsOf = (pieces: readonly Piece[]): Piece[] => [
  ...new Map(pieces.map((piece) => [piece.kind, piece] as const)).values(),
];

/** Choices of stock, cheapest first; `all` is false when there were too many to list. */
export interface Bills {
  readonly bills: readonly Bill[];
  readonly all: boolean;
}

/**
 * The choices of stock that would be better than a known answer: enough area, a sheet for each part by itself, no more
 * of a stock than there is.
 * @param limit what the answer costs, and its sheets
 * @param present how many of each space it uses
 */
export function billsBelow(
  pieces: readonly Piece[],
  spaces: readonly Space[],
  noFits: NoFits,
  limit: BillLimit,
  present: readonly number[],
): Bills {
  const area = pieces.reduce((sum, piece) => sum + piece.area, 0);
  const takes = kindsOf(pieces).map((piece) => spaces.map((space) => fitsAlone(piece, [space], noFits)));
  const takesAll = (counts: readonly number[]): boolean =>
    takes.every((fits) => fits.some((fit, k) => fit && element(counts, k) > 0));
  const bills: Bill[] = [];
  let looks = 0;
  const choose = (kind: number, counts: readonly number[], price: number, covered: number): void => {
    const space = spaces[kind];
    const sheets = counts.reduce((sum, count) => sum + count, 0);
    if (looks++ >= MAX_LOOKS || !beats(price, sheets, limit)) return;
    if (space === undefined) {
      if (sheets === 0 || covered < area * (1 - CLOSE) || !takesAll(counts)) return;
      // the same stock again is no other choice, however long the roll of it
      if (counts.every((count, k) => count === element(present, k))) return;
      const bought = spaces.flatMap((one, k) => Array.from({ length: element(counts, k) }, () => one));
      bills.push({ spaces: bought, price, filled: area / covered });
      return;
    }
    // more sheets than pieces are never of use, nor a second roll
    const max = Math.min(space.stock.count, isRoll(space) ? 1 : pieces.length);
    for (let count = 0; count <= max; count++) {
      const added = isRoll(space) ? rollPrice(space, area - covered) : space.stock.price;
      choose(kind + 1, [...counts, count], price + count * added, covered + count * space.area);
      if (space.stock.price > 0 && !beats(price + count * added, 0, limit)) break;
    }
  };
  choose(0, [], 0, 0);
  bills.sort((a, b) => a.price - b.price || a.spaces.length - b.spaces.length || a.filled - b.filled);
  return { bills: bills.slice(0, MAX_BILLS), all: looks < MAX_LOOKS && bills.length <= MAX_BILLS };
}

/** The choices of stock that would be better than a packing. */
export function cheaperBills(packing: Packing, spaces: readonly Space[], noFits: NoFits): Bills {
  const present = spaces.map((space) => packing.sheets.filter((sheet) => sheet.space === space).length);
  return billsBelow(packing.pieces, spaces, noFits, limitOf(packing), present);
}

/** Those of the choices that would be better than a packing. */
export function stillCheaper(bills: readonly Bill[], packing: Packing): Bill[] {
  const limit = limitOf(packing);
  return bills.filter(({ price, spaces }) => beats(price, spaces.length, limit));
}
