/** Times of a log: `10:05`, `10:05:30`, `2026-06-21 10:05`, `2026-06-21T10:05:30+02:00`. */

const FORM = /^(?:(\d{4})-(\d{2})-(\d{2})[ T])?(\d{1,2}):(\d{2})(?::(\d{2}(?:\.\d+)?))?\s*(Z|[+-]\d{2}:?\d{2})?$/;

export interface ClockTime {
  /** Seconds since 1970 for a time with its date, since midnight for one without; by the clock that was read. */
  readonly seconds: number;
  readonly dated: boolean;
  /** Whether it says by how much the clock is off UTC; if so, the seconds are those of UTC. */
  readonly zoned: boolean;
}

/** Null for what is no time, or no day of the calendar. */
export function clockTime(text: string): ClockTime | null {
  const found = FORM.exec(text);
  if (!found) return null;
  const [, year, month, day, hour, minute, second = '0', zone] = found;
  const [h, m, s] = [Number(hour), Number(minute), Number(second)];
  if (h > 23 || m > 59 || s >= 60) return null;
  const ofDay = h * 3600 + m * 60 + s;
  const dated = year !== undefined;
  const midnight = dated ? Date.UTC(Number(year), Number(month) - 1, Number(day)) : 0;
  if (dated && new Date(midnight).getUTCDate() !== Number(day)) return null;
  const digits = zone === undefined || zone === 'Z' ? '0000' : zone.slice(1).replace(':', '');
  const offset = (Number(digits.slice(0, 2)) * 60 + Number(digits.slice(2))) * 60 * (zone?.startsWith('-') ? -1 : 1);
  return { seconds: midnight / 1000 + ofDay - offset, dated, zoned: zone !== undefined };
}
