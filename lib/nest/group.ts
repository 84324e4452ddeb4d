/** The nest of one group of material made better: first the sheets it buys, then the length of the last one. */
import { element, type Random } from '../geometry/index.js';
import { type Bill, cheaperBills, stillCheaper } from './bill.js';
import { type Budget, budgetPart } from './budget.js';
import { hasOverlap } from './overlap.js';
import { layOut } from './lay-out.js';
import { improve, type OnBetter, type Tools } from './improve.js';
import { Misses } from './misses.js';
import { Packing } from './packing.js';
import { better } from './plan.js';
import { costAndLength, isRoll } from './result.js';
import { Separation } from './separate.js';
import type { Space } from './space.js';
import { f64, i32 } from '../geometry/typed-arrays.js';

/** Sheets fuller than this share are not tried: out of reach for any but jigsaws. */
const FULLEST = 0.93;
/** Jigsaws of no more pieces than this are tried, however full. */
const JIGSAW = 12;
/** Share of the work that goes into a round of tries at other sheets, into one try at least, and into all of them. */
const SHARE_PER_TRY = 0.25;
const MIN_SLICE = 0.02;
const SHARE_OF_TRIES = 0.5;
/** Share of it that goes into laying the pieces one by one. */
const SHARE_OF_LAYING = 0.15;
const PATIENCE = { rounds: 40, starts: 1 };

/** The sheet to be compressed goes last: a roll, which is paid by length, or else the least used. */
function lastFirst(packing: Packing): void {
  const order = packing.sheets
    .map((sheet, index) => ({ sheet, index, used: packing.used(index) }))
    .sort(
      (a, b) => Number(isRoll(a.sheet.space)) - Number(isRoll(b.sheet.space)) || b.used - a.used || a.index - b.index,
    );
  const target = new Map(order.map(({ index }, at) => [index, at]));
  for (let i = 0; i < packing.pieces.length; i++) packing.sheet[i] = target.get(i32(packing.sheet, i)) ?? -1;
  packing.sheets.splice(0, packing.sheets.length, ...order.map(({ sheet }) => sheet));
}

/** The pieces of a packing on other sheets: those of sheets that stay where they are, the others scattered over the rest. */
function exchanged(packing: Packing, spaces: readonly Space[], random: Random): Packing {
  const trial = packing.copy();
  trial.sheets.splice(0, trial.sheets.length, ...spaces.map((space) => ({ space, right: space.width })));
  const free = new Set(spaces.keys());
  const target = packing.sheets.map(({ space }): number | null => {
    const same = [...free].find((i) => spaces[i] === space);
    if (same === undefined) return null;
    free.delete(same);
    return same;
  });
  const open = free.size > 0 ? [...free] : [...spaces.keys()];
  for (let i = 0; i < trial.pieces.length; i++) {
    const kept = target[i32(packing.sheet, i)] ?? null;
    if (kept === null) scatter(trial, i, element(open, random.integer(open.length)), random);
    else trial.sheet[i] = kept;
  }
  return trial;
}

/** Moves pieces until nothing overlaps, again and again from near misses; false when the budget is not enough. */
function freed(packing: Packing, { noFits, random }: Tools, budget: Budget): boolean {
  const separation = new Separation(packing, noFits, random);
  const misses = new Misses(random);
  while (!budget.over()) {
    const total = separation.run(budget, PATIENCE);
    if (total === 0 && !hasOverlap(packing)) return true;
    misses.add(total, packing);
    misses.changed(packing);
  }
  return false;
}

function scatter(packing: Packing, i: number, sheet: number, random: Random): void {
  const { space } = packing.sheetAt(sheet);
  packing.sheet[i] = sheet;
  packing.orientationIndex[i] = random.integer(element(packing.pieces, i).orientations.length);
  packing.x[i] = random.real() * space.width;
  packing.y[i] = random.real() * space.height;
}

