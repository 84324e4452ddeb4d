/** A nesting thread: takes one task, reports better layouts, ends with the best. */
import { parentPort, workerData } from 'node:worker_threads';
import { runTask } from './run-task.js';
import type { Message, NestTask } from './task.js';

const say = (message: Message): void => parentPort?.postMessage(message);
say({ done: true, layout: runTask(workerData as NestTask, (layout) => say({ done: false, layout })) });
