/** How exactly the dish must be aimed, by the direction in which it is off. */
import { estimate } from './estimate.js';
import { type SetUp, solidAt, takenUpShares } from './set-up.js';
import { passingTraces, type Rays, trace, type TraceSettings } from './trace.js';
import type { Estimate, OpticsInput } from './types.js';
import { f64 } from '../geometry/typed-arrays.js';
import { element } from '../geometry/index.js';

/** Where the dish points: below the sun, above it, or beside it (left and right are alike). */
export const directions = ['low', 'high', 'aside'] as const;
export type AimDirection = (typeof directions)[number];

/** Where the sun then stands off the axis: from the upper rim over the level one. */
const towards: Readonly<Record<AimDirection, number>> = { low: 0, high: Math.PI, aside: Math.PI / 2 };

/** Aim further off than this is no aim. */
const MAX_DEG = 20;
/** The power that still counts. */
const KEPT = 0.9;
const RAD = Math.PI / 180;

export interface Aim {
  /** Angle off the sun at which the vessel takes up 90 % of what it does when aimed true. */
  readonly toleranceDeg: Readonly<Record<AimDirection, Estimate>>;
  /** Power at angles off the sun, as a share of that when aimed true; empty when nothing hits it. */
  readonly curve: readonly ({ readonly angleDeg: number } & Readonly<Record<AimDirection, number>>)[];
}

/** What the vessel takes up at angles off the sun, traced once and asked for many heights of the sun. */
export class AimTraces {
  readonly #traced = new Map<string, Rays>();
  /** For angles that nobody asks for again. */
  readonly #passing = passingTraces();
  readonly #aimed = new Map<string, Float64Array>();
  readonly #input: OpticsInput;
  readonly #set: SetUp;
  readonly #rays: number;
  readonly #seed: number;

  constructor(input: OpticsInput, set: SetUp, rays: number, seed: number) {
    this.#input = input;
    this.#set = set;
    this.#rays = rays;
    this.#seed = seed;
  }

  /** Rays of a dish that is off by an angle; the same random numbers for every angle. */
  rays(direction: AimDirection, angleDeg: number): Rays {
    const key = `${angleDeg === 0 ? '' : direction} ${angleDeg}`;
    const traced = this.#traced.get(key) ?? trace(this.#settings(direction, angleDeg));
    this.#traced.set(key, traced);
    return traced;
  }

  #settings(direction: AimDirection, angleDeg: number): TraceSettings {
    const [rays, seed] = [this.#rays, this.#seed];
    return { ...this.#set.settings, pointing: angleDeg * RAD, towards: towards[direction], rays, seed };
  }

  /** Power as shares of the light on an aimed mirror, batch by batch. */
  takenUp(direction: AimDirection, angleDeg: number, sunElevation: number): Float64Array {
    return this.#takenUpOf(this.rays(direction, angleDeg), direction, angleDeg, sunElevation);
  }

  #takenUpOf(rays: Rays, direction: AimDirection, angleDeg: number, sunElevation: number): Float64Array {
    const off = angleDeg * RAD;
    const solid = solidAt(this.#input, sunElevation, off, towards[direction]);
    const facing = Math.cos(off);
    return takenUpShares(rays, solid, this.#input).map((one) => one * facing);
  }

  #aimedTrue(direction: AimDirection, sunElevation: number): Float64Array {
    const key = `${direction} ${sunElevation}`;
    const shares = this.#aimed.get(key) ?? this.takenUp(direction, 0, sunElevation);
    this.#aimed.set(key, shares);
    return shares;
  }

  /** Share of the power when aimed true; its error from how the batches deviate from it. */
  kept(direction: AimDirection, angleDeg: number, sunElevation: number): Estimate {
    return this.#keptOf(this.takenUp(direction, angleDeg, sunElevation), direction, sunElevation);
  }

  /** The same at an angle that is not asked for at another height of the sun: its rays are not kept. */
  keptOnce(direction: AimDirection, angleDeg: number, sunElevation: number): Estimate {
    const rays = this.#passing(this.#settings(direction, angleDeg));
    return this.#keptOf(this.#takenUpOf(rays, direction, angleDeg, sunElevation), direction, sunElevation);
  }

  #keptOf(taken: Float64Array, direction: AimDirection, sunElevation: number): Estimate {
    const best = this.#aimedTrue(direction, sunElevation);
    const bestMean = estimate(best).value;
    if (bestMean === 0) return { value: 0, standardError: 0 };
    const value = estimate(taken).value / bestMean;
    return {
      value,
      standardError: estimate(taken.map((one, i) => (one - value * f64(best, i)) / bestMean)).standardError,
    };
  }
}

