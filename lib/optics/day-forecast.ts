/** The day at the site by the hour of the local clock, and the months of the year at a glance. */
import { type AimTraces, type AimDirection, quickTolerance } from './aim.js';
import { absorptances, lightOn } from './catch.js';
import { clearSkyDirect, skyOf } from './clear-sky.js';
import { momentOf } from './clock.js';
import { estimate } from './estimate.js';
import { type Hanging, hangingFor } from './hanging.js';
import { heatedOf } from './heat-forecast.js';
import { airAt } from './hourly.js';
import { type SetUp, solidAt } from './set-up.js';
import { type Solid, surfaces } from './solid.js';
import { fewer } from './spot.js';
import { clearDirect, startOfDay, type SunDay, sunDay } from './sun-day.js';
import { sunPlace } from './sun-position.js';
import type { Rays } from './trace.js';
import type { Air, OpticsInput, Site, Vessel } from './types.js';
import type { VesselForecast } from './vessel-forecast.js';
import { endOf, type HeatLedger, heatThrough, secondsBetween } from './warming.js';
import { element } from '../geometry/index.js';

const RAD = Math.PI / 180;
const MINUTE = 60_000;

/** Where the light of a moment goes, W; it adds up to what falls on the aperture. */
export interface LightLedger {
  readonly incoming: number;
  /** Rim, hub, seams and strips. */
  readonly outside: number;
  readonly shade: number;
  readonly mirror: number;
  readonly missed: number;
  readonly thrownBack: number;
  readonly takenUp: number;
}

export interface HourRow {
  /** On the clock of the place. */
  readonly hour: number;
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
  readonly irradianceWPerM2: number;
  readonly light: LightLedger;
  /** How long the dish may stand when it is set ahead of the sun, and by how much it is turned then. */
  readonly turn: { readonly minutes: number; readonly azimuthDeg: number; readonly elevationDeg: number };
  readonly air: Air;
}

export interface HeatHour {
  /** The hour that begins here, or at the start of heating. */
  readonly hour: number;
  readonly temperatureC: number;
  readonly steamKg: number;
  readonly ledger: HeatLedger;
}

export interface HeatDay {
  readonly startHour: number;
  /** Clock time at which the target or the boil is reached; null when it is not. */
  readonly reachedHour: number | null;
  readonly hours: readonly HeatHour[];
  /** Temperature of the load by the clock, from the start of heating to the end of the day, °C. */
  readonly curve: readonly { readonly hour: number; readonly temperatureC: number }[];
  readonly steamKg: number;
}

export interface MonthRow {
  /** 1 to 12; the 15th stands for it. */
  readonly month: number;
  readonly noonElevationDeg: number;
  readonly hours: number;
  readonly takenUpKWh: number;
  /** Brought from the start to the target when it is refilled at once; null without a load. */
  readonly litres: number | null;
}

export interface DayForecast {
  readonly hours: readonly HourRow[];
  /** One height of the vessel for the whole day; null where it finds none. */
  readonly hanging: Hanging | null;
  readonly heating: HeatDay | null;
  readonly months: readonly MonthRow[];
}

/** What the day's parts have in common. */
interface Context {
  readonly input: OpticsInput;
  readonly vessel: Vessel;
  readonly site: Site;
  readonly set: SetUp;
  readonly rays: Rays;
  /** Share of the mirror's light that is taken up, by height of the sun. */
  readonly takenUp: (elevation: number) => number;
  /** Direct irradiance at a moment, W/m². */
  readonly directAt: (unixMs: number) => number;
}

/** The light of an aimed dish at a height of the sun. */
function lightAt({ input, vessel, set, rays }: Context, elevation: number, irradiance: number): LightLedger {
  const { areas } = set;
  const watts = (area: number) => (irradiance * area) / 1e6;
  const shares = lightOn(rays, solidAt(input, elevation) as Solid);
  const alpha = absorptances(vessel);
  const mean = (of: Float64Array) => estimate(of).value;
  const shaded = mean(shares.shade);
  const given = watts(areas.mirror) * input.reflector.reflectance;
  const met = surfaces.reduce((sum, surface) => sum + mean(shares[surface]), 0);
  const kept = surfaces.reduce((sum, surface) => sum + alpha[surface] * mean(shares[surface]), 0);
  return {
    incoming: watts(areas.aperture),
    outside: watts(areas.aperture - areas.mirror),
    shade: watts(areas.mirror) * shaded,
    mirror: watts(areas.mirror) * (1 - shaded) * (1 - input.reflector.reflectance),
    missed: given * (1 - shaded - met),
    thrownBack: given * (met - kept),
    takenUp: given * kept,
  };
}

