/**
 * A packing compressed: the last sheet is made shorter, what now overlaps is separated, and so on. First by
 * large steps with disturbed fresh starts, then by small steps from the best.
 */
import { type Budget, budgetPart } from './budget.js';
import { hasOverlap } from './overlap.js';
import { Misses } from './misses.js';
import type { NoFits } from './no-fit.js';
import type { Packing } from './packing.js';
import type { Random } from '../geometry/index.js';
import { Separation } from './separate.js';
import { f64 } from '../geometry/typed-arrays.js';

/** Share of the work that goes into large steps. */
const EXPLORE = 0.75;
/** Steps of the first phase: the largest and the least, and the failures after which a step is halved. */
const EXPLORE_STEPS = [0.015, 0.0015] as const;
const FAILURES = 4;
const EXPLORE_PATIENCE = { rounds: 60, starts: 2 };
const PRESS_STEPS = [0.004, 0.0001] as const;
const PRESS_PATIENCE = { rounds: 40, starts: 1 };

/** Called with each better packing. */
export type OnBetter = (packing: Packing) => void;

/** Shortens the last sheet to `right`: what lies right of a cut moves left. */
function shorten(packing: Packing, right: number, cut: number): void {
  const last = packing.sheets.length - 1;
  const sheet = packing.lastSheet();
  const by = sheet.right - right;
  sheet.right = right;
  for (let i = 0; i < packing.pieces.length; i++) {
    const x = f64(packing.x, i);
    if (packing.sheet[i] === last && x + packing.orientation(i).shape.width / 2 > cut) packing.x[i] = x - by;
  }
}

/** Sets the last sheet's limit to what is used of it. */
function tighten(packing: Packing): number {
  const last = packing.sheets.length - 1;
  const used = packing.used(last);
  packing.lastSheet().right = used;
  return used;
}

/** Length below which the pieces of the last sheet cannot go: the areas of all, less what the sheets before hold. */
function minLength(packing: Packing): number {
  const last = packing.sheets.length - 1;
  const { space } = packing.lastSheet();
  const area = packing.area();
  const before = packing.sheets.slice(0, last).reduce((sum, sheet) => sum + sheet.space.area, 0);
  const widest =
    last > 0
      ? 0
      : Math.max(
          ...packing.pieces.map(({ orientations }) => Math.min(...orientations.map(({ shape }) => shape.width))),
        );
  return 2 * space.margin + Math.max(widest, (area - before) / Math.max(1e-9, space.height - 2 * space.margin));
}

/** What a search works with. */
export interface Tools {
  readonly noFits: NoFits;
  readonly random: Random;
  readonly budget: Budget;
  /** Gives a part that may lie at any angle one more, if there is one. */
  readonly addAngle: () => void;
}

/** The best packing that the budget allows; `first` is valid and is not changed. */
export function improve(first: Packing, { noFits, random, budget, addAngle }: Tools, onBetter: OnBetter): Packing {
  const best = first.copy();
  if (best.sheets.length === 0 || best.pieces.length === 0) return best;
  let length = tighten(best);
  const floor = minLength(best) * (1 + 2e-9);
  const trial = best.copy();
  const separation = new Separation(trial, noFits, random);
  const accept = (): void => {
    best.assign(trial);
    length = tighten(best);
    onBetter(best);
  };
  // an empty sheet is not compressed further: it is dropped
  const going = (part: Budget): boolean => !part.over() && length > floor && length > 0;
  const exploring = budgetPart(budget, budget.share() + (1 - budget.share()) * EXPLORE);
  // of the present length
  const misses = new Misses(random);
  let step: number = EXPLORE_STEPS[0];
  let failures = 0;
  while (going(exploring)) {
    const target = Math.max(floor, length * (1 - step));
    if (misses.changed(trial)) trial.lastSheet().right = target;
    else {
      trial.assign(best);
      shorten(trial, target, random.real() * length);
    }
    const total = separation.run(exploring, EXPLORE_PATIENCE);
    if (total === 0 && !hasOverlap(trial)) {
      accept();
      misses.forget();
      failures = 0;
    } else {
      addAngle();
      if (++failures % FAILURES === 0) step = Math.max(EXPLORE_STEPS[1], step / 2);
      misses.add(total, trial);
    }
  }
  const begun = budget.share();
  while (going(budget)) {
    const done = (budget.share() - begun) / Math.max(1e-9, 1 - begun);
    const step = PRESS_STEPS[0] * (PRESS_STEPS[1] / PRESS_STEPS[0]) ** done;
    trial.assign(best);
    shorten(trial, Math.max(floor, length * (1 - step)), random.real() * length);
    if (separation.run(budget, PRESS_PATIENCE) === 0 && !hasOverlap(trial)) accept();
  }
  if (length === 0 && best.sheets.length > 1) best.sheets.pop();
  return best;
}
