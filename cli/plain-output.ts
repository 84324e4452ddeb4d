/** Writing one file that a person names. */
import { randomBytes } from 'node:crypto';
import { chmodSync, lstatSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { exitCode, reasonOf, stop } from './exit.js';

/**
 * Puts the whole text in place at once, so that a full disk leaves no half file.
 * @param mode of a file that is replaced; the usual one when left out
 * @param before called when all is ready, right before the new text takes the place of the old; what it throws ends it
 */
export function put(path: string, text: string, mode?: number, before?: () => void): void {
  const part = `${path}.part-${randomBytes(4).toString('hex')}`;
  try {
    writeFileSync(part, text, { flag: 'wx' });
    if (mode !== undefined) chmodSync(part, mode);
    before?.();
    renameSync(part, path);
  } catch (error) {
    rmSync(part, { force: true });
    throw error;
  }
}

/**
 * Refuses a place where something stands that is not to be replaced.
 * @param force a plain file that is there may be
 * @param remedy how to proceed if a file is already there
 * @returns whether a file is there
 * @throws Stop
 */
export function checkPlace(path: string, force: boolean, remedy = 'choose another name, or use --force'): boolean {
  const there = lstatSync(path, { throwIfNoEntry: false });
  if (there && !there.isFile())
    throw stop(exitCode.notWritten, 'cannot-write', `${path} is not a plain file`, 'choose another name');
  if (there && !force)
    throw stop(exitCode.notWritten, 'foreign-files', `${path} already exists; nothing was written`, remedy);
  return there !== undefined;
}

/**
 * Writes a file that nothing stands in the place of.
 * @param force as for `checkPlace`
 * @throws Stop
 */
export function writeFileAt(path: string, text: string, force: boolean, remedy?: string): void {
  checkPlace(path, force, remedy);
  try {
    put(path, text);
  } catch (error) {
    throw stop(exitCode.notWritten, 'cannot-write', `cannot write ${path}: ${reasonOf(error)}`, 'choose another path');
  }
}
