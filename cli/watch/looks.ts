/** The thread that works out what the page shows, as the page's side of it is used. */
import { Worker } from 'node:worker_threads';
import type { Design } from '../../lib/index.js';
import type { Look } from './look.js';
import type { Lane, LookAnswer, LookTask } from './look-thread.js';

/**
 * Works out a design in steps.
 * @param report given each step
 * @returns settles at the end, or when something newer has taken its place
 */
export type Looks = (
  lane: Lane,
  design: Design,
  extras: ReadonlyMap<string, string>,
  report: (look: Look) => void,
) => Promise<void>;

interface Waiting {
  readonly report: (look: Look) => void;
  readonly resolve: () => void;
  readonly reject: (error: Error) => void;
}

/** Starts the thread at once, so that it is warm when it is needed. */
export function looksInThread(): { readonly looks: Looks; readonly end: () => void } {
  const waiting = new Map<number, Waiting>();
  let next = 1;
  let over = false;
  const begin = (): Worker => {
    const worker = new Worker(new URL('./look-thread.js', import.meta.url));
    worker.on('message', ({ id, look, failed }: LookAnswer) => {
      const one = waiting.get(id);
      if (!one) return;
      if (look) {
        one.report(look);
        return;
      }
      waiting.delete(id);
      if (failed === undefined) one.resolve();
      else one.reject(new Error(failed));
    });
    worker.on('error', (error: unknown) => {
      for (const { reject } of waiting.values()) reject(error instanceof Error ? error : new Error(String(error)));
      waiting.clear();
      if (!over) thread = begin();
    });
    return worker;
  };
  let thread = begin();
  return {
    looks: (lane, design, extras, report) =>
      new Promise((resolve, reject) => {
        const id = next++;
        waiting.set(id, { report, resolve, reject });
        const task: LookTask = { id, lane, design, extras };
        thread.postMessage(task);
      }),
    end: () => {
      over = true;
      void thread.terminate();
    },
  };
}
