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

/** How far from the number wanted others are tried. */
const ribSteps = [0, 1, 2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 64, 96, 128, 192];

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

  /** A number of ribs with which there is a design, near to the one wanted; null when none is found. */
  ribsNear(answers: Answers, wanted: number): number | null {
    const works = (ribs: number): boolean => this.obstacle({ ...answers, ribs }) === null;
    const near = ribSteps
      .flatMap((step) => [wanted - step, wanted + step])
      .filter((ribs) => ribs >= ribRange.min && ribs <= ribRange.max);
    const found = near.find(works);
    if (found === undefined) return null;
    // between the steps there may be a nearer one
    let [good, bad] = [found, wanted];
    while (Math.abs(bad - good) > 1) {
      const middle = Math.trunc((good + bad) / 2);
      if (works(middle)) good = middle;
      else bad = middle;
    }
    return good;
  }
}
