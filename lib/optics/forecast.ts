/** The forecast of the dish as it will be built. */
import { minRibs } from './closed-form.js';
import { assumptions } from './assumptions.js';
import { bestPlane } from './best-plane.js';
import { type Care, careValues, type CareLevel, slopeErrorAt } from './care.js';
import { estimate, scaled } from './estimate.js';
import { type FluxMap, fluxMap } from './flux-map.js';
import { type LossTable, lossTable } from './losses.js';
import { halfWidthAt } from './mid-line.js';
import { type Pointing, pointingTolerance } from './pointing.js';
import { type SetUp, setUp } from './set-up.js';
import { caughtShares, fewer, interceptCurve, intercepts, shadedShares, shareRadius, squaredRadii } from './spot.js';
import type { SunDay } from './sun-day.js';
import { trace } from './trace.js';
import type { Assumption, Estimate, OpticsInput } from './types.js';
import { type Heat, heatForecast } from './warming.js';
import { f64 } from '../geometry/typed-arrays.js';

export interface ForecastOptions {
  /** Rays of the main trace; 262144 when left out. All traces together take about six times as many. */
  readonly rays?: number;
  readonly seed: number;
  /** Asked now and then; the forecast ends with `ForecastStopped` once it returns true. */
  readonly stop?: () => boolean;
}

/** Thrown when the forecast was asked to stop. */
export class ForecastStopped extends Error {
  override readonly name = 'ForecastStopped';
  readonly code = 'forecast-stopped';
  constructor() {
    super('the forecast was stopped');
  }
}

/** One radius of the intercept curve. */
export interface SpotPoint {
  readonly radius: number;
  /** Share of the light that the mirror gives back within this radius. */
  readonly intercept: Estimate;
  /** Brightness in suns on the ring that ends at this radius. */
  readonly suns: Estimate;
}

export interface Forecast {
  readonly seed: number;
  readonly rays: number;
  readonly irradianceWPerM2: number;
  readonly day: SunDay | null;
  readonly vessel: { readonly radius: number; readonly height: number };
  readonly spot: {
    readonly intercept: Estimate;
    /** Radii that hold half and nine tenths of the light in the vessel's plane. */
    readonly radius50: Estimate;
    readonly radius90: Estimate;
    /** Height above the vertex of the level plane in which the 90 % radius is least, and what it is there. */
    readonly bestPlane: Estimate;
    readonly bestRadius90: Estimate;
    readonly interceptInBestPlane: Estimate;
    /** Half the reflecting width at the rim: no care makes the spot smaller. */
    readonly halfChordAtRim: number;
    readonly curve: readonly SpotPoint[];
  };
  /** Brightness on the vessel in suns: mean over it, and in the brightest cell of the map. */
  readonly concentration: { readonly mean: Estimate; readonly peak: Estimate };
  readonly map: FluxMap;
  readonly power: LossTable;
  readonly heat: Heat;
  readonly pointing: Pointing;
  /** What the vessel takes up less (positive: lost), in watts. */
  readonly sensitivity: {
    /** For a millimetre, one standard deviation, by which each rib wanders once up and down along its length. */
    readonly ribMillimetreW: Estimate;
    /** For one more mrad of waviness. */
    readonly wavinessMradW: Estimate;
  };
  /** Least ribs at which the panels' flat width alone falls wholly on the vessel. */
  readonly minRibs: number;
  /** What good, usual and poor care make of it. */
  readonly care: Care;
  readonly assumptions: readonly Assumption[];
}

const RAYS = 262_144;
/** Rays for results that compare two traces ray by ray, and for searches. */
const COMPARED = 1 / 4;
const SEARCHED = 1 / 16;
const CURVE_POINTS = 120;

/**
 * Forecasts. Two seconds or so for the usual number of rays; same input and seed, same result.
 * @param input checked by `inputProblems`
 * @throws ForecastStopped; RangeError for an input that the check refuses
 */
export function forecast(input: OpticsInput, options: ForecastOptions): Forecast {
  const made = asBuilt(input, options);
  const at = (level: CareLevel) => {
    const slopeErrorMrad = slopeErrorAt(input, level);
    const other = { ...input, sun: { ...input.sun, slopeErrorMrad } };
    return careValues(slopeErrorMrad, asBuilt(other, { ...options, rays: made.rays * COMPARED }));
  };
  return { ...made, care: { good: at('good'), usual: careValues(input.sun.slopeErrorMrad, made), poor: at('poor') } };
}

