/** What the vessel loses, from a run with the dish covered. */
import { element } from '../../geometry/index.js';
import type { Estimate } from '../types.js';
import type { Interval } from './intervals.js';
import { throughOrigin } from './line-fit.js';

export interface Cooling {
  /** Loss for each kelvin above the air, W/K: heat given off over ∫(T − air)dt (Newton's law of cooling). */
  readonly lossWPerK: Estimate;
  /** Measured loss as a multiple of the forecast's at the same temperatures and wind. */
  readonly ofForecast: Estimate;
  readonly intervals: number;
}

/** A load this close to the air tells nothing of its losses, K. */
const MIN_DIFFERENCE = 5;

/** ∫ f dt over the readings of an interval, straight between them. */
export function overTime({ readings }: Interval, f: (reading: Interval['readings'][number]) => number): number {
  let sum = 0;
  for (let i = 1; i < readings.length; i++) {
    const [a, b] = [element(readings, i - 1), element(readings, i)];
    sum += ((f(a) + f(b)) / 2) * (b.seconds - a.seconds);
  }
  return sum;
}

/**
 * @param intervals while the dish is covered
 * @param heatCapacityJPerK of load and vessel
 * @param lossW the forecast's loss at a reading, W
 * @returns null with fewer than two intervals that tell something
 */
export function coolingOf(
  intervals: readonly Interval[],
  heatCapacityJPerK: number,
  lossW: (reading: Interval['readings'][number]) => number,
): Cooling | null {
  const warm = intervals.filter(({ toC, ambientC }) => toC > ambientC + MIN_DIFFERENCE);
  if (warm.length < 2) return null;
  const given = warm.map(({ fromC, toC }) => heatCapacityJPerK * (fromC - toC));
  return {
    lossWPerK: throughOrigin(
      warm.map((one) => overTime(one, ({ loadC, ambientC }) => loadC - ambientC)),
      given,
    ),
    ofForecast: throughOrigin(
      warm.map((one) => overTime(one, lossW)),
      given,
    ),
    intervals: warm.length,
  };
}
