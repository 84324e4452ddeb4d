/**
 * Claiming an output folder before the work on it begins: nobody else is writing it, what stands there may be
 * replaced, and the disk takes files and has room. Found out here, not after minutes of nesting.
 */
import { randomBytes } from 'node:crypto';
import {
  closeSync,
  fsyncSync,
  openSync,
  readdirSync,
  rmSync,
  statfsSync,
  statSync,
  utimesSync,
  writeSync,
} from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import process from 'node:process';
import { exitCode, reasonOf, Stop, stop } from './exit.js';
import { beforeExit } from './interrupt.js';
import { alive, makeFolders, recover, removeEmpty, folderState } from './standing.js';

/** A job of a hundred parts takes 3 MB, its PDFs and book included (bytes). */
const usualJob = 8_000_000;
/** A run shows that it is still there this often (ms): a number of a process may be given out again. */
const refreshEvery = 10_000;
/** A lock that was not refreshed for this long (ms) belongs to a run that is gone. */
const staleAfter = 120_000;

/** A folder that this run alone may write. */
export interface Claim {
  /** The path as given, for messages. */
  readonly target: string;
  readonly folder: string;
  readonly force: boolean;
  /** Gives the folder free, and takes back empty folders that were made on the way to it. */
  readonly release: () => void;
}

/** Numbers of other runs that are writing the folder; what dead runs have left is removed. */
function otherRuns(folder: string, own: string): number[] {
  const parent = dirname(folder);
  const prefix = `.${basename(folder)}.lock-`;
  return readdirSync(parent).flatMap((name) => {
    if (!name.startsWith(prefix) || name === own) return [];
    const path = join(parent, name);
    const pid = Number.parseInt(name.slice(prefix.length), 10);
    const seen = statSync(path, { throwIfNoEntry: false });
    if (seen === undefined) return [];
    if (alive(pid) && Date.now() - seen.mtimeMs < staleAfter) return [pid];
    rmSync(path, { force: true });
    return [];
  });
}

/** @throws Stop when the disk of a folder has less room than is needed (bytes) */
export function checkRoom(folder: string, needed: number): void {
  const { bavail, bsize, blocks } = statfsSync(folder);
  const free = bavail * bsize;
  // a network disk may not know its size
  if (blocks === 0 || free >= needed) return;
  const mb = (bytes: number) => `${(bytes / 1e6).toFixed(1)} MB`;
  throw stop(
    exitCode.notWritten,
    'no-space',
    `the disk of ${folder} is too full: ${mb(free)} free, and the files may need ${mb(needed)}`,
    'free some space, or choose another -o',
  );
}

/** Writes the lock: the same disk and folder that the output will need. */
function writeLock(path: string): void {
  const handle = openSync(path, 'wx');
  try {
    writeSync(handle, `dishwright is writing here, process ${process.pid}\n`);
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/**
 * Claims a folder for this run.
 * @param target as the person named it
 * @param force what an earlier run wrote and was changed since may be replaced
 * @throws Stop with exit code 3 when another run is writing there, something there is not ours, or nothing can be
 * written
 */
export function claimFolder(target: string, force: boolean): Claim {
  const folder = resolve(target);
  const parent = dirname(folder);
  const lock = `.${basename(folder)}.lock-${process.pid}-${randomBytes(4).toString('hex')}`;
  let made: string | undefined;
  const timer = setInterval(() => {
    try {
      utimesSync(join(parent, lock), new Date(), new Date());
    } catch {
      // not there yet, or removed by hand; the folder is looked at again before it is put in place
    }
  }, refreshEvery);
  timer.unref();
  const release = (): void => {
    clearInterval(timer);
    rmSync(join(parent, lock), { force: true });
    if (made !== undefined) removeEmpty(parent, made);
  };
  try {
    recover(folder);
    folderState(folder, force);
    made = makeFolders(parent);
    writeLock(join(parent, lock));
    const [other] = otherRuns(folder, lock);
    if (other !== undefined)
      throw stop(
        exitCode.notWritten,
        'folder-in-use',
        `another run (process ${other}) is writing ${target}`,
        'wait for it to finish, or choose another -o',
      );
    checkRoom(parent, usualJob);
  } catch (error) {
    try {
      release();
    } catch {
      // what keeps us from writing may keep us from tidying up too
    }
    if (error instanceof Stop) throw error;
    throw stop(
      exitCode.notWritten,
      'cannot-write',
      `cannot write to ${target}: ${reasonOf(error)}`,
      'choose another -o',
    );
  }
  return { target, folder, force, release };
}

/** Removes what this run has written beside the folder and not yet put in its place. */
function removeParts(folder: string): void {
  const prefix = `.${basename(folder)}.part-${process.pid}-`;
  for (const name of readdirSync(dirname(folder)))
    if (name.startsWith(prefix)) rmSync(join(dirname(folder), name), { recursive: true, force: true });
}

/** Does work that writes a folder, claimed for its length. @throws Stop as `claimFolder` does */
export async function withClaim<T>(target: string, force: boolean, work: (claim: Claim) => Promise<T>): Promise<T> {
  const claim = claimFolder(target, force);
  const off = beforeExit(() => {
    removeParts(claim.folder);
    claim.release();
  });
  try {
    return await work(claim);
  } finally {
    off();
    claim.release();
  }
}
