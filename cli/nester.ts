/** How the command line runs the nest: on all cores, with a live line, and ended early by Ctrl-C with the best so far. */
import { formatLength, type LengthUnit, type Nester, type NestPart } from '../lib/index.js';
import { ProgressLine, say } from './console.js';
import { beforeExit, onFirstInterrupt } from './interrupt.js';
import { nestOnCores, type NestProgress } from './nest/on-cores.js';
import { TimeLeft } from './nest/time-left.js';

/** `birch12 and 2 more`: what the parts are cut from. */
function materialsOf(parts: readonly NestPart[]): string {
  const [first = '', ...more] = [...new Set(parts.map(({ group }) => group))];
  return more.length === 0 ? first : `${first} and ${more.length} more`;
}

function progressText({ layout, secondsGone, secondsLeft }: NestProgress, materials: string, unit: LengthUnit): string {
  const used = formatLength(layout.sheets.at(-1)?.usedLength ?? 0, unit);
  const left = Number.isFinite(secondsLeft) ? `, ${Math.ceil(secondsLeft)} s left` : '';
  const sheets = layout.sheets.length === 1 ? '1 sheet' : `${layout.sheets.length} sheets`;
  return `nesting ${materials}: ${sheets}, ${used} of the last, ${secondsGone.toFixed(0)} s elapsed${left} (Ctrl-C stops here)`;
}

/**
 * A nester for all requests of a command: Ctrl-C ends the present search and those after it.
 * @param seconds limit of all searches together; the design's own effort when left out
 * @param unit in which lengths are shown
 */
export function nesterFor(seconds: number | undefined, unit: LengthUnit): Nester {
  const time = seconds === undefined ? null : new TimeLeft(seconds);
  const interrupt = new AbortController();
  return async (parts, stock, options, share) => {
    const line = new ProgressLine();
    const stop = (): void => {
      interrupt.abort();
      line.end();
      say('search stopped, best nest kept; Ctrl-C again stops the command, and nothing is written');
    };
    // once asked to stop, asking again ends the command
    const off = interrupt.signal.aborted ? () => undefined : onFirstInterrupt(stop);
    const tidy = beforeExit(() => line.end());
    try {
      return await nestOnCores(parts, stock, {
        ...options,
        ...(time && { seconds: time.for(share) }),
        signal: interrupt.signal,
        onProgress: (progress) => line.update(progressText(progress, materialsOf(parts), unit)),
      });
    } finally {
      off();
      tidy();
      line.end();
    }
  };
}
