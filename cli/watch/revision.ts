/** States of the design file: how they are named, and what they state at a key. */
import { createHash } from 'node:crypto';
import { type KeySteps, type StatedKey, statedKeys } from '../../lib/index.js';

/** Names a state of the text. */
export const revisionOf = (text: string): string => createHash('sha256').update(text).digest('base64url').slice(0, 22);

/** What a text states at a key and below it. */
const statedFrom = (text: string, path: KeySteps): readonly StatedKey[] =>
  (statedKeys(text) ?? []).filter((one) => path.every((step, i) => one.path[i] === step));

/** What a text states at a key; null where it does not. */
export const shownAt = (text: string, path: KeySteps): string | null =>
  statedFrom(text, path).find((one) => one.path.length === path.length)?.shown ?? null;

/** Whether a path leads to a section, which cannot be held against what the page showed of it. */
export const isSection = (text: string, path: KeySteps): boolean =>
  statedFrom(text, path).some((one) => one.path.length > path.length);