/** The forecast for the care that the input states. */
function asBuilt(input: OpticsInput, options: ForecastOptions): Omit<Forecast, 'care'> {
  const { seed } = options;
  const rays = options.rays ?? RAYS;
  const pause = () => {
    if (options.stop?.() === true) throw new ForecastStopped();
  };
  const set = setUp(input);
  const { vesselRadius, vesselHeight, settings } = set;
  const { apertureRadius, layout } = input.dish;
  pause();
  const built = trace({ ...settings, rays, seed });
  const squared = squaredRadii(built, vesselHeight);
  pause();
  const power = lossTable(input, set, built, rays, seed);
  pause();
  const radius90 = shareRadius(built, squared, 0.9, apertureRadius);
  const best = bestPlane(fewer(built, rays * SEARCHED), 0.9, apertureRadius);
  const inBest = squaredRadii(built, best.value);
  pause();
  // light that the mirror gives back, as an area of full sun, mm²
  const given = set.areas.mirror * input.reflector.reflectance * Math.cos(settings.pointing);
  const map = fluxMap(built, vesselHeight, 1.4 * vesselRadius, given, layout.ribs.length, settings.pointing === 0);
  pause();
  const widest = Number.isFinite(radius90.value) ? 1.5 * radius90.value : 0;
  const curveEnd = Math.min(apertureRadius, Math.max(1.4 * vesselRadius, widest));
  const unshaded = 1 - estimate(shadedShares(built)).value;
  const onRing = interceptCurve(built, squared, curveEnd, CURVE_POINTS);
  const pointing = pointingTolerance(set, rays * SEARCHED, seed);
  pause();
  return {
    seed,
    rays: built.count,
    irradianceWPerM2: set.irradianceWPerM2,
    day: set.day,
    vessel: { radius: vesselRadius, height: vesselHeight },
    spot: {
      intercept: estimate(intercepts(built, squared, vesselRadius)),
      radius50: shareRadius(built, squared, 0.5, apertureRadius),
      radius90,
      bestPlane: best,
      bestRadius90: shareRadius(built, inBest, 0.9, apertureRadius),
      interceptInBestPlane: estimate(intercepts(built, inBest, vesselRadius)),
      halfChordAtRim: halfWidthAt(set.line, set.line.to),
      curve: onRing.map(({ radius, intercept, ringShare }) => {
        const inner = radius - curveEnd / CURVE_POINTS;
        const ring = Math.PI * (radius * radius - inner * inner);
        return { radius, intercept, suns: scaled(ringShare, radius === 0 ? 0 : (given * unshaded) / ring) };
      }),
    },
    concentration: {
      mean: scaled(power.arrivingW, 1e6 / (set.irradianceWPerM2 * Math.PI * vesselRadius ** 2)),
      peak: map.peak,
    },
    map,
    power,
    heat: heatForecast(input, set, power.takenUpW, map.peak),
    pointing,
    sensitivity: sensitivity(input, set, rays * COMPARED, seed),
    minRibs: minRibs(vesselRadius, apertureRadius),
    assumptions: assumptions(input, set),
  };
}

function sensitivity(input: OpticsInput, set: SetUp, rays: number, seed: number): Forecast['sensitivity'] {
  const { settings, vesselHeight, vesselRadius } = set;
  const caught = (change: Partial<typeof settings>) => {
    const traced = trace({ ...settings, ...change, rays, seed });
    return caughtShares(traced, squaredRadii(traced, vesselHeight), vesselRadius);
  };
  const now = caught({});
  const watts =
    ((set.irradianceWPerM2 * set.areas.mirror) / 1e6) *
    Math.cos(settings.pointing) *
    input.reflector.reflectance *
    input.vessel.absorptance;
  const lost = (changed: Float64Array) => estimate(changed.map((one, i) => (f64(now, i) - one) * watts));
  return {
    ribMillimetreW: lost(caught({ ribError: 1 })),
    wavinessMradW: lost(caught({ slopeError: settings.slopeError + 1e-3 })),
  };
}
