/** Reading a file that a person names: only a plain file, and only so much of it. */
import { closeSync, constants, fstatSync, openSync, readFileSync } from 'node:fs';
import { reasonOf } from './exit.js';

/** A path that names a device, a pipe, a socket or too much: reading it could go on for ever. */
export class NotPlain extends Error {}

/**
 * The text of a plain file.
 * @param largest bytes
 * @throws NotPlain for what is no plain file or too large, and what the operating system throws
 */
export function readPlainFile(path: string, largest: number): string {
  // a pipe without a writer would keep an ordinary open waiting; what was opened is what is looked at and read
  const handle = openSync(path, constants.O_RDONLY | constants.O_NONBLOCK);
  try {
    const stat = fstatSync(handle);
    if (stat.isDirectory()) throw new NotPlain('is a folder, not a file');
    if (!stat.isFile()) throw new NotPlain('is not a plain file, but a device, pipe or socket');
    if (stat.size > largest) throw new NotPlain(`is larger than ${largest / 1e6} MB`);
    return readFileSync(handle, 'utf8');
  } finally {
    closeSync(handle);
  }
}

/** Why a file could not be read, in words. @param error what `readPlainFile` has thrown */
export const whyUnread = (error: unknown): string =>
  error instanceof NotPlain ? `it ${error.message}` : reasonOf(error);