/** Most that a dish is left standing, minutes. */
const MAX_STAND = 180;

/** The turn that keeps 90 %: the sun's own motion across the tolerance, between the directions as an ellipse. */
function turnOf({ site }: Context, unixMs: number, tolerance: Readonly<Record<AimDirection, number>>): HourRow['turn'] {
  const at = (ms: number) => sunPlace(ms, site.latitudeDeg, site.longitudeDeg);
  const [now, later] = [at(unixMs), at(unixMs + 10 * MINUTE)];
  const azimuth = Math.atan2(Math.sin(later.azimuth - now.azimuth), Math.cos(later.azimuth - now.azimuth));
  const up = (later.elevation - now.elevation) / RAD;
  const aside = (azimuth * Math.cos(now.elevation)) / RAD;
  const moved = Math.hypot(up, aside);
  // a sun that climbs leaves the dish pointing too low
  const reach = (vertical: number) => {
    const inverse = Math.hypot(up / moved / vertical, aside / moved / tolerance.aside);
    return inverse > 0 ? 1 / inverse : Infinity;
  };
  const ahead = up > 0 ? reach(tolerance.low) : reach(tolerance.high);
  const behind = up > 0 ? reach(tolerance.high) : reach(tolerance.low);
  const minutes = Math.min(MAX_STAND, (10 * (ahead + behind)) / moved);
  return { minutes, azimuthDeg: (azimuth / RAD / 10) * minutes, elevationDeg: (up / 10) * minutes };
}

/** Whole hours of the clock at which the sun stands high enough. */
function hoursOf(context: Context, traces: AimTraces, found: VesselForecast): HourRow[] {
  const { input, site, directAt } = context;
  const start = startOfDay(input.day.date);
  const min = input.day.minElevationDeg * RAD;
  const about = found.aim.toleranceDeg;
  return Array.from({ length: 24 }, (_, hour) => hour).flatMap((hour): HourRow[] => {
    const unixMs = momentOf(site, start, hour);
    const place = sunPlace(unixMs, site.latitudeDeg, site.longitudeDeg);
    if (place.elevation < min) return [];
    const irradianceWPerM2 = directAt(unixMs);
    const tolerance = (direction: AimDirection) =>
      quickTolerance(traces, direction, place.elevation, about[direction].value);
    return [
      {
        hour,
        azimuthDeg: place.azimuth / RAD,
        elevationDeg: place.elevation / RAD,
        irradianceWPerM2,
        light: lightAt(context, place.elevation, irradianceWPerM2),
        turn: turnOf(context, unixMs, {
          low: tolerance('low'),
          high: tolerance('high'),
          aside: tolerance('aside'),
        }),
        air: airAt(input.day, hour),
      },
    ];
  });
}

/** Pieces of an hour in which the heating is followed, hours. */
const PIECE = 1 / 6;
const USUAL_LEAD = 2;

function heatingOf({ input, site, set, takenUp, directAt }: Context, day: SunDay): HeatDay | null {
  const heated = heatedOf(input);
  const { aiming } = day;
  if (heated === null || aiming.kind === 'never') return null;
  const start = startOfDay(input.day.date);
  const [first, last] =
    aiming.kind === 'from-to' ? [aiming.fromHour, aiming.toHour] : [day.noonHour - 12, day.noonHour + 12];
  const startHour = input.day.startHour ?? Math.max(first, day.noonHour - USUAL_LEAD);
  if (!(startHour < last)) return null;
  const power = (hour: number): number => {
    if (hour < first || hour > last) return 0;
    const unixMs = momentOf(site, start, hour);
    const { elevation } = sunPlace(unixMs, site.latitudeDeg, site.longitudeDeg);
    const mirror = (set.areas.mirror * input.reflector.reflectance) / 1e6;
    return directAt(unixMs) * mirror * takenUp(elevation);
  };
  const pieces = Math.max(1, Math.ceil((last - startHour) / PIECE));
  const length = (last - startHour) / pieces;
  const courses = heatThrough(
    heated,
    heated.load.startC,
    Array.from({ length: pieces }, (_, i) => {
      const from = startHour + i * length;
      const [before, after] = [power(from), power(from + length)];
      return {
        seconds: length * 3600,
        at: (share: number) => ({
          powerW: before + (after - before) * share,
          air: airAt(input.day, from + share * length),
        }),
      };
    }),
  );
  const endC = endOf(heated.load);
  const reached = courses.findIndex(({ temperatureC }) => temperatureC >= endC - 1e-3);
  const before = reached > 0 ? element(courses, reached - 1).temperatureC : heated.load.startC;
  const part = reached < 0 ? 0 : (endC - before) / (element(courses, reached).temperatureC - before || 1);
  const hours = new Map<number, HeatHour>();
  courses.forEach(({ temperatureC, steamKg, ledger }, i) => {
    const from = startHour + i * length;
    const key = Math.floor(from + 1e-9);
    const sum = hours.get(key);
    hours.set(key, {
      hour: sum?.hour ?? from,
      temperatureC,
      steamKg: (sum?.steamKg ?? 0) + steamKg,
      ledger: {
        takenUp: (sum?.ledger.takenUp ?? 0) + ledger.takenUp,
        lost: (sum?.ledger.lost ?? 0) + ledger.lost,
        evaporated: (sum?.ledger.evaporated ?? 0) + ledger.evaporated,
        stored: (sum?.ledger.stored ?? 0) + ledger.stored,
      },
    });
  });
  return {
    startHour,
    reachedHour: reached < 0 ? null : startHour + (reached + Math.min(1, part)) * length,
    hours: [...hours.values()],
    curve: [
      { hour: startHour, temperatureC: heated.load.startC },
      ...courses.map(({ temperatureC }, i) => ({ hour: startHour + (i + 1) * length, temperatureC })),
    ],
    steamKg: courses.reduce((sum, one) => sum + one.steamKg, 0),
  };
}

