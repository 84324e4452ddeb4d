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
import type { ProgressLine } from '../console.js';
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
 * @param line shows which sheet is at hand
 */
export async function proveOnCores(
  files: FolderFiles,
  make?: (record: unknown) => unknown,
  line?: ProgressLine,
): Promise<Proof> {
  try {
    return await proof(files, make, line);
  } finally {
    line?.end();
  }
}

/** Gives the next sheet, and shows that it is looked at. */
function shownTaker(next: Int32Array, files: FolderFiles, line: ProgressLine | undefined): () => number {
  const take = takerOf(next);
  const sheets = [...files.keys()].filter((name) => /^sheets\/.*\.dxf$/.test(name)).length;
  return () => {
    const sheet = take();
    if (sheet < sheets) line?.update(`reading back and proving: sheet ${sheet + 1} of ${sheets}`);
    return sheet;
  };
}

async function proof(
  files: FolderFiles,
  make: ((record: unknown) => unknown) | undefined,
  line: ProgressLine | undefined,
): Promise<Proof> {
  const remade = (): MadeAgain | null => (make === undefined ? null : madeAgain(files, make));
  if (availableParallelism() < 2 || !existsSync(fileURLToPath(threadFile)))
    return proveFolder(files, undefined, remade());
  const next = sharedCounter();
  const theirs = proveInThread(files, next);
  const again = remade();
  const ours = proveSomeSheets(files, shownTaker(next, files, line));
  return proveFolder(files, new Map([...ours, ...(await theirs)]), again);
}
