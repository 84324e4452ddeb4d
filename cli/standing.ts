/** What stands at the place of an output folder, whose it is, and what an earlier run has left beside it. */
import { createHash } from 'node:crypto';
import { existsSync, lstatSync, mkdirSync, readdirSync, readFileSync, renameSync, rmdirSync, rmSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import process from 'node:process';
import { exitCode, reasonOf, stop } from './exit.js';

/** The list of what we wrote, so that a later run knows its own files from anybody else's. */
export const listName = '.dishwright.json';

export interface Written {
  readonly made: 'dishwright';
  readonly files: Readonly<Record<string, string>>;
}

export const digest = (bytes: string | Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

export function filesIn(folder: string, prefix = ''): string[] {
  return readdirSync(join(folder, prefix), { withFileTypes: true }).flatMap((entry) => {
    const name = prefix === '' ? entry.name : `${prefix}/${entry.name}`;
    return entry.isDirectory() ? filesIn(folder, name) : [name];
  });
}

function listIn(folder: string): Written | null {
  try {
    const list = JSON.parse(readFileSync(join(folder, listName), 'utf8')) as Partial<Written>;
    if (list.made === 'dishwright' && typeof list.files === 'object') return list as Written;
  } catch {
    // no list of ours: whatever is here is somebody else's
  }
  return null;
}

export type FolderState = 'nothing' | 'empty' | 'ours';

/**
 * What stands at the target.
 * @throws Stop when something there is not ours, or ours but changed since and `force` is not given
 */
export function folderState(folder: string, force: boolean): FolderState {
  let entry;
  try {
    entry = lstatSync(folder);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return 'nothing';
    throw stop(
      exitCode.notWritten,
      'cannot-write',
      `cannot write to ${folder}: ${reasonOf(error)}`,
      'choose another -o',
    );
  }
  if (!entry.isDirectory())
    throw stop(
      exitCode.notWritten,
      'cannot-write',
      `${folder} is ${entry.isSymbolicLink() ? 'a link' : 'a file'}, not a folder`,
      'choose another -o',
    );
  const present = filesIn(folder);
  if (present.length === 0 && readdirSync(folder).length === 0) return 'empty';
  const list = listIn(folder);
  const foreign = present.filter((name) => name !== listName && !(list && Object.hasOwn(list.files, name)));
  if (!list || foreign.length > 0)
    throw stop(
      exitCode.notWritten,
      'foreign-files',
      `${folder} contains files that dishwright did not write (${(foreign.length > 0 ? foreign : present).slice(0, 3).join(', ')}); nothing was written`,
      'choose another -o, or move them',
    );
  const changed = present.filter(
    (name) => name !== listName && digest(readFileSync(join(folder, name))) !== list.files[name],
  );
  if (changed.length > 0 && !force)
    throw stop(
      exitCode.notWritten,
      'changed-files',
      `${folder} was written by an earlier run and has been changed since (${changed.slice(0, 3).join(', ')}); nothing was written`,
      'choose another -o, or --force to replace it',
    );
  return 'ours';
}

/** Whether a process of that number is running. */
export function alive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** Puts right what a run that was cut off has left beside the target. */
export function recover(folder: string): void {
  const parent = dirname(folder);
  if (!existsSync(parent)) return;
  const pattern = /^\.(.+)\.(before|part)-(\d+)-[0-9a-f]{8}$/;
  for (const name of readdirSync(parent)) {
    const found = pattern.exec(name);
    if (found?.[1] !== basename(folder) || alive(Number(found[3]))) continue;
    const path = join(parent, name);
    if (found[2] === 'before' && !existsSync(folder)) renameSync(path, folder);
    else rmSync(path, { recursive: true, force: true });
  }
}

/**
 * Makes the folders on the way to the target, one by one: where none can be made at all, Node's own recursive call
 * may try for ever.
 * @returns the topmost folder made, if any
 */
export function makeFolders(folder: string): string | undefined {
  if (existsSync(folder)) return undefined;
  const above = dirname(folder) === folder ? undefined : makeFolders(dirname(folder));
  mkdirSync(folder);
  return above ?? folder;
}

/** Takes back the folders that were made on the way to the target, from `last` up to `first`, while they are empty. */
export function removeEmpty(last: string, first: string): void {
  for (let folder = last; folder.startsWith(first); folder = dirname(folder)) {
    try {
      rmdirSync(folder);
    } catch {
      // not empty: somebody else has begun to use it
      return;
    }
  }
}
