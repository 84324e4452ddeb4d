/** The proof of a folder with a second thread beside this one: the sheets are proven each by itself. */
import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import {
  type FolderFiles,
  madeAgain,
  type MadeAgain,
  type Proof,
  proveFolder,
  proveSomeSheets,
  type SheetProof,
} from '../../lib/check/index.js';
import { sharedCounter, takerOf } from './take.js';

type Proofs = ReadonlyMap<number, SheetProof>;

const threadFile = new URL('./proof-thread.js', import.meta.url);

function proveInThread(files: FolderFiles, next: Int32Array): Promise<Proofs> {
  return new Promise((resolve, reject) => {
    const thread = new Worker(threadFile, { workerData: { files, next } });
    thread.once('message', (proofs: Proofs) => resolve(proofs));
    thread.once('error', reject);
  });
}

/**
 * `proveFolder`, in half the time where there are two cores.
 * @param make makes a record again from its design; where it is left out, that is not asked
 */
export async function proveOnCores(files: FolderFiles, make?: (record: unknown) => unknown): Promise<Proof> {
  const remade = (): MadeAgain | null => (make === undefined ? null : madeAgain(files, make));
  if (availableParallelism() < 2 || !existsSync(fileURLToPath(threadFile)))
    return proveFolder(files, undefined, remade());
  const next = sharedCounter();
  const theirs = proveInThread(files, next);
  const again = remade();
  const ours = proveSomeSheets(files, takerOf(next));
  return proveFolder(files, new Map([...ours, ...(await theirs)]), again);
}
