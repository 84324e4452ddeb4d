/** A step of the page's that can be taken back: what it changed and what it was made on, not the texts themselves. */
import type { KeySteps } from '../../lib/index.js';
import { revisionOf, shownAt } from './revision.js';

/** The file on one side of a step. */
interface Side {
  readonly revision: string;
  /** At the key that was changed; null where there is none. */
  readonly value: string | null;
  /** What stands there in place of the other side's piece. */
  readonly piece: string;
}

export interface Step {
  /** The key that was changed; null where the whole text was. */
  readonly path: KeySteps | null;
  /** Offset of the pieces. */
  readonly at: number;
  readonly before: Side;
  readonly after: Side;
}

/** A copy of its own: a slice would keep the whole text in memory. */
const copied = (text: string): string => Buffer.from(text, 'utf16le').toString('utf16le');

export function stepOf(before: string, after: string, path: KeySteps | null): Step {
  const shorter = Math.min(before.length, after.length);
  let at = 0;
  while (at < shorter && before[at] === after[at]) at += 1;
  let same = 0;
  while (same < shorter - at && before.at(-1 - same) === after.at(-1 - same)) same += 1;
  const side = (text: string): Side => ({
    revision: revisionOf(text),
    value: path && copyOf(shownAt(text, path)),
    piece: copied(text.slice(at, text.length - same)),
  });
  return { path, at, before: side(before), after: side(after) };
}

const copyOf = (value: string | null): string | null => (value === null ? null : copied(value));

/** The text on the other side of a step; null where `text` is not on this side of it any more. */
export function across(text: string, at: number, here: Side, there: Side): string | null {
  if (revisionOf(text) !== here.revision) return null;
  return text.slice(0, at) + there.piece + text.slice(at + here.piece.length);
}
