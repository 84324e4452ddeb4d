/** How the command line runs the nest: on all cores, with a live line, and ended early by Ctrl-C with the best so far. */
import process from 'node:process';
import type { Nester } from '../lib/index.js';
import { ProgressLine, say } from './console.js';
import { nestOnCores, type NestProgress } from './nest/on-cores.js';

function progressText({ layout, secondsGone, secondsLeft }: NestProgress): string {
  const used = layout.sheets.at(-1)?.usedLength ?? 0;
  const left = Number.isFinite(secondsLeft) ? `, ${Math.ceil(secondsLeft)} s left` : '';
  return `nesting: ${layout.sheets.length} sheets, ${used.toFixed(0)} mm used on the last, ${secondsGone.toFixed(0)} s gone${left} (Ctrl-C keeps the best so far)`;
}

/** @param seconds limit of the search for each process; the design's own effort when left out */
export function nesterFor(seconds: number | undefined): Nester {
  return async (parts, stock, options) => {
    const line = new ProgressLine();
    const interrupt = new AbortController();
    const stop = (): void => {
      interrupt.abort();
      line.end();
      say('stopped; the best nest so far is kept');
    };
    process.once('SIGINT', stop);
    try {
      return await nestOnCores(parts, stock, {
        ...options,
        ...(seconds === undefined ? {} : { seconds }),
        signal: interrupt.signal,
        onProgress: (progress) => line.update(progressText(progress)),
      });
    } finally {
      process.off('SIGINT', stop);
      line.end();
    }
  };
}
