/** Runs one task, in a thread of its own or in this one. */
import { type Layout, nest } from '../../lib/nest/index.js';
import type { NestTask } from './task.js';

/** The layout of one task; `onBetter` is called with each better one on the way. */
export function runTask(task: NestTask, onBetter: (layout: Layout) => void): Layout {
  const { parts, stock, spacing, seed, effort, limit, stop, shares, place } = task;
  return nest(parts, stock, {
    spacing,
    seed,
    effort,
    onBetter,
    stop: (share) => {
      shares[place] = share;
      return Atomics.load(stop, 0) !== 0;
    },
    ...(limit && { elapsed: () => (Date.now() - limit.begun) / 1000 / limit.seconds }),
  });
}
