/** The nest in a thread of its own, so that the page stays quick. */
import { Worker } from 'node:worker_threads';
import { reasonOf } from '../exit.js';
import type { Layout } from '../../lib/index.js';
import type { Background, Nested } from './watch-design.js';

/** Starts a thread for one state of the design; a newer state ends it. */
export const nestInThread: Background = (design, extras, report) => {
  const worker = new Worker(new URL('./nest-thread.js', import.meta.url), { workerData: { design, extras } });
  let over = false;
  worker.on('message', (nested: Nested) => {
    if (!over) report(nested);
  });
  worker.on('error', (error: unknown) => {
    if (over) return;
    const message = `the nest failed: ${reasonOf(error)}`;
    report({ problems: [{ code: 'internal', severity: 'error', message }], book: null, last: true });
  });
  return {
    laid: (layouts: readonly Layout[] | null) => worker.postMessage(layouts),
    end: () => {
      over = true;
      void worker.terminate();
    },
  };
};