/** The tolerance is found to so many degrees, far closer than anybody aims. */
const PRECISION_DEG = 2e-3;

/**
 * Where a falling function crosses 0 between two places, by false position with the Illinois rule (Dowell and Jarratt,
 * BIT 11, 1971; from memory).
 * @param atLow above 0
 * @param atHigh at most 0
 */
function crossing(of: (x: number) => number, low: number, atLow: number, high: number, atHigh: number): number {
  let before = Infinity;
  let moved: 'low' | 'high' | null = null;
  for (;;) {
    const x = low + ((high - low) * atLow) / (atLow - atHigh);
    if (high - low <= PRECISION_DEG || Math.abs(x - before) <= PRECISION_DEG / 2) return x;
    const at = of(x);
    before = x;
    // an end that stays twice counts for half, or the other would creep towards the crossing
    if (at > 0) {
      [low, atLow] = [x, at];
      if (moved === 'low') atHigh /= 2;
      moved = 'low';
    } else {
      [high, atHigh] = [x, at];
      if (moved === 'high') atLow /= 2;
      moved = 'high';
    }
  }
}

/** The tolerance in one direction. */
export function aimTolerance(traces: AimTraces, direction: AimDirection, sunElevation: number): Estimate {
  const kept = (angleDeg: number) => traces.keptOnce(direction, angleDeg, sunElevation);
  const over = (angleDeg: number): number => kept(angleDeg).value - KEPT;
  let [low, high] = [0, 1];
  let [atLow, atHigh] = [1 - KEPT, over(high)];
  while (atHigh > 0 && high < MAX_DEG) {
    [low, atLow] = [high, atHigh];
    high = Math.min(MAX_DEG, high * 2);
    atHigh = over(high);
  }
  if (atHigh > 0) return { value: MAX_DEG, standardError: 0 };
  const angle = crossing(over, low, atLow, high, atHigh);
  const step = Math.max(0.05 * angle, 2e-3);
  const beyond = kept(angle + step);
  const fall = (kept(Math.max(0, angle - step)).value - beyond.value) / (2 * step);
  return { value: angle, standardError: fall > 0 ? beyond.standardError / fall : 0 };
}

/** Angles of the quick search, as shares of a tolerance that is known for another height of the sun. */
const QUICK_SHARES = [0, 0.25, 0.5, 0.75, 1, 1.3, 1.7, 2.5, 4, 6];

/**
 * The tolerance at another height of the sun, from traces at a few angles that all heights share, straight in between.
 * @param about tolerance at some height, which sets the angles
 */
export function quickTolerance(
  traces: AimTraces,
  direction: AimDirection,
  sunElevation: number,
  about: number,
): number {
  const unit = Math.max(about, 0.05);
  const angles = QUICK_SHARES.map((share) => share * unit).filter((angle) => angle <= MAX_DEG);
  let before = 1;
  for (let i = 1; i < angles.length; i++) {
    const [from, to] = [element(angles, i - 1), element(angles, i)];
    const { value } = traces.kept(direction, to, sunElevation);
    if (value <= KEPT) return from + ((to - from) * (before - KEPT)) / (before - value || 1);
    before = value;
  }
  return element(angles, angles.length - 1);
}

const CURVE_POINTS = 8;

/** Tolerance and curve at the height of the sun of the set-up. */
export function aimOf(traces: AimTraces, sunElevation: number): Aim {
  const each = <T>(of: (direction: AimDirection) => T): Record<AimDirection, T> => ({
    low: of('low'),
    high: of('high'),
    aside: of('aside'),
  });
  const toleranceDeg = each((direction) => aimTolerance(traces, direction, sunElevation));
  const widest = Math.max(...directions.map((direction) => toleranceDeg[direction].value));
  const lit = estimate(traces.takenUp('low', 0, sunElevation)).value > 0;
  return {
    toleranceDeg,
    curve: lit
      ? Array.from({ length: CURVE_POINTS + 1 }, (_, i) => {
          const angleDeg = (2 * widest * i) / CURVE_POINTS;
          return {
            angleDeg,
            ...each((direction) => (i === 0 ? 1 : traces.kept(direction, angleDeg, sunElevation).value)),
          };
        })
      : [],
  };
}
