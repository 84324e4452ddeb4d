/** A thread that lives as long as the page: works out states of the file, and drafts while a slider moves. */
import { parentPort } from 'node:worker_threads';
import type { Design } from '../../lib/index.js';
import { reasonOf } from '../exit.js';
import { type Look, lookAt } from './look.js';

export interface LookTask {
  readonly id: number;
  readonly lane: Lane;
  readonly design: Design;
  readonly extras: ReadonlyMap<string, string>;
}

export interface LookAnswer {
  readonly id: number;
  /** Null at the end. */
  readonly look: Look | null;
  readonly failed?: string;
}

/** A newer task of a lane takes the place of an older one. */
export type Lane = 'file' | 'draft';

const waiting = new Map<Lane, LookTask>();
let busy = false;

const answer = (message: LookAnswer): void => parentPort?.postMessage(message);

async function work(): Promise<void> {
  if (busy) return;
  busy = true;
  for (;;) {
    const task = waiting.get('file') ?? waiting.get('draft');
    if (!task) break;
    waiting.delete(task.lane);
    const { id, design, extras } = task;
    const wanted = async (): Promise<boolean> => {
      // what came in meanwhile is taken in first
      await new Promise((resolve) => setImmediate(resolve));
      // a draft is worked out to its end, or its values would never come while a slider moves
      return !waiting.has('file');
    };
    try {
      await lookAt(design, extras, (look) => answer({ id, look }), wanted);
      answer({ id, look: null });
    } catch (error) {
      answer({ id, look: null, failed: reasonOf(error) });
    }
  }
  busy = false;
}

parentPort?.on('message', (task: LookTask) => {
  const older = waiting.get(task.lane);
  if (older) answer({ id: older.id, look: null });
  waiting.set(task.lane, task);
  void work();
});
