/** The log in even intervals: what the load gained, and the sun, air and wind meanwhile. */
import { element } from '../../geometry/index.js';
import type { Reading, Run } from './log.js';

/** Length of an interval of the standard, s. */
const INTERVAL_SECONDS = 600;

/** Means over one interval; the temperatures are those at its ends. */
export interface Interval {
  /** Line of the log at or before its begin. */
  readonly line: number;
  readonly seconds: number;
  readonly fromC: number;
  readonly toC: number;
  readonly ambientC: number;
  readonly irradianceWPerM2: number;
  /** Greatest less least irradiance read within it. */
  readonly irradianceRange: number;
  readonly windMPerS: number;
  readonly covered: boolean;
  /** The readings within it, and the two ends. */
  readonly readings: readonly Reading[];
}

/** The reading at a time between two, or the last. */
function readingAt(run: Run, seconds: number): Reading {
  const next = run.findIndex((reading) => reading.seconds >= seconds);
  const after = run[next] ?? run[0];
  const before = run[next - 1] ?? after;
  if (after.seconds === before.seconds || after.seconds === seconds) return after;
  const part = (seconds - before.seconds) / (after.seconds - before.seconds);
  const between = (key: 'loadC' | 'ambientC' | 'irradianceWPerM2' | 'windMPerS') =>
    before[key] + part * (after[key] - before[key]);
  return {
    ...before,
    seconds,
    loadC: between('loadC'),
    ambientC: between('ambientC'),
    irradianceWPerM2: between('irradianceWPerM2'),
    windMPerS: between('windMPerS'),
  };
}

/** Mean over time of a column, straight between the readings. */
function mean(readings: readonly Reading[], of: (reading: Reading) => number): number {
  let sum = 0;
  for (let i = 1; i < readings.length; i++) {
    const [a, b] = [element(readings, i - 1), element(readings, i)];
    sum += ((of(a) + of(b)) / 2) * (b.seconds - a.seconds);
  }
  return sum / (readings.at(-1)!.seconds - element(readings, 0).seconds);
}

/** The whole intervals of a run, one after the other from its first reading. */
export function intervalsOf(run: Run, length = INTERVAL_SECONDS): Interval[] {
  const first = run[0].seconds;
  const count = Math.floor((run.at(-1)!.seconds - first) / length + 1e-9);
  return Array.from({ length: count }, (_, i) => {
    const [from, to] = [first + i * length, first + (i + 1) * length];
    const within = run.filter(({ seconds }) => seconds > from && seconds < to);
    const readings = [readingAt(run, from), ...within, readingAt(run, to)];
    const suns = readings.map(({ irradianceWPerM2 }) => irradianceWPerM2);
    return {
      line: element(readings, 0).line,
      seconds: length,
      fromC: element(readings, 0).loadC,
      toC: readings.at(-1)!.loadC,
      ambientC: mean(readings, ({ ambientC }) => ambientC),
      irradianceWPerM2: mean(readings, ({ irradianceWPerM2 }) => irradianceWPerM2),
      irradianceRange: Math.max(...suns) - Math.min(...suns),
      windMPerS: mean(readings, ({ windMPerS }) => windMPerS),
      covered: run[0].covered,
      readings,
    };
  });
}
