/** Writing one file that a person names. */
import { randomBytes } from 'node:crypto';
import { lstatSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { exitCode, reasonOf, stop } from './exit.js';

/** Puts the whole text in place at once, so that a full disk leaves no half file. */
export function put(path: string, text: string): void {
  const part = `${path}.part-${randomBytes(4).toString('hex')}`;
  try {
    writeFileSync(part, text, { flag: 'wx' });
    renameSync(part, path);
  } catch (error) {
    rmSync(part, { force: true });
    throw error;
  }
}

/**
 * Writes a file that nothing stands in the place of.
 * @param force replaces a plain file that is there
 * @throws Stop
 */
export function writeFileAt(path: string, text: string, force: boolean): void {
  const there = lstatSync(path, { throwIfNoEntry: false });
  if (there && !there.isFile())
    throw stop(exitCode.notWritten, 'cannot-write', `${path} is not a plain file`, 'give another name');
  if (there && !force)
    throw stop(
      exitCode.notWritten,
      'foreign-files',
      `${path} is there already; nothing was written`,
      'give another name, or --force',
    );
  try {
    put(path, text);
  } catch (error) {
    throw stop(exitCode.notWritten, 'cannot-write', `cannot write ${path}: ${reasonOf(error)}`, 'give another place');
  }
}
