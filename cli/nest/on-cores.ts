/** The nest run on all cores, from different seeds, the best kept. */
import { element } from '../../lib/geometry/index.js';
import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { Layout, NestOptions, NestPart, NestStock } from '../../lib/index.js';
import { bestOf, checkRequest } from '../../lib/nest/index.js';
import { runTask } from './run-task.js';
import type { Message, NestTask } from './task.js';

/** Runs from different seeds for a fixed effort, on any machine: the same design gives the same bytes. */
const RUNS = 2;
/** Distance of their seeds. */
const SEED_STEP = 7919;
const MAX_CORES = 8;
const TICK_MS = 200;

/** How a run stands. */
export interface NestProgress {
  /** The best layout so far; the first comes within a second for a hundred parts. */
  readonly layout: Layout;
  readonly secondsGone: number;
  /** As far as is known. */
  readonly secondsLeft: number;
}

export interface NestOnCoresOptions extends Omit<NestOptions, 'stop' | 'elapsed' | 'onBetter'> {
  /** A limit of time (s, from 0) in place of the fixed effort. */
  readonly seconds?: number;
  /** Threads at a time; all cores when left out. */
  readonly cores?: number;
  /** Told some times a second. */
  readonly onProgress?: (progress: NestProgress) => void;
  /** Ends the run with the best so far. */
  readonly signal?: AbortSignal;
}

const threadFile = new URL('./thread.js', import.meta.url);

function runThread(task: NestTask, onBetter: (layout: Layout) => void): Promise<Layout> {
  return new Promise((resolve, reject) => {
    const thread = new Worker(threadFile, { workerData: task });
    let found: Layout | null = null;
    thread.on('message', ({ done, layout }: Message) => {
      if (done) found = layout;
      else onBetter(layout);
    });
    thread.on('error', reject);
    thread.on('exit', (code) => {
      if (found) resolve(found);
      else reject(new Error(`a nesting thread ended with code ${code}`));
    });
  });
}

/** Runs all tasks, at most `cores` at a time; in this thread where there are no others. */
async function runAll(
  tasks: readonly NestTask[],
  cores: number,
  onBetter: (task: number, layout: Layout) => void,
): Promise<void> {
  const threads = existsSync(fileURLToPath(threadFile));
  let next = 0;
  const takeTurns = async (): Promise<void> => {
    for (let i = next++; i < tasks.length; i = next++) {
      const report = (layout: Layout): void => onBetter(i, layout);
      const task = element(tasks, i);
      report(threads ? await runThread(task, report) : runTask(task, report));
    }
  };
  await Promise.all(Array.from({ length: Math.min(cores, tasks.length) }, takeTurns));
}

function sharedFloats(length: number): Float64Array {
  return new Float64Array(new SharedArrayBuffer(length * Float64Array.BYTES_PER_ELEMENT));
}

/**
 * `nest` on several cores. With `seconds` it ends on time; without, the same request gives the same layout on every
 * machine. An abort keeps the best so far.
 * @throws NestError as `nest` does
 */
export async function nestOnCores(
  parts: readonly NestPart[],
  stock: readonly NestStock[],
  options: NestOnCoresOptions,
): Promise<Layout> {
  const { spacing, seed, effort, seconds, onProgress, signal } = options;
  checkRequest(parts, stock, options);
  const cores = Math.max(1, Math.min(MAX_CORES, options.cores ?? availableParallelism()));
  const runs = effort <= 0 || seconds === 0 ? 1 : seconds === undefined ? RUNS : cores;
  const begun = Date.now();
  const stop = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
  const shares = sharedFloats(runs);
  const limit = seconds === undefined || seconds === 0 ? null : { begun, seconds };
  const work = seconds === undefined ? effort : seconds === 0 ? 0 : Infinity;
  const tasks = Array.from({ length: runs }, (_, place): NestTask => {
    return { parts, stock, spacing, seed: seed + SEED_STEP * place, effort: work, limit, stop, shares, place };
  });
  const layouts = new Map<number, Layout>();
  const best = (): Layout => {
    const known = tasks.flatMap((_, i) => layouts.get(i) ?? []);
    return bestOf(known, parts, stock);
  };
  const report = (): void => {
    if (!onProgress || layouts.size === 0) return;
    const secondsGone = (Date.now() - begun) / 1000;
    const share = shares.reduce((sum, one) => sum + one, 0) / runs;
    const left =
      seconds === undefined ? (share > 0 ? (secondsGone * (1 - share)) / share : Infinity) : seconds - secondsGone;
    onProgress({ layout: best(), secondsGone, secondsLeft: Math.max(0, left) });
  };
  const abort = (): void => {
    Atomics.store(stop, 0, 1);
  };
  if (signal?.aborted) abort();
  signal?.addEventListener('abort', abort);
  const ticking = setInterval(report, TICK_MS);
  try {
    await runAll(tasks, cores, (i, layout) => {
      const first = layouts.size === 0;
      layouts.set(i, layout);
      if (first) report();
    });
  } finally {
    clearInterval(ticking);
    signal?.removeEventListener('abort', abort);
  }
  return best();
}
