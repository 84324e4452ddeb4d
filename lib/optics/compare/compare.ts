/** The forecast beside what was measured in the yard, and what would explain the difference. */
import { element } from '../../geometry/index.js';
import { clockAhead } from '../clock.js';
import { startOfDay } from '../sun-day.js';
import { sunPlace } from '../sun-position.js';
import type { Estimate, OpticsInput } from '../types.js';
import { type Cooling, coolingOf, overTime } from './cooling.js';
import { type Interval, intervalsOf } from './intervals.js';
import { type SlopeFinding, slopeThatGives } from './inverse.js';
import { throughOrigin } from './line-fit.js';
import type { Log, Reading } from './log.js';
import { type Model, modelOf } from './model.js';
import { type CookingTest, cookingTest, type SolarHour } from './standard-test.js';
import { type SpotWidth, type WidthFinding, widthFindings } from './spot-widths.js';

export interface CompareOptions {
  readonly seed: number;
  /** Rays of each trace; 65536 when left out. */
  readonly rays?: number;
  readonly widths?: readonly SpotWidth[];
}

/** One moment of the log with what the forecast has for it. */
export interface ComparedPoint {
  readonly minutes: number;
  readonly measuredC: number;
  /** Under the sun, air and wind that were read, as designed; from the run's first reading on. */
  readonly forecastC: number;
  /** The same with the gain and the losses that were measured. */
  readonly fittedC: number;
  /** Number of the run, from 0: curves are broken between runs. */
  readonly run: number;
}

export interface Comparison {
  readonly cooking: CookingTest;
  /** Null without a run under cover that tells the losses. */
  readonly cooling: Cooling | null;
  /** Taken up for each W/m² of sun, m²: forecast, and measured from the intervals in the sun; null without any. */
  readonly gain: {
    readonly forecastM2: Estimate;
    readonly measuredM2: Estimate;
    readonly intervals: number;
    /** The waviness that would explain the measurement, everything else as designed. */
    readonly slope: SlopeFinding;
    /** The reflectance that would explain it. Above 1 nothing does. */
    readonly reflectance: Estimate;
  } | null;
  readonly spot: readonly WidthFinding[];
  readonly points: readonly ComparedPoint[];
}

const RAYS = 65_536;
/** Dimmer sun than this tells nothing of the gain, W/m². */
const MIN_IRRADIANCE = 200;
/** Closer to boiling than this, heat goes into steam, K. */
const BELOW_BOILING = 3;
/** Without a cooling run the forecast's losses are known to so much of themselves (an estimate from memory). */
const LOSS_UNCERTAINTY = 0.25;

function gainOf(input: OpticsInput, model: Model, sunny: readonly Interval[], losses: Estimate): Comparison['gain'] {
  const used = sunny.filter(
    ({ irradianceWPerM2, fromC, toC }) =>
      irradianceWPerM2 >= MIN_IRRADIANCE && Math.max(fromC, toC) < model.boilingC - BELOW_BOILING,
  );
  if (used.length === 0) return null;
  const sun = used.map((one) => overTime(one, ({ irradianceWPerM2 }) => irradianceWPerM2));
  const lost = used.map((one) => overTime(one, model.lossW));
  const gained = used.map(({ fromC, toC }) => model.heatCapacityJPerK * (toC - fromC));
  const fit = throughOrigin(
    sun,
    gained.map((joule, i) => joule + losses.value * element(lost, i)),
  );
  // all intervals share the error of the losses
  const shared = losses.standardError * throughOrigin(sun, lost).value;
  const scatter = Number.isFinite(fit.standardError) ? fit.standardError : 0;
  const measuredM2 = { value: fit.value, standardError: Math.hypot(scatter, shared) };
  const forecastM2 = model.gainM2(input.sun.slopeErrorMrad);
  const { reflectance } = input.reflector;
  return {
    forecastM2,
    measuredM2,
    intervals: used.length,
    slope: slopeThatGives((mrad) => model.gainM2(mrad).value, measuredM2),
    reflectance: {
      value: (reflectance * measuredM2.value) / forecastM2.value,
      standardError: (reflectance * Math.hypot(measuredM2.standardError, forecastM2.standardError)) / forecastM2.value,
    },
  };
}

