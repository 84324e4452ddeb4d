/** How the command line runs the nest: on all cores, with a live line, and ended early by Ctrl-C with the best so far. */
import process from 'node:process';
import type { Nester } from '../lib/index.js';
import { ProgressLine, say } from './console.js';
import { nestOnCores, type NestProgress } from './nest/on-cores.js';
import { TimeLeft } from './nest/time-left.js';

function progressText({ layout, secondsGone, secondsLeft }: NestProgress): string {
  const used = layout.sheets.at(-1)?.usedLength ?? 0;
  const left = Number.isFinite(secondsLeft) ? `, ${Math.ceil(secondsLeft)} s left` : '';
  return `nesting: ${layout.sheets.length} sheets, ${used.toFixed(0)} mm used on the last, ${secondsGone.toFixed(0)} s gone${left} (Ctrl-C keeps the best so far)`;
}

/**
 * A nester for all requests of a command: Ctrl-C ends the present search and those after it.
 * @param seconds limit of all searches together; the design's own effort when left out
 */
export function nesterFor(seconds: number | undefined): Nester {
  const time = seconds === undefined ? null : new TimeLeft(seconds);
  const interrupt = new AbortController();
  return async (parts, stock, options, share) => {
    const line = new ProgressLine();
    const stop = (): void => {
      interrupt.abort();
      line.end();
      say('stopped; the best nest so far is kept');
    };
    // once asked to stop, asking again ends the command
    if (!interrupt.signal.aborted) process.once('SIGINT', stop);
    try {
      return await nestOnCores(parts, stock, {
        ...options,
        ...(time && { seconds: time.for(share) }),
        signal: interrupt.signal,
        onProgress: (progress) => line.update(progressText(progress)),
      });
    } finally {
      process.off('SIGINT', stop);
      line.end();
    }
  };
}
