/** The forecast of the dish as it will be built. */
import { lightOn, withShade } from './catch.js';
import { AimTraces } from './aim.js';
import { assumptions } from './assumptions.js';
import { bestPlane } from './best-plane.js';
import { type Care, careOf } from './care.js';
import { type DayForecast, dayForecast } from './day-forecast.js';
import { estimate, scaled } from './estimate.js';
import { type FluxMap, fluxMap } from './flux-map.js';
import { type Heat, heatForecast } from './heat-forecast.js';
import { type LossTable, lossTable } from './losses.js';
import { halfWidthAt } from './mid-line.js';
import { setUp } from './set-up.js';
import { fewer, interceptCurve, shadedShares, shareRadius, squaredRadii } from './spot.js';
import type { SunDay } from './sun-day.js';
import { trace } from './trace.js';
import type { Assumption, Estimate, OpticsInput } from './types.js';
import { type VesselForecast, vesselForecast } from './vessel-forecast.js';
import { type Slip, workmanship } from './workmanship.js';

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
  /** The moment that the values hold for: noon at a site, else what the design names. */
  readonly irradianceWPerM2: number;
  readonly sunElevationDeg: number;
  readonly day: SunDay | null;
  /** The light as it crosses a plane square to the axis: that of the vessel's base, or of the focus. */
  readonly spot: {
    readonly planeHeight: number;
    /** Radii that hold half and nine tenths of the light. */
    readonly radius50: Estimate;
    readonly radius90: Estimate;
    /** Height above the vertex of the plane in which the 90 % radius is least, and what it is there. */
    readonly bestPlane: Estimate;
    readonly bestRadius90: Estimate;
    /** Half the reflecting width at the rim: no care makes the spot smaller. */
    readonly halfChordAtRim: number;
    readonly curve: readonly SpotPoint[];
  };
  readonly map: FluxMap;
  readonly power: LossTable;
  /** Null for the bare focus. */
  readonly vessel: VesselForecast | null;
  readonly heat: Heat | null;
  /** The day by the hour and the months; null without a site or a vessel. */
  readonly byHour: DayForecast | null;
  /** What good, usual and poor care make of it. */
  readonly care: Care;
  /** What slips of the work cost; empty for the bare focus. */
  readonly workmanship: readonly Slip[];
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
  const rays = options.rays ?? RAYS;
  return { ...made, care: careOf(input, made, rays * COMPARED, rays * SEARCHED, options.seed) };
}

/** The forecast for the care that the input states. */
function asBuilt(input: OpticsInput, options: ForecastOptions): Omit<Forecast, 'care'> {
  const { seed } = options;
  const rays = options.rays ?? RAYS;
  const pause = () => {
    if (options.stop?.() === true) throw new ForecastStopped();
  };
  const set = setUp(input);
  const { solid, settings, planeHeight, given, irradianceWPerM2 } = set;
  const { apertureRadius, layout } = input.dish;
  const { vessel } = input;
  pause();
  const built = trace({ ...settings, rays, seed });
  const shaded = withShade(built, solid);
  const squared = squaredRadii(shaded, planeHeight);
  pause();
  const few = fewer(built, rays * COMPARED);
  const light = solid && lightOn(built, solid);
  const power = lossTable(input, set, built, light, seed);
  pause();
  const radius90 = shareRadius(shaded, squared, 0.9, apertureRadius);
  const best = bestPlane(fewer(shaded, rays * SEARCHED), 0.9, apertureRadius);
  const inBest = squaredRadii(shaded, best.value);
  pause();
  const widest = Number.isFinite(radius90.value) ? radius90.value : 0;
  const across = solid === null ? Math.max(1, widest) : solid.radius;
  const symmetric = settings.pointing === 0 && (solid === null || solid.upX === 0);
  const map = fluxMap(shaded, planeHeight, 1.4 * across, given, layout.ribs.length, symmetric);
  pause();
  const curveEnd = Math.min(apertureRadius, Math.max(1.4 * across, 1.5 * widest));
  const unshaded = 1 - estimate(shadedShares(shaded)).value;
  const onRing = interceptCurve(shaded, squared, curveEnd, CURVE_POINTS);
  const searched = rays * SEARCHED;
  const traces = new AimTraces(input, set, searched, seed);
  const onVessel = vessel && light && vesselForecast(input, vessel, set, built, light, traces, searched);
  pause();
  return {
    seed,
    rays: built.count,
    irradianceWPerM2,
    sunElevationDeg: (set.sunElevation * 180) / Math.PI,
    day: set.day,
    spot: {
      planeHeight,
      radius50: shareRadius(shaded, squared, 0.5, apertureRadius),
      radius90,
      bestPlane: best,
      bestRadius90: shareRadius(shaded, inBest, 0.9, apertureRadius),
      halfChordAtRim: halfWidthAt(set.line, set.line.to),
      curve: onRing.map(({ radius, intercept, ringShare }) => {
        const inner = radius - curveEnd / CURVE_POINTS;
        const ring = Math.PI * (radius * radius - inner * inner);
        return { radius, intercept, suns: scaled(ringShare, radius === 0 ? 0 : (given * unshaded) / ring) };
      }),
    },
    map,
    power,
    vessel: onVessel,
    heat:
      vessel &&
      onVessel &&
      heatForecast(input, vessel, set, power.takenUpW, onVessel.map.peak, onVessel.map.hottest, fewer(built, searched)),
    byHour: dayForecast(input, set, settings.pointing === 0 ? few : traces.rays('low', 0), traces, onVessel),
    workmanship: workmanship(input, set, few, seed),
    assumptions: assumptions(input, set),
  };
}
