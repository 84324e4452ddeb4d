/** The nest of one group of material made better: first the sheets it buys, then the length of the last one. */
import { element } from '../geometry/index.js';
import { type Budget, budgetPart } from './budget.js';
import { hasOverlap } from './overlap.js';
import { improve, type OnBetter, type Tools } from './improve.js';
import { Misses } from './misses.js';
import { Packing } from './packing.js';
import { better } from './plan.js';
import type { Random } from './random.js';
import { costAndLength } from './result.js';
import { Separation } from './separate.js';
import type { Space } from './space.js';
import { f64, i32 } from '../geometry/typed-arrays.js';

/** Sheets fuller than this share are not tried: out of reach for any but jigsaws. */
const FULLEST = 0.93;
/** Share of the work that goes into each try at other sheets, and into all of them. */
const SHARE_PER_TRY = 0.25;
const SHARE_OF_TRIES = 0.5;
const PATIENCE = { rounds: 40, starts: 1 };

const isRoll = ({ stock }: Space): boolean => stock.shape.kind === 'roll';

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

/** Other choices of sheets that would be cheaper: one left out, or one exchanged. Cheapest first. */
function cheaperChoices(packing: Packing, spaces: readonly Space[]): { sheets: Space[]; removed: number }[] {
  const present = packing.sheets.map(({ space }) => space);
  const area = packing.area();
  const price = (sheets: readonly Space[]): number =>
    sheets.reduce((sum, space) => sum + (isRoll(space) ? 0 : space.stock.price), 0);
  const choices: { sheets: Space[]; removed: number }[] = [];
  const seen = new Set<Space>();
  // from the back: the least filled sheet of a kind is the one to go
  for (let index = present.length - 1; index >= 0; index--) {
    const old = element(present, index);
    if (isRoll(old) || seen.has(old)) continue;
    seen.add(old);
    const others = present.filter((_, i) => i !== index);
    if (others.length > 0) choices.push({ sheets: others, removed: index });
    for (const space of spaces) {
      const used = others.filter((other) => other === space).length;
      if (!isRoll(space) && space.stock.price < old.stock.price && used < space.stock.count)
        choices.push({ sheets: [...others, space], removed: index });
    }
  }
  return choices
    .filter(({ sheets }) => sheets.reduce((sum, space) => sum + space.area, 0) * FULLEST >= area)
    .sort((a, b) => price(a.sheets) - price(b.sheets) || a.sheets.length - b.sheets.length);
}

/** The pieces of a packing on other sheets, those of the sheet that went scattered over the rest. */
function moved(packing: Packing, choice: { sheets: Space[]; removed: number }, random: Random): Packing {
  const trial = packing.copy();
  const { sheets, removed } = choice;
  trial.sheets.splice(0, trial.sheets.length, ...sheets.map((space) => ({ space, right: space.width })));
  for (let i = 0; i < trial.pieces.length; i++) {
    const sheet = i32(trial.sheet, i);
    if (sheet === removed)
      scatter(
        trial,
        i,
        sheets.length > packing.sheets.length - 1 ? sheets.length - 1 : random.integer(sheets.length),
        random,
      );
    else if (sheet > removed) trial.sheet[i] = sheet - 1;
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

/**
 * The best packing that the budget allows; `first` is valid. Pieces that it leaves over and that cannot be squeezed in
 * stay left over.
 */
export function improveGroup(first: Packing, spaces: readonly Space[], tools: Tools, onBetter: OnBetter): Packing {
  const { random, budget } = tools;
  let best = first;
  if (best.sheet.some((sheet) => sheet < 0)) {
    best = squeezeIn(best, tools, budgetPart(budget, budget.share() + (1 - budget.share()) * SHARE_PER_TRY));
    best = placedOnly(best);
  }
  if (best.pieces.length === 0) return best;
  best = best.copy();
  lastFirst(best);
  const begun = budget.share();
  const shareOf = (part: number): number => begun + (1 - begun) * part;
  for (let again = true; again && budget.share() < shareOf(SHARE_OF_TRIES);) {
    again = false;
    for (const choice of cheaperChoices(best, spaces)) {
      const part = budgetPart(budget, Math.min(shareOf(SHARE_OF_TRIES), budget.share() + (1 - begun) * SHARE_PER_TRY));
      if (part.over()) break;
      const trial = moved(best, choice, random);
      if (!freed(trial, tools, part) || !better(trial, best)) continue;
      best = trial;
      lastFirst(best);
      onBetter(best);
      again = true;
      break;
    }
  }
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
