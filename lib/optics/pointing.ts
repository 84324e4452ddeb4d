/** How exactly the dish must be aimed. */
import { estimate, exact } from './estimate.js';
import type { SetUp } from './set-up.js';
import { caughtShares, squaredRadii } from './spot.js';
import { trace } from './trace.js';
import type { Estimate } from './types.js';
import { f64 } from '../geometry/typed-arrays.js';

/** The sun moves 15° an hour at most (on the equinoxes; less by the cosine of its declination): 4 minutes a degree. */
const MINUTES_A_DEGREE = 4;
/** Aim further off than this is no aim. */
const MAX_DEG = 20;
/** The power on the vessel that still counts. */
const KEPT = 0.9;

export interface Pointing {
  /** Angle off the sun at which the vessel gets 90 % of what it gets when aimed true. */
  readonly toleranceDeg: Estimate;
  /** Time in which the sun moves so far; aimed as far ahead of it, the dish can stand for twice as long. */
  readonly sunMinutes: Estimate;
  /** Light on the vessel at angles off the sun, as a share of that when aimed true; empty when nothing hits it. */
  readonly curve: readonly { readonly angleDeg: number; readonly share: number }[];
}

/** Finds the tolerance by halving, with the same rays at every angle. */
export function pointingTolerance(set: SetUp, rays: number, seed: number): Pointing {
  const caughtAt = (angleDeg: number): Float64Array => {
    const pointing = (angleDeg * Math.PI) / 180;
    const rayed = trace({ ...set.settings, pointing, rays, seed });
    const facing = Math.cos(pointing);
    return caughtShares(rayed, squaredRadii(rayed, set.vesselHeight), set.vesselRadius).map((one) => one * facing);
  };
  // a hair off the axis takes the same path through the trace as every other angle, so that the rays compare
  const best = caughtAt(1e-9);
  const bestMean = estimate(best).value;
  if (bestMean === 0) return { toleranceDeg: exact(0), sunMinutes: exact(0), curve: [] };
  // a ratio of means; its error from how the batches deviate from it
  const kept = (angleDeg: number): Estimate => {
    const caught = caughtAt(angleDeg);
    const value = estimate(caught).value / bestMean;
    return {
      value,
      standardError: estimate(caught.map((one, i) => (one - value * f64(best, i)) / bestMean)).standardError,
    };
  };
  let [low, high] = [0, 1];
  let atHigh = kept(high);
  while (atHigh.value > KEPT && high < MAX_DEG) {
    [low, high] = [high, Math.min(MAX_DEG, high * 2)];
    atHigh = kept(high);
  }
  const beyond = atHigh.value > KEPT;
  while (!beyond && high - low > 2e-3) {
    const middle = (low + high) / 2;
    if (kept(middle).value > KEPT) low = middle;
    else high = middle;
  }
  const angle = beyond ? MAX_DEG : (low + high) / 2;
  const step = 0.05 * angle;
  const here = kept(angle);
  const fall = (kept(angle - step).value - kept(angle + step).value) / (2 * step);
  const toleranceDeg = { value: angle, standardError: !beyond && fall > 0 ? here.standardError / fall : 0 };
  const points = 16;
  return {
    toleranceDeg,
    sunMinutes: {
      value: angle * MINUTES_A_DEGREE,
      standardError: toleranceDeg.standardError * MINUTES_A_DEGREE,
    },
    curve: Array.from({ length: points + 1 }, (_, i) => {
      const angleDeg = (2 * angle * i) / points;
      return { angleDeg, share: i === 0 ? 1 : kept(angleDeg).value };
    }),
  };
}
