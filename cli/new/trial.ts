/** Whether a design comes of the answers: the same look that `check` takes at it. */
import { type Diagnostic, prepare, readDesign, stockProblems } from '../../lib/index.js';
import { type Answers, ribRange } from './answers.js';
import { designText } from './design-text.js';

/** The first thing for which `check` would refuse the design, or null when it would not. */
export function obstacle(answers: Answers): Diagnostic | null {
  const reading = readDesign(designText(answers));
  const found = (): readonly Diagnostic[] => {
    if (reading.kind === 'refused') return reading.problems;
    const prepared = prepare(reading.design);
    return [...prepared.problems, ...stockProblems(prepared)];
  };
  return found().find(({ severity }) => severity === 'error') ?? null;
}

/**
 * The greatest number of ribs, of at most `from`, with which there is a design; null when there is none. Fewer ribs
 * leave more room between them, so halving finds it.
 */
export function maxRibs(answers: Answers, from: number): number | null {
  const works = (ribs: number): boolean => obstacle({ ...answers, ribs }) === null;
  if (works(from)) return from;
  let [good, bad] = [ribRange.min, from];
  if (!works(good)) return null;
  while (bad - good > 1) {
    const middle = Math.floor((good + bad) / 2);
    if (works(middle)) good = middle;
    else bad = middle;
  }
  return good;
}
