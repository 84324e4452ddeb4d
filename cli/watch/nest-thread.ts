/** Runs in a thread of its own: a quick nest, then the one that the design asks for. */
import { parentPort, workerData } from 'node:worker_threads';
import { bookOf, buildJob, type Design, withNest } from '../../lib/index.js';
import type { Nested } from './session.js';

/** A share of the usual effort that is over in about a second. */
const quickEffort = 0.1;

interface Task {
  readonly design: Design;
  readonly extras: ReadonlyMap<string, string>;
}

async function nested({ design, extras }: Task, last: boolean): Promise<Nested> {
  const job = await buildJob(design, extras);
  const failed = job.problems.some(({ severity }) => severity === 'error');
  return { problems: job.problems, book: failed ? null : bookOf(job), last };
}

const task = workerData as Task;
const { effort } = task.design.nest;
if (effort > quickEffort) {
  const quick = await nested({ ...task, design: withNest(task.design, { effort: quickEffort }) }, false);
  parentPort?.postMessage(quick);
}
parentPort?.postMessage(await nested(task, true));
