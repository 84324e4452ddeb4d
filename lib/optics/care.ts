/** The same dish built with good, usual and poor care: one number promises too much. */
import { lightOn, takenUpOf, withShade } from './catch.js';
import { AimTraces, aimTolerance } from './aim.js';
import { estimate } from './estimate.js';
import { fluxMap } from './flux-map.js';
import type { Forecast } from './forecast.js';
import { balanceOf } from './heat-forecast.js';
import { interceptOf, setUp } from './set-up.js';
import { shareRadius, squaredRadii } from './spot.js';
import { trace } from './trace.js';
import type { Estimate, OpticsInput } from './types.js';

/** The quantities that care moves; null where there is no vessel or load to ask them of. */
export interface CareValues {
  /** Waviness that the care stands for. */
  readonly slopeErrorMrad: number;
  readonly intercept: Estimate | null;
  readonly radius90: Estimate;
  readonly peakSuns: Estimate;
  readonly takenUpW: Estimate | null;
  /** Null also when the target is out of reach. */
  readonly minutesToTarget: Estimate | null;
  readonly stagnationC: Estimate | null;
  /** Standardised; null also when too few intervals fit below boiling. */
  readonly cookingPowerW: number | null;
  /** To a side, and too low. */
  readonly toleranceDeg: Estimate | null;
  readonly lowToleranceDeg: Estimate | null;
}

export const careLevels = ['good', 'usual', 'poor'] as const;
export type CareLevel = (typeof careLevels)[number];
export type Care = Readonly<Record<CareLevel, CareValues>>;

/** Waviness at each level, mrad. */
function slopeErrorAt({ sun }: OpticsInput, level: CareLevel): number {
  return { good: sun.slopeErrorGoodMrad, usual: sun.slopeErrorMrad, poor: sun.slopeErrorPoorMrad }[level];
}

/**
 * The values at a level of care.
 * @param rays of the trace, and of the search for the aim
 */
function careAt(input: OpticsInput, level: CareLevel, rays: number, searched: number, seed: number): CareValues {
  const slopeErrorMrad = slopeErrorAt(input, level);
  const other = { ...input, sun: { ...input.sun, slopeErrorMrad } };
  const set = setUp(other);
  const { solid, planeHeight, given, settings } = set;
  const { vessel, dish } = input;
  const built = trace({ ...settings, rays, seed });
  const shaded = withShade(built, solid);
  const squared = squaredRadii(shaded, planeHeight);
  const radius90 = shareRadius(shaded, squared, 0.9, dish.apertureRadius);
  const across = solid?.radius ?? (Number.isFinite(radius90.value) ? radius90.value : dish.apertureRadius);
  const symmetric = settings.pointing === 0 && (solid === null || solid.upX === 0);
  const peakSuns = fluxMap(shaded, planeHeight, 1.4 * across, given, dish.layout.ribs.length, symmetric).peak;
  const nothing = { minutesToTarget: null, stagnationC: null, cookingPowerW: null };
  if (vessel === null || solid === null)
    return {
      slopeErrorMrad,
      radius90,
      peakSuns,
      ...nothing,
      intercept: null,
      takenUpW: null,
      toleranceDeg: null,
      lowToleranceDeg: null,
    };
  const watts = (set.irradianceWPerM2 * given) / 1e6;
  const light = lightOn(built, solid);
  const takenUpW = estimate(takenUpOf(light, vessel).map((share) => share * watts));
  const { warming, stagnationC, cooking } = balanceOf(other, vessel, set, takenUpW);
  const traces = new AimTraces(other, set, searched, seed);
  return {
    slopeErrorMrad,
    intercept: estimate(interceptOf(light)),
    radius90,
    peakSuns,
    takenUpW,
    minutesToTarget: warming.kind === 'reached' ? warming.minutes : null,
    stagnationC,
    cookingPowerW: cooking.kind === 'fitted' ? cooking.powerW : null,
    toleranceDeg: aimTolerance(traces, 'aside', set.sunElevation),
    lowToleranceDeg: aimTolerance(traces, 'low', set.sunElevation),
  };
}

/** What a forecast of the care that the input states has found already. */
function careFound(input: OpticsInput, { spot, map, power, heat, vessel }: Omit<Forecast, 'care'>): CareValues {
  return {
    slopeErrorMrad: input.sun.slopeErrorMrad,
    intercept: vessel && vessel.intercept,
    radius90: spot.radius90,
    peakSuns: map.peak,
    takenUpW: vessel && power.takenUpW,
    minutesToTarget: heat?.warming.kind === 'reached' ? heat.warming.minutes : null,
    stagnationC: heat && heat.stagnationC,
    cookingPowerW: heat?.cooking.kind === 'fitted' ? heat.cooking.powerW : null,
    toleranceDeg: vessel && vessel.aim.toleranceDeg.aside,
    lowToleranceDeg: vessel && vessel.aim.toleranceDeg.low,
  };
}

/** All three levels: usual care as found, the others traced by themselves. */
export function careOf(
  input: OpticsInput,
  made: Omit<Forecast, 'care'>,
  rays: number,
  searched: number,
  seed: number,
): Care {
  return {
    good: careAt(input, 'good', rays, searched, seed),
    usual: careFound(input, made),
    poor: careAt(input, 'poor', rays, searched, seed),
  };
}
