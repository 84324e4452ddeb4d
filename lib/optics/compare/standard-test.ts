/**
 * Standardised cooking power from a log: Funk, Evaluating the international standard procedure for testing solar cookers
 * and reporting performance, Solar Energy 68, 2000, 1-7, later ASAE S580.1 (limits from memory). The gain over each ten
 * minutes is scaled to 700 W/m², fitted by a straight line against the difference to the air, and read at 50 K.
 */
import { element } from '../../geometry/index.js';
import { clockText } from '../clock.js';
import type { Estimate } from '../types.js';
import type { Interval } from './intervals.js';
import { straightLine } from './line-fit.js';

const STANDARD_IRRADIANCE = 700;
const STANDARD_DIFFERENCE = 50;
/** Readings run from 5 K above the air to 5 K below boiling. */
const MARGIN_K = 5;
const IRRADIANCE = { from: 450, to: 1100, range: 100 };
const AMBIENT = { from: 20, to: 35 };
const MAX_WIND = 1;
const LOAD_KG_PER_M2 = 7;
/** How far the load may be from 7 kg/m² before it is reported (share; our own bound). */
const LOAD_SLACK = 0.1;
const MIN_POINTS = 30;
const MIN_R2 = 0.75;
const SOLAR_HOURS = { from: 10, to: 14 };

/** One interval as the standard sees it. */
export interface CookingPoint {
  readonly line: number;
  /** Mean of the load less that of the air, K. */
  readonly differenceK: number;
  readonly powerW: number;
  readonly standardisedW: number;
  /** Conditions that it breaks, in words; none for a point that counts. */
  readonly against: readonly string[];
}

export interface CookingTest {
  readonly points: readonly CookingPoint[];
  /** Null with fewer than three points that count. */
  readonly fit: {
    readonly powerW: Estimate;
    readonly interceptW: number;
    readonly slopeWPerK: number;
    readonly r2: number;
    readonly count: number;
  } | null;
  /** Conditions of the whole test that are not met. */
  readonly against: readonly string[];
}

/** Solar time at a reading's time, hours; null where the place is not known. */
export type SolarHour = ((seconds: number) => number) | null;

/** Whether an interval lies outside the hours of the standard. */
function offHours({ readings }: Interval, solarHour: SolarHour): string | false {
  if (solarHour === null) return false;
  const [from, to] = [
    solarHour(element(readings, 0).seconds),
    solarHour(element(readings, readings.length - 1).seconds),
  ];
  // a clock is read to the minute
  const slack = 1 / 60;
  if (from >= SOLAR_HOURS.from - slack && to <= SOLAR_HOURS.to + slack) return false;
  return `${clockText(from)} of solar time (${SOLAR_HOURS.from}:00 to ${SOLAR_HOURS.to}:00)`;
}

function broken(interval: Interval, boilingC: number, solarHour: SolarHour): string[] {
  const { fromC, toC, ambientC, irradianceWPerM2, irradianceRange, windMPerS } = interval;
  return [
    irradianceWPerM2 < IRRADIANCE.from && `sun of ${irradianceWPerM2.toFixed(0)} W/m² (at least ${IRRADIANCE.from})`,
    irradianceWPerM2 > IRRADIANCE.to && `sun of ${irradianceWPerM2.toFixed(0)} W/m² (at most ${IRRADIANCE.to})`,
    irradianceRange > IRRADIANCE.range &&
      `sun changed by ${irradianceRange.toFixed(0)} W/m² (at most ${IRRADIANCE.range})`,
    (ambientC < AMBIENT.from || ambientC > AMBIENT.to) &&
      `air at ${ambientC.toFixed(1)} °C (${AMBIENT.from} to ${AMBIENT.to})`,
    windMPerS > MAX_WIND && `wind of ${windMPerS.toFixed(1)} m/s (at most ${MAX_WIND})`,
    Math.min(fromC, toC) < ambientC + MARGIN_K && `load less than ${MARGIN_K} K above the air`,
    Math.max(fromC, toC) > boilingC - MARGIN_K && `load less than ${MARGIN_K} K below boiling`,
    offHours(interval, solarHour),
  ].filter((text) => text !== false);
}

/**
 * @param intervals of ten minutes in the sun
 * @param heatCapacityJPerK of the load
 * @param massKg of the load
 * @param apertureM2 that takes in the sun
 * @param boilingC of the load at the place
 * @param solarHour solar time of a reading
 */
export function cookingTest(
  intervals: readonly Interval[],
  heatCapacityJPerK: number,
  massKg: number,
  apertureM2: number,
  boilingC: number,
  solarHour: SolarHour,
): CookingTest {
  const points = intervals.map((interval): CookingPoint => {
    const powerW = (heatCapacityJPerK * (interval.toC - interval.fromC)) / interval.seconds;
    return {
      line: interval.line,
      differenceK: (interval.fromC + interval.toC) / 2 - interval.ambientC,
      powerW,
      standardisedW: interval.irradianceWPerM2 > 0 ? (powerW * STANDARD_IRRADIANCE) / interval.irradianceWPerM2 : 0,
      against: broken(interval, boilingC, solarHour),
    };
  });
  const counted = points.filter(({ against }) => against.length === 0);
  const xs = counted.map(({ differenceK }) => differenceK);
  const line =
    counted.length >= 3 && Math.max(...xs) - Math.min(...xs) > 1
      ? straightLine(
          xs,
          counted.map((point) => point.standardisedW),
        )
      : null;
  const perM2 = massKg / apertureM2;
  const against = [
    Math.abs(perM2 / LOAD_KG_PER_M2 - 1) > LOAD_SLACK &&
      `a load of ${perM2.toFixed(1)} kg for each m² of aperture (the standard asks for ${LOAD_KG_PER_M2})`,
    counted.length < MIN_POINTS &&
      `${counted.length} intervals that count (the standard asks for ${MIN_POINTS}, over several days)`,
    line !== null &&
      line.r2 < MIN_R2 &&
      `a line that explains ${(100 * line.r2).toFixed(0)} % of the scatter (at least ${100 * MIN_R2})`,
    solarHour === null &&
      `that the readings fall between ${SOLAR_HOURS.from}:00 and ${SOLAR_HOURS.to}:00 of solar time is not checked: the design names no site`,
  ].filter((text) => text !== false);
  return {
    points,
    fit: line && {
      powerW: line.at(STANDARD_DIFFERENCE),
      interceptW: line.intercept,
      slopeWPerK: line.slope,
      r2: line.r2,
      count: counted.length,
    },
    against,
  };
}
