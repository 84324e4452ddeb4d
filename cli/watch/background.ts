/** The nest in a thread of its own, so that the page stays quick. */
import { Worker } from 'node:worker_threads';
import type { Background, Nested } from './session.js';

/** Starts a thread for one state of the design; a newer state ends it. */
export const nestInThread: Background = (design, extras, tell) => {
  const worker = new Worker(new URL('./nest-thread.js', import.meta.url), { workerData: { design, extras } });
  let over = false;
  const end = (): void => {
    over = true;
    void worker.terminate();
  };
  worker.on('message', (nested: Nested) => {
    if (!over) tell(nested);
  });
  worker.on('error', (error: unknown) => {
    if (over) return;
    const message = `the nest failed: ${error instanceof Error ? error.message : String(error)}`;
    tell({ problems: [{ code: 'failed', severity: 'error', message }], book: null, last: true });
  });
  return end;
};
