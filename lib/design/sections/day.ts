/** The place and the day. */
import * as z from 'zod';
import { group, type KeyMeta, number, numberAuto, numberOr, type Range } from '../keys.js';

export function siteSection() {
  return group(
    { about: 'Where the dish is used; sets the sun’s height, hours and irradiance.' },
    {
      latitude: number({ about: 'North positive.', unit: 'deg', min: -90, max: 90 }),
      longitude: number({ about: 'East positive.', unit: 'deg', min: -180, max: 180 }),
      altitude: numberAuto({ about: 'Height above sea level.', unit: 'm', auto: 'sea level', min: -500, max: 9000 }),
      timeZone: z
        .union([z.number().min(-12).max(14), z.string().min(1).max(60)])
        .optional()
        .meta({
          quantity: 'text',
          about: 'Time zone: a name such as Europe/Vienna, which includes summer time, or hours ahead of UTC.',
          auto: 'the whole hour nearest to local solar time',
        } satisfies KeyMeta),
    },
  );
}

/** A value for the whole day, or by the hour of local clock time. */
function hourly(
  value: number,
  about: Range & { readonly about: string; readonly unit: string; readonly why?: string },
) {
  const bounds = z
    .number()
    .min(about.min ?? -Infinity)
    .max(about.max ?? Infinity);
  return z
    .union([
      bounds,
      z
        .array(z.tuple([z.number().min(0).max(24), bounds]))
        .min(1)
        .max(48),
    ])
    .default(value)
    .transform((given) =>
      typeof given === 'number' ? [[0, given] as [number, number]] : [...given].sort(([a], [b]) => a - b),
    )
    .meta({ quantity: 'number', shown: String(value), ...about } satisfies KeyMeta);
}

export function daySection() {
  return group(
    { about: 'The day and its weather.' },
    {
      date: z
        .string()
        .regex(/^\d{4}-\d{2}-\d{2}$/, 'must be a date such as 2026-06-21')
        .default('2026-03-20')
        .meta({
          quantity: 'text',
          shown: '2026-03-20',
          about: 'Day of the forecast, year-month-day.',
          why: 'the equinox, an average day of the year',
        } satisfies KeyMeta),
      minElevation: numberOr(15, {
        about: 'Minimum height of the sun at which the dish is used.',
        unit: 'deg',
        why: 'lower down the light is weak and the dish is tilted almost on edge',
        min: 0,
        max: 89,
      }),
      start: numberAuto({
        about: 'Clock time at which heating starts; 9.5 is half past nine.',
        unit: 'h',
        auto: 'two hours before the sun is highest, or when it is first high enough',
        min: 0,
        max: 24,
      }),
      ambient: hourly(20, {
        about: 'Air temperature; one value, or a list such as [[6, 8], [14, 21], [20, 12]] of hours and degrees.',
        unit: '°C',
        min: -50,
        max: 60,
      }),
      wind: hourly(2, {
        about: 'Wind speed at the vessel; one value, or a list of hours and speeds.',
        unit: 'm/s',
        why: 'a light breeze, 2 on the Beaufort scale; the formula for the heat loss is valid up to 7',
        min: 0,
        max: 7,
      }),
      haze: numberOr(0.1, {
        about:
          'Haze overhead, as optical depth at 380 and 500 nm: 0.05 on clear mountains, 0.1 on a clear day in the country, 0.2 in summer haze, 0.4 over a dusty or smoky city (typical values, from memory).',
        min: 0,
        max: 2,
      }),
      waterVapour: numberOr(15, {
        about: 'Water vapour overhead: 5 in frost or high up, 15 on a mild day, 40 in the damp tropics (from memory).',
        unit: 'mm',
        min: 0,
        max: 80,
      }),
      humidity: numberOr(0.5, {
        about: 'Relative humidity of the air, 0 to 1; matters only if the vessel has no lid.',
        min: 0,
        max: 1,
      }),
    },
  );
}