/** Only the pieces that orientation somewhere. */
function placedOnly(packing: Packing): Packing {
  const placed = packing.pieces.flatMap((_, i) => (i32(packing.sheet, i) >= 0 ? [i] : []));
  const kept = new Packing(placed.map((i) => element(packing.pieces, i)));
  placed.forEach((i, k) => {
    kept.x[k] = f64(packing.x, i);
    kept.y[k] = f64(packing.y, i);
    kept.orientationIndex[k] = i32(packing.orientationIndex, i);
    kept.sheet[k] = i32(packing.sheet, i);
  });
  kept.sheets.push(...packing.sheets);
  return kept;
}

/** Tries to find room for pieces that were left over, all or none. */
function squeezeIn(packing: Packing, tools: Tools, budget: Budget): Packing {
  const trial = packing.copy();
  if (trial.sheets.length === 0) return packing;
  const area = trial.area();
  if (trial.sheets.reduce((sum, { space }) => sum + space.area, 0) * FULLEST < area) return packing;
  for (let i = 0; i < trial.pieces.length; i++) {
    if (i32(trial.sheet, i) < 0) scatter(trial, i, tools.random.integer(trial.sheets.length), tools.random);
  }
  return freed(trial, tools, budget) ? trial : packing;
}

/** The same pieces on the cheapest sheets that some of the work finds room on. */
function onCheaperSheets(first: Packing, spaces: readonly Space[], tools: Tools, onBetter: OnBetter): Packing {
  const { noFits, random, budget } = tools;
  const begun = budget.share();
  const end = begun + (1 - begun) * SHARE_OF_TRIES;
  let best = first;
  let { bills } = cheaperBills(best, spaces, noFits);
  const take = (bill: Bill, trial: Packing | null): boolean => {
    if (trial === null) return false;
    // a roll may turn out longer than its area promised
    if (!better(trial, best)) {
      bills = bills.filter((other) => other !== bill);
      return false;
    }
    best = trial;
    lastFirst(best);
    onBetter(best);
    bills = stillCheaper(bills, best);
    return true;
  };
  const laying = budgetPart(budget, begun + (1 - begun) * SHARE_OF_LAYING);
  // the first that takes them all is the cheapest of those that this way finds
  bills.some((bill) => take(bill, layOut(best.pieces, bill.spaces, noFits, random, laying)));
  const { length: count } = best.pieces;
  // the loosest first: they are found soonest, and what they leave of the work goes to those that are cheaper
  const untried = (): Bill[] =>
    bills
      .filter(({ filled }) => filled <= FULLEST || count <= JIGSAW)
      .sort((a, b) => a.filled - b.filled || a.price - b.price);
  while (budget.share() < end) {
    const tried = untried();
    const slice = Math.max(MIN_SLICE, SHARE_PER_TRY / Math.max(1, tried.length)) * (1 - begun);
    const found = tried.some((bill) => {
      const part = budgetPart(budget, Math.min(end, budget.share() + slice));
      if (part.over()) return false;
      const trial = exchanged(best, bill.spaces, random);
      return freed(trial, tools, part) && take(bill, trial);
    });
    if (!found && (tried.length === 0 || budget.over())) break;
  }
  return best;
}

/**
 * The best packing that the budget allows; `first` is valid. Pieces that it leaves over and that cannot be squeezed in
 * stay left over.
 */
export function improveGroup(first: Packing, spaces: readonly Space[], tools: Tools, onBetter: OnBetter): Packing {
  const { budget } = tools;
  let best = first.copy();
  lastFirst(best);
  best = onCheaperSheets(best, spaces, tools, onBetter);
  if (best.sheet.some((sheet) => sheet < 0)) {
    best = squeezeIn(best, tools, budgetPart(budget, budget.share() + (1 - budget.share()) * SHARE_PER_TRY));
    best = placedOnly(best);
  }
  if (best.pieces.length === 0) return best;
  // a sheet that is emptied goes, and the next one is compressed
  for (let again = true; again && !budget.over();) {
    const sheets = best.sheets.length;
    const compressed = improve(best, tools, onBetter);
    again = costAndLength(compressed).last > 0 && compressed.sheets.length < sheets;
    best = compressed;
    lastFirst(best);
  }
  return best;
}
