/**
 * Whatever is answered to `new` within 300 mm to 3 m, f/D 0.25 to 1.2, 3 to 18 mm stock and 8 to 48 ribs, for all three
 * processes and in both units: a design that `check` takes, or one clear refusal in the question itself.
 */
import { describe, expect, it } from 'vitest';
import { designText } from '../../cli/new/design-text.js';
import { askQuestions } from '../../cli/new/questions.js';
import { formatLength, prepare, stockProblems } from '../../lib/index.js';
import { designOf } from '../helpers/fixtures.js';
import { randomOf } from '../helpers/random-nester.js';
import { byDay, jobSeeds } from '../helpers/seeds.js';

/** Answers in the order of the questions, as a person would type them. */
function typedAnswers(seed: number): string[] {
  const random = randomOf(seed);
  const unit = random() < 0.5 ? 'mm' : 'in';
  const aperture = 300 * 10 ** random();
  const length = (mm: number, digits: number) => formatLength(mm, unit, digits);
  return [
    length(aperture, 2),
    length(aperture * (0.26 + 0.94 * random()), 2),
    ['router', 'laser', 'hand'][Math.floor(3 * random())]!,
    `${['plywood', 'mdf'][Math.floor(2 * random())]!} ${length(3 + 15 * random(), 3)}`,
    String(8 + Math.floor(41 * random())),
  ];
}

describe('random answers', () => {
  it.each(jobSeeds('answers to new', 1, byDay(6, 300)))(
    'of seed %i give a design, or say what would do',
    async (seed) => {
      const lines = typedAnswers(seed);
      const refusals: string[] = [];
      const answers = await askQuestions(
        (question) => {
          const refused = refusals.at(-1);
          const would = /(\d+) ribs would do/.exec(refused ?? '')?.[1];
          if (question.startsWith('Number of ribs') && lines.length === 0) {
            // whoever is told nothing that would do is asked for ever
            if (would === undefined) throw new Error(`refused without a way out: ${refused ?? ''}`);
            return Promise.resolve(would);
          }
          return Promise.resolve(lines.shift() ?? '');
        },
        (line) => refusals.push(line),
      );
      expect(refusals.length, refusals.join('\n')).toBeLessThanOrEqual(1);
      const prepared = prepare(designOf(designText(answers)));
      const errors = [...prepared.problems, ...stockProblems(prepared)].filter(({ severity }) => severity === 'error');
      expect(errors).toEqual([]);
    },
  );
});
