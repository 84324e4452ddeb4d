/** Follows a file: notified by the system where that works, by looking at intervals where it does not. */
import { type FSWatcher, watch } from 'node:fs';
import { basename, dirname } from 'node:path';
import { readPlainFile, whyUnread } from '../plain-file.js';

export type Sight =
  { readonly kind: 'text'; readonly text: string } | { readonly kind: 'gone'; readonly reason: string };

/** Of a design file and of the drawings that it names (bytes). */
const largest = 16_000_000;
/** An editor may empty a file before it fills it: what stands for this long is meant (ms). */
const settled = 40;
/** How often the file is looked at in any case (ms): network disks send no notice. */
const lookEvery = 400;

function look(file: string): Sight {
  try {
    return { kind: 'text', text: readPlainFile(file, largest) };
  } catch (error) {
    return { kind: 'gone', reason: whyUnread(error) };
  }
}

export interface Following {
  /** Looks now, as after a change that is known of. */
  readonly look: () => void;
  readonly end: () => void;
}

const same = (a: Sight, b: Sight): boolean =>
  a.kind === 'text' ? b.kind === 'text' && a.text === b.text : b.kind === 'gone' && a.reason === b.reason;

/**
 * Calls `seen` with the file's text now and whenever it has changed, or is gone or back.
 */
export function follow(file: string, seen: (sight: Sight) => void): Following {
  let last = look(file);
  let waiting: NodeJS.Timeout | undefined;
  let watcher: FSWatcher | undefined;
  const check = (): void => {
    const now = look(file);
    if (same(now, last)) return;
    last = now;
    seen(now);
  };
  const soon = (): void => {
    clearTimeout(waiting);
    waiting = setTimeout(check, settled);
  };
  const listen = (): void => {
    try {
      // the folder, not the file: editors save by putting a new file in the old one's place
      watcher = watch(dirname(file), (_, name) => {
        if (name === null || name === basename(file)) soon();
      });
      watcher.on('error', () => {
        watcher?.close();
        watcher = undefined;
      });
    } catch {
      // no such folder yet, or no watches left: looking goes on
      watcher = undefined;
    }
  };
  listen();
  const timer = setInterval(() => {
    if (!watcher) listen();
    if (!same(look(file), last)) soon();
  }, lookEvery);
  seen(last);
  return {
    look: check,
    end: () => {
      clearInterval(timer);
      clearTimeout(waiting);
      watcher?.close();
    },
  };
}
