/** One input through its reader: what came of it. */
import { fuzzInput, type Target } from './targets.js';

/** Longest that a reader may take, ms. */
const slowest = 2000;

export interface Outcome {
  readonly target: string;
  readonly accepted: boolean;
  readonly ms: number;
  /** What is wrong with the reader; null when it did well. */
  readonly failure: string | null;
}

export function runInput(all: readonly Target[], seed: number, index: number, now: () => number): Outcome {
  const { target, text } = fuzzInput(all, seed, index);
  let start = now();
  try {
    const messages = target.read(text);
    let ms = now() - start;
    if (ms > slowest) {
      // once more: another program may have had the processor
      start = now();
      target.read(text);
      ms = Math.min(ms, now() - start);
    }
    const mute = messages.some((message) => message.trim().length < 5);
    const failure = mute ? 'refuses without a message' : ms > slowest ? `takes ${Math.round(ms)} ms` : null;
    return { target: target.name, accepted: messages.length === 0, ms, failure };
  } catch (error) {
    const ms = now() - start;
    return {
      target: target.name,
      accepted: false,
      ms,
      failure: error instanceof Error ? (error.stack ?? error.message) : String(error),
    };
  }
}
