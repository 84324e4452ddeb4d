/**
 * Writing a folder at once or not at all. Everything is written into a folder beside the target, read back by the
 * caller if it wants, then renamed into place. What stands there and is not ours is never touched.
 */
import { createHash, randomBytes } from 'node:crypto';
import {
  closeSync,
  existsSync,
  fsyncSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmdirSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join, resolve, sep } from 'node:path';
import process from 'node:process';
import { exitCode, reasonOf, Stop, stop } from './exit.js';

export type Files = ReadonlyMap<string, string | Uint8Array>;

/** The list of what we wrote, so that a later run knows its own files from anybody else's. */
const listName = '.dishwright.json';

interface Written {
  readonly made: 'dishwright';
  readonly files: Readonly<Record<string, string>>;
}

const digest = (bytes: string | Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

function filesIn(folder: string, prefix = ''): string[] {
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

/** A name from a job must stay within the folder. */
function within(folder: string, name: string): string {
  const path = resolve(folder, name);
  if (!path.startsWith(resolve(folder) + sep))
    throw stop(exitCode.notWritten, 'cannot-write', `refusing to write outside ${folder}: ${name}`);
  return path;
}

type Standing = 'nothing' | 'empty' | 'ours';

/**
 * What stands at the target.
 * @throws Stop when something there is not ours, or ours but changed since and `force` is not given
 */
function standing(folder: string, force: boolean): Standing {
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
      `${folder} holds files that are not ours (${(foreign.length > 0 ? foreign : present).slice(0, 3).join(', ')}); nothing was written`,
      'choose another -o or move them',
    );
  const changed = present.filter(
    (name) => name !== listName && digest(readFileSync(join(folder, name))) !== list.files[name],
  );
  if (changed.length > 0 && !force)
    throw stop(
      exitCode.notWritten,
      'changed-files',
      `${folder} was written by an earlier run and changed since (${changed.slice(0, 3).join(', ')}); nothing was written`,
      'choose another -o, or --force to replace it',
    );
  return 'ours';
}

function alive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** Puts right what a run that was cut off has left beside the target. */
function recover(folder: string): void {
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

function writeDurably(path: string, bytes: string | Uint8Array): void {
  const handle = openSync(path, 'wx');
  try {
    writeFileSync(handle, bytes);
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/**
 * Makes the folders on the way to the target, one by one: where none can be made at all, Node's own recursive call
 * may try for ever.
 * @returns the topmost folder made, if any
 */
function makeFolders(folder: string): string | undefined {
  if (existsSync(folder)) return undefined;
  const above = dirname(folder) === folder ? undefined : makeFolders(dirname(folder));
  mkdirSync(folder);
  return above ?? folder;
}

/** Takes back the folders that were made on the way to the target, from `last` up to `first`, while they are empty. */
function removeEmpty(last: string, first: string): void {
  for (let folder = last; folder.startsWith(first); folder = dirname(folder)) {
    try {
      rmdirSync(folder);
    } catch {
      // not empty: somebody else has begun to use it
      return;
    }
  }
}

/**
 * Makes sure that the target could be written, before any long work is begun.
 * @throws Stop
 */
export function askFolder(target: string, force: boolean): void {
  const folder = resolve(target);
  try {
    recover(folder);
  } catch (error) {
    throw stop(
      exitCode.notWritten,
      'cannot-write',
      `cannot write to ${target}: ${reasonOf(error)}`,
      'choose another -o',
    );
  }
  standing(folder, force);
}

/**
 * Writes the folder.
 * @param prove given the folder as written, before it takes its place; throws to stop
 * @throws Stop with exit code 3 when it cannot be written; the target is then as it was
 */
export function writeFolder(target: string, files: Files, force: boolean, prove?: (folder: string) => void): void {
  const folder = resolve(target);
  const parent = dirname(folder);
  const tag = `${process.pid}-${randomBytes(4).toString('hex')}`;
  const part = join(parent, `.${basename(folder)}.part-${tag}`);
  const before = join(parent, `.${basename(folder)}.before-${tag}`);
  askFolder(target, force);
  let made: string | undefined;
  try {
    made = makeFolders(parent);
    mkdirSync(part);
    const list: Record<string, string> = {};
    for (const [name, bytes] of files) {
      const path = within(part, name);
      mkdirSync(dirname(path), { recursive: true });
      writeDurably(path, bytes);
      list[name] = digest(bytes);
    }
    const written: Written = { made: 'dishwright', files: list };
    writeDurably(join(part, listName), `${JSON.stringify(written, null, 2)}\n`);
    // whoever tidies up beside us must not leave us with half a folder
    if (filesIn(part).length !== files.size + 1) throw new Error('files were removed while they were written');
    prove?.(part);
    // asked again: somebody may have put a file there while we worked
    if (standing(folder, force) === 'ours') {
      renameSync(folder, before);
      try {
        renameSync(part, folder);
      } catch (error) {
        renameSync(before, folder);
        throw error;
      }
      rmSync(before, { recursive: true, force: true });
    } else {
      // a rename takes the place of an empty folder in one step
      renameSync(part, folder);
    }
  } catch (error) {
    rmSync(part, { recursive: true, force: true });
    if (made !== undefined) removeEmpty(parent, made);
    if (error instanceof Stop) throw error;
    throw stop(
      exitCode.notWritten,
      'cannot-write',
      `cannot write ${target}: ${reasonOf(error)}; nothing was changed there`,
      'choose another -o',
    );
  }
}
