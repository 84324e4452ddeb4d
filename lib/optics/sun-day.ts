/** The sun of a place and day. */
import { clearSkyDirect, skyOf } from './clear-sky.js';
import { clockText, hourOf } from './clock.js';
import { sunPlace } from './sun-position.js';
import type { Day, Site } from './types.js';

const MINUTE = 60_000;
const DAY = 86_400_000;
const STEP_MINUTES = 10;

export interface SunHour {
  /** UTC, as 2026-06-21T10:40Z. */
  readonly utc: string;
  /** On the clock of the place, hours since the day's midnight. */
  readonly hour: number;
  readonly elevationDeg: number;
  readonly azimuthDeg: number;
  readonly directWPerM2: number;
}

/** When the sun stands high enough to aim the dish at it. */
export type AimingHours =
  | { readonly kind: 'never' }
  | { readonly kind: 'all-day' }
  | {
      readonly kind: 'from-to';
      /** On the clock of the place, as 08:40. */
      readonly from: string;
      readonly to: string;
      readonly hours: number;
      readonly fromHour: number;
      readonly toHour: number;
      readonly fromMs: number;
      readonly toMs: number;
    };

export interface SunDay {
  /** When the sun stands highest. */
  readonly noonUtc: string;
  /** The same on the clock of the place, hours. */
  readonly noonHour: number;
  readonly noonElevationDeg: number;
  readonly noonDirectWPerM2: number;
  readonly aiming: AimingHours;
  /** Mean over the aiming hours; 0 when there are none. */
  readonly meanDirectWPerM2: number;
  /** Half-angle of the sun's disc that day, radians. */
  readonly angularRadius: number;
  /** Through the day from solar midnight, every half hour. */
  readonly course: readonly SunHour[];
}

/** Midnight UTC of a day such as 2026-06-21; NaN for what is no day of the calendar. */
export function startOfDay(date: string): number {
  const start = Date.parse(`${date}T00:00:00Z`);
  return Number.isNaN(start) || new Date(start).toISOString().slice(0, 10) !== date ? NaN : start;
}

const minuteText = (unixMs: number): string =>
  `${new Date(Math.round(unixMs / MINUTE) * MINUTE).toISOString().slice(0, 16)}Z`;

/** Direct irradiance under the day's clear sky at a moment, ms since 1970. */
export function clearDirect(site: Site, day: Day): (unixMs: number) => number {
  const sky = skyOf(day);
  return (unixMs) => {
    const at = sunPlace(unixMs, site.latitudeDeg, site.longitudeDeg);
    return clearSkyDirect(at.elevation, site.altitudeM, at.distanceAu, sky);
  };
}

/**
 * The day at the place: the 24 hours round the place's own noon. Elevations are without refraction, which lifts the sun
 * by less than 0.1° above 10°.
 * @param named irradiance at noon that the design names: the clear sky of the other hours is scaled with it
 * @throws RangeError for a date that is not in the calendar
 */
export function sunDay(site: Site, day: Day, named: number | null = null): SunDay {
  const start = startOfDay(day.date);
  if (Number.isNaN(start)) throw new RangeError(`${day.date} is not a calendar date`);
  const meanNoon = start + DAY / 2 - (site.longitudeDeg / 360) * DAY;
  const place = (unixMs: number) => sunPlace(unixMs, site.latitudeDeg, site.longitudeDeg);
  const elevation = (unixMs: number) => place(unixMs).elevation;
  const noon = highest(elevation, meanNoon - 40 * MINUTE, meanNoon + 40 * MINUTE);
  const clear = clearDirect(site, day);
  const factor = named === null || clear(noon) === 0 ? 1 : named / clear(noon);
  const direct = (unixMs: number): number => factor * clear(unixMs);
  const hour = (unixMs: number) => hourOf(site, start, unixMs);
  const min = (day.minElevationDeg * Math.PI) / 180;
  const aims = Array.from(
    { length: (24 * 60) / STEP_MINUTES },
    (_, i) => noon - DAY / 2 + (i + 0.5) * STEP_MINUTES * MINUTE,
  ).filter((time) => elevation(time) >= min);
  const mean = aims.length === 0 ? 0 : aims.reduce((sum, time) => sum + direct(time), 0) / aims.length;
  return {
    noonUtc: minuteText(noon),
    noonHour: hour(noon),
    noonElevationDeg: (elevation(noon) * 180) / Math.PI,
    noonDirectWPerM2: direct(noon),
    aiming: aimingHours(elevation, noon, min, hour),
    meanDirectWPerM2: mean,
    angularRadius: place(noon).angularRadius,
    course: Array.from({ length: 49 }, (_, i) => noon - DAY / 2 + i * 30 * MINUTE).map((time) => ({
      utc: minuteText(time),
      hour: hour(time),
      elevationDeg: (elevation(time) * 180) / Math.PI,
      azimuthDeg: (place(time).azimuth * 180) / Math.PI,
      directWPerM2: direct(time),
    })),
  };
}

/** Time of the greatest height, to a second: the height rises before it and falls after it. */
function highest(elevation: (unixMs: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  while (high - low > 1000) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (elevation(a) < elevation(b)) low = a;
    else high = b;
  }
  return (low + high) / 2;
}

function aimingHours(
  elevation: (unixMs: number) => number,
  noon: number,
  min: number,
  hour: (unixMs: number) => number,
): AimingHours {
  if (elevation(noon) < min) return { kind: 'never' };
  const crossing = (midnight: number): number => {
    let [up, down] = [noon, midnight];
    while (Math.abs(up - down) > 1000) {
      const middle = (up + down) / 2;
      if (elevation(middle) >= min) up = middle;
      else down = middle;
    }
    return up;
  };
  const [before, after] = [noon - DAY / 2, noon + DAY / 2];
  if (elevation(before) >= min && elevation(after) >= min) return { kind: 'all-day' };
  const [from, to] = [crossing(before), crossing(after)];
  return {
    kind: 'from-to',
    from: clockText(hour(from)),
    to: clockText(hour(to)),
    hours: (to - from) / (60 * MINUTE),
    fromHour: hour(from),
    toHour: hour(to),
    fromMs: from,
    toMs: to,
  };
}
