/**
 * Writing a folder at once or not at all. Everything is written into a folder beside the target, read back by the
 * caller if it wants, then renamed into place. What stands there and is not ours is never touched.
 */
import { randomBytes } from 'node:crypto';
import { closeSync, fsyncSync, mkdirSync, openSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, resolve, sep } from 'node:path';
import process from 'node:process';
import type { JobFiles } from '../lib/index.js';
import { checkRoom, type Claim } from './claim.js';
import { exitCode, reasonOf, Stop, stop } from './exit.js';
import { digest, filesIn, listName, folderState, type Written } from './standing.js';

/** A name from a job must stay within the folder. */
function within(folder: string, name: string): string {
  const path = resolve(folder, name);
  if (!path.startsWith(resolve(folder) + sep))
    throw stop(exitCode.notWritten, 'cannot-write', `refusing to write outside ${folder}: ${name}`);
  return path;
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
 * Writes the folder.
 * @param claim the folder as claimed before the work
 * @param prove given the folder as written, before it takes its place; throws to stop
 * @throws Stop with exit code 3 when it cannot be written; the target is then as it was
 */
export async function writeFolder(
  { target, folder, force }: Claim,
  files: JobFiles,
  prove?: (folder: string) => Promise<void>,
): Promise<void> {
  const parent = dirname(folder);
  const tag = `${process.pid}-${randomBytes(4).toString('hex')}`;
  const part = join(parent, `.${basename(folder)}.part-${tag}`);
  const before = join(parent, `.${basename(folder)}.before-${tag}`);
  try {
    checkRoom(
      parent,
      [...files.values()].reduce((sum, bytes) => sum + Buffer.byteLength(bytes), 0),
    );
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
    // another process that tidies up must not leave us with half a folder
    if (filesIn(part).length !== files.size + 1) throw new Error('files were removed while they were being written');
    await prove?.(part);
    // asked again: somebody may have put a file there while we worked
    if (folderState(folder, force) === 'ours') {
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
    if (error instanceof Stop) throw error;
    throw stop(
      exitCode.notWritten,
      'cannot-write',
      `cannot write ${target}: ${reasonOf(error)}; nothing was changed there`,
      'choose another -o',
    );
  }
}
