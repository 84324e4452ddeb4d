/** Whether a design comes of the answers: the same look that `check` takes at it. */
import { type Diagnostic, prepare, readDesign, stockProblems } from '../../lib/index.js';
import { type Answers, ribRange } from './answers.js';
import { designText } from './design-text.js';

function firstError(text: string): Diagnostic | null {
  const reading = readDesign(text);
  const found = (): readonly Diagnostic[] => {
    if (reading.kind === 'refused') return reading.problems;
    const prepared = prepare(reading.design);
    return [...prepared.problems, ...stockProblems(prepared)];
  };
  return found().find(({ severity }) => severity === 'error') ?? null;
}

/** The designs of one round of questions, each tried once however often it is asked for. */
export class Trials {
  readonly #known = new Map<string, Diagnostic | null>();

  /** The first thing for which `check` would refuse the design, or null when it would not. */
  obstacle(answers: Answers): Diagnostic | null {
    const text = designText(answers);
    const known = this.#known.get(text);
    if (known !== undefined) return known;
    const found = firstError(text);
    this.#known.set(text, found);
    return found;
  }

  /**
   * The greatest number of ribs, of at most `from`, with which there is a design; null when there is none. Fewer ribs
   * leave more room between them, so halving finds it.
   */
  maxRibs(answers: Answers, from: number): number | null {
    const works = (ribs: number): boolean => this.obstacle({ ...answers, ribs }) === null;
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
}
