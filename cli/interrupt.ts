/**
 * Ctrl-C: the first ends a search and keeps the best it has found; where nothing is searched, and the second time, the
 * command ends with nothing written.
 */
import process from 'node:process';
import { say, shade } from './console.js';

/** Exit code of a command ended by Ctrl-C: 128 and the number of the signal, as shells have it. */
const ended = 130;

const searches = new Set<() => void>();
const cleanups = new Set<() => void>();

function interrupted(): void {
  const [search] = searches;
  if (search) {
    searches.clear();
    search();
    return;
  }
  for (const cleanup of cleanups) cleanup();
  say(shade('stopped; nothing was written', 'red'));
  process.exit(ended);
}

function listen(): void {
  const needed = searches.size + cleanups.size > 0;
  const there = process.listeners('SIGINT').includes(interrupted);
  if (needed && !there) process.on('SIGINT', interrupted);
  if (!needed && there) process.off('SIGINT', interrupted);
}

function registered(set: Set<() => void>, act: () => void): () => void {
  set.add(act);
  listen();
  return () => {
    set.delete(act);
    listen();
  };
}

/** Ctrl-C ends the search by `end`, once. @returns what takes it back */
export const onFirstInterrupt = (end: () => void): (() => void) => registered(searches, end);

/** What is tidied up when Ctrl-C ends the command. @returns what takes it back */
export const beforeExit = (cleanup: () => void): (() => void) => registered(cleanups, cleanup);
