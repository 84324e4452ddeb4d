/**
 * The one place that random tests get their numbers from. By day every seed is fixed, so that `npm test` does the same
 * on every machine; by night (`npm run proof`) the set-up of the tests draws a fresh one and prints it.
 * DISHWRIGHT_SEED=N takes the seed N instead, DISHWRIGHT_ROUNDS=N runs each property with N seeds in turn.
 */
import fc from 'fast-check';
import { expect } from 'vitest';
import { failedCases, failedJobs } from './once-failed.js';

/** Whether this is the long run. */
const night = process.env['DISHWRIGHT_FULL'] === '1';
const seed = Number(process.env['DISHWRIGHT_SEED'] ?? 1);
const rounds = Number(process.env['DISHWRIGHT_ROUNDS'] ?? 1);

/** What there is time for: the first by day, the second by night. */
export function byDay<T>(day: T, long: T): T {
  return night ? long : day;
}

/** Start of the numbers of a random test that is no property: always the same by day. */
export function seedFrom(day: number): number {
  return day + 1000 * (seed - 1);
}

/** Seeds of random jobs of a kind: those that once failed, then as many as asked for. */
export function jobSeeds(kind: string, first: number, count: number): number[] {
  const from = seedFrom(first);
  return [...(failedJobs[kind] ?? []).map((one) => one.seed), ...Array.from({ length: count }, (_, i) => from + i)];
}

export interface Runs {
  /** Values by day. */
  readonly numRuns?: number;
  /** Values by night; ten times as many as by day when left out. */
  readonly night?: number;
  /** Seeds with which the property once failed, run besides that of the day. */
  readonly onceFailed?: readonly number[];
}

function check<T>(property: fc.IProperty<T>, parameters: fc.Parameters<T>, test: string): void {
  const details = fc.check(property, parameters);
  if (!details.failed) return;
  const path = details.counterexamplePath;
  const kept = `{ seed: ${details.seed}, path: '${path ?? ''}', why: '...' }`;
  throw new Error(
    `${fc.defaultReportMessage(details) ?? 'failed'}\n\nKeep this case: add ${kept} under '${test}' in test/helpers/once-failed.ts`,
    { cause: details.errorInstance },
  );
}

/** Holds a property against every case that once failed and against random values. */
export function holds<T>(
  property: fc.IProperty<T>,
  { numRuns = 100, night: long = 10 * numRuns, onceFailed = [] }: Runs = {},
): void {
  const test = expect.getState().currentTestName ?? '';
  for (const one of failedCases[test] ?? [])
    check(property, { seed: one.seed, path: one.path, endOnFailure: true }, test);
  for (const one of onceFailed) check(property, { seed: one, numRuns }, test);
  for (let round = 0; round < rounds; round += 1)
    check(property, { seed: seed + round, numRuns: byDay(numRuns, long) }, test);
}

/** What another library gives. Its own crash, or nothing, skips the case; nothing of ours runs in here. */
export function saidBy<T>(library: () => T | null | undefined): T {
  let said: T | null | undefined;
  try {
    said = library();
  } catch {
    said = null;
  }
  fc.pre(said !== null && said !== undefined);
  return said;
}