function monthsOf({ input, site, set, takenUp }: Context): MonthRow[] {
  const heated = heatedOf(input);
  const sky = skyOf(input.day);
  const year = input.day.date.slice(0, 4);
  const mirror = (set.areas.mirror * input.reflector.reflectance) / 1e6;
  return Array.from({ length: 12 }, (_, i): MonthRow => {
    const date = `${year}-${String(i + 1).padStart(2, '0')}-15`;
    const day = sunDay(site, { ...input.day, date });
    const used = day.course.slice(0, -1).filter(({ elevationDeg }) => elevationDeg >= input.day.minElevationDeg);
    let [kWh, kg] = [0, 0];
    for (const { hour, elevationDeg } of used) {
      const powerW = clearSkyDirect(elevationDeg * RAD, site.altitudeM, 1, sky) * mirror * takenUp(elevationDeg * RAD);
      kWh += powerW / 2000;
      if (heated === null) continue;
      const seconds = secondsBetween(
        heated,
        airAt(input.day, (hour + 24) % 24),
        powerW,
        heated.load.startC,
        endOf(heated.load),
      );
      kg += (heated.load.massKg * 1800) / seconds;
    }
    return {
      month: i + 1,
      noonElevationDeg: day.noonElevationDeg,
      hours: used.length / 2,
      takenUpKWh: kWh,
      litres: heated === null ? null : (1000 * kg) / heated.load.densityKgPerM3,
    };
  });
}

/** Steps of the table of what is taken up by height of the sun, degrees. */
const TABLE_STEP = 5;

/**
 * The day of an aimed dish; null without a site or a vessel.
 * @param rays of the dish aimed true
 */
export function dayForecast(
  input: OpticsInput,
  set: SetUp,
  rays: Rays,
  traces: AimTraces,
  found: VesselForecast | null,
): DayForecast | null {
  const { vessel, site } = input;
  const { day } = set;
  if (vessel === null || site === null || day === null || found === null) return null;
  const clear = clearDirect(site, input.day);
  const noon = Date.parse(day.noonUtc);
  const factor = input.sun.irradianceWPerM2 === null ? 1 : input.sun.irradianceWPerM2 / clear(noon);
  const bare = { input, vessel, site, set, rays, directAt: (unixMs: number) => factor * clear(unixMs) };
  const table = Array.from({ length: 90 / TABLE_STEP + 1 }, (_, i) => {
    const light = lightAt({ ...bare, takenUp: () => 0 }, i * TABLE_STEP * RAD, 1);
    return light.takenUp / ((set.areas.mirror * input.reflector.reflectance) / 1e6);
  });
  const takenUp = (elevation: number): number => {
    const at = Math.min(table.length - 1.001, Math.max(0, elevation / RAD / TABLE_STEP));
    const below = Math.floor(at);
    return element(table, below) + (element(table, below + 1) - element(table, below)) * (at - below);
  };
  const context: Context = { ...bare, takenUp };
  const hours = hoursOf(context, traces, found);
  return {
    hours,
    hanging: hangingFor(
      input,
      set,
      fewer(rays, 4096),
      hours.map(({ elevationDeg, irradianceWPerM2 }) => ({
        elevation: elevationDeg * RAD,
        irradianceWPerM2,
        share: 1,
      })),
    ),
    heating: heatingOf(context, day),
    months: monthsOf(context),
  };
}
