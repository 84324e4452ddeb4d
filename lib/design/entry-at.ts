/** From the path of a key in a file to what is known of it. */
import type { KeyPath } from '../diagnostic/index.js';
import { keyEntries, type KeyEntry } from './reference.js';

/** A path as its entry has it: `stock.0.size` is `stock[].size`, `materials.ply.kind` is `materials.<name>.kind`. */
export function entryPath(path: KeyPath): string {
  return path.reduce<string>((text, step) => {
    if (typeof step === 'number') return `${text}[]`;
    if (/(?:^|\.)materials$/.test(text)) return `${text}.<name>`;
    return text === '' ? step : `${text}.${step}`;
  }, '');
}

/** What is known of the key at a path; undefined where no design has one there. */
export function entryAt(path: KeyPath): KeyEntry | undefined {
  const wanted = entryPath(path);
  return keyEntries().find((entry) => entry.path === wanted);
}
