/** A proving thread: proves sheets as long as there are any that nobody has taken. */
import { parentPort, workerData } from 'node:worker_threads';
import { type FolderFiles, proveSomeSheets } from '../../lib/check/index.js';
import { takerOf } from './take.js';

const { files, next } = workerData as { readonly files: FolderFiles; readonly next: Int32Array };
parentPort?.postMessage(proveSomeSheets(files, takerOf(next)));
