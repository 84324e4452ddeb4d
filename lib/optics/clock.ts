/** Local clock time. */
import type { Site } from './types.js';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;

/** Whether a name is a time zone that is known here. */
export function knownZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en-GB', { timeZone: name });
    return true;
  } catch {
    return false;
  }
}

const formats = new Map<string, Intl.DateTimeFormat>();

/** Dates and times of a zone; made once, as making one takes far longer than using it. */
function formatOf(timeZone: string): Intl.DateTimeFormat {
  const format =
    formats.get(timeZone) ??
    new Intl.DateTimeFormat('en-GB', {
      timeZone,
      hourCycle: 'h23',
      year: 'numeric',
      month: 'numeric',
      day: 'numeric',
      hour: 'numeric',
      minute: 'numeric',
    });
  formats.set(timeZone, format);
  return format;
}

/** How far the clock is ahead of UTC at a moment, ms. Zones by name follow the runtime's copy of the tz database. */
export function clockAhead({ timeZone }: Site, unixMs: number): number {
  if (typeof timeZone === 'number') return timeZone * HOUR;
  const parts = formatOf(timeZone).formatToParts(unixMs);
  const of = (type: string) => Number(parts.find((part) => part.type === type)?.value ?? 0);
  const local = Date.UTC(of('year'), of('month') - 1, of('day'), of('hour'), of('minute'));
  return local - Math.floor(unixMs / MINUTE) * MINUTE;
}

/** Moment at which the clock shows the start of a day (`startMs` is that day's midnight in UTC) plus hours. */
export function momentOf(site: Site, startMs: number, hour: number): number {
  const guess = startMs + hour * HOUR;
  // twice, for a day on which the clock jumps
  const once = guess - clockAhead(site, guess);
  return guess - clockAhead(site, once);
}

/** Hours on the clock since midnight of the day that starts at `startMs` (UTC midnight of the same date). */
export function hourOf(site: Site, startMs: number, unixMs: number): number {
  return (unixMs + clockAhead(site, unixMs) - startMs) / HOUR;
}

/** `13:05`, to the nearest minute. */
export function clockText(hour: number): string {
  const minutes = Math.round(hour * 60);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${two(Math.floor(minutes / 60) % 24)}:${two(minutes % 60)}`;
}
