/** Runs inputs one after the other, reporting each before it starts, so that a hang can be traced. */
import { performance } from 'node:perf_hooks';
import { parentPort, workerData } from 'node:worker_threads';
import { type Outcome, runInput } from './run.js';
import { targets } from './targets.js';

export interface FuzzTask {
  readonly seed: number;
  readonly from: number;
  readonly to: number;
  /** Holds the number of the input at hand. */
  readonly at: SharedArrayBuffer;
}

export interface Report {
  readonly counts: Readonly<
    Record<string, { readonly inputs: number; readonly accepted: number; readonly slowestMs: number }>
  >;
  readonly failures: readonly (Outcome & { readonly index: number })[];
}

const { seed, from, to, at } = workerData as FuzzTask;
const place = new Int32Array(at);
const all = targets();
const counts: Record<string, { inputs: number; accepted: number; slowestMs: number }> = {};
const failures: (Outcome & { index: number })[] = [];
for (let index = from; index < to; index += 1) {
  Atomics.store(place, 0, index);
  const outcome = runInput(all, seed, index, () => performance.now());
  const count = (counts[outcome.target] ??= { inputs: 0, accepted: 0, slowestMs: 0 });
  count.inputs += 1;
  if (outcome.accepted) count.accepted += 1;
  count.slowestMs = Math.max(count.slowestMs, outcome.ms);
  if (outcome.failure !== null) failures.push({ ...outcome, index });
}
parentPort?.postMessage({ counts, failures } satisfies Report);