/** Turn of the sun in an hour, radians. */
const HOUR_ANGLE = Math.PI / 12;
/** Longest step of the simulated curve, s. */
const STEP = 10;

/** The load's temperature along a run; what boils gets no hotter. */
function simulated(run: readonly Reading[], model: Model, gainM2: number, losses: number): number[] {
  let loadC = element(run, 0).loadC;
  return run.map((reading, i) => {
    const before = run[i - 1];
    if (before === undefined) return loadC;
    const steps = Math.ceil((reading.seconds - before.seconds) / STEP);
    for (let k = 0; k < steps; k++) {
      const part = (k + 0.5) / steps;
      const between = (key: 'ambientC' | 'windMPerS' | 'irradianceWPerM2') =>
        before[key] + part * (reading[key] - before[key]);
      const sun = reading.covered ? 0 : between('irradianceWPerM2');
      const loss = model.lossW({ loadC, ambientC: between('ambientC'), windMPerS: between('windMPerS') });
      const rise =
        ((gainM2 * sun - losses * loss) / model.heatCapacityJPerK) * ((reading.seconds - before.seconds) / steps);
      loadC = Math.min(loadC + rise, Math.max(loadC, model.boilingC));
    }
    return loadC;
  });
}

/** Solar time of the log's clock; a log without dates is taken for one of the design's day. */
function solarHourOf({ site, day }: OpticsInput, { clock }: Log): SolarHour {
  if (site === null || clock === null) return null;
  const start = clock.dated ? 0 : startOfDay(day.date);
  return (seconds) => {
    const read = start + seconds * 1000;
    const unixMs = clock.zoned ? read : read - clockAhead(site, read);
    return 12 + sunPlace(unixMs, site.latitudeDeg, site.longitudeDeg).hourAngle / HOUR_ANGLE;
  };
}

/**
 * Compares.
 * @param log without an error among its problems
 * @throws RangeError for an input without a load: a log holds its temperature
 */
export function compareLog(input: OpticsInput, log: Log, options: CompareOptions): Comparison {
  if (input.load === null) throw new RangeError('a log cannot be compared without a load');
  const { seed, rays = RAYS, widths = [] } = options;
  const model = modelOf(input, input.load, rays, seed);
  const intervals = log.runs.flatMap((run) => intervalsOf(run));
  const sunny = intervals.filter(({ covered }) => !covered);
  const cooling = coolingOf(
    intervals.filter(({ covered }) => covered),
    model.heatCapacityJPerK,
    model.lossW,
  );
  const losses = cooling?.ofForecast ?? { value: 1, standardError: LOSS_UNCERTAINTY };
  const gain = gainOf(input, model, sunny, losses);
  const designed = gain?.forecastM2.value ?? model.gainM2(input.sun.slopeErrorMrad).value;
  const start = log.readings[0]?.seconds ?? 0;
  const points = log.runs.flatMap((run, number) => {
    const forecast = simulated(run, model, designed, 1);
    const fitted = simulated(run, model, gain?.measuredM2.value ?? designed, losses.value);
    return run.map(({ seconds, loadC }, i) => ({
      minutes: (seconds - start) / 60,
      measuredC: loadC,
      forecastC: element(forecast, i),
      fittedC: element(fitted, i),
      run: number,
    }));
  });
  return {
    cooking: cookingTest(
      sunny,
      model.heatCapacityJPerK,
      model.load.massKg,
      model.apertureM2,
      model.boilingC,
      solarHourOf(input, log),
    ),
    cooling,
    gain,
    spot: widthFindings(input, widths, rays, seed),
    points,
  };
}
