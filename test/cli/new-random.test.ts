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

/** Answers as a person would type them, each to the question that begins so. */
function typedAnswers(seed: number): ReadonlyMap<string, string> {
  const random = randomOf(seed);
  const unit = random() < 0.5 ? 'mm' : 'in';
  const aperture = 300 * 10 ** random();
  const length = (mm: number, digits: number) => formatLength(mm, unit, digits);
  return new Map([
    ['Aperture', length(aperture, 2)],
    ['Focal length', length(aperture * (0.26 + 0.94 * random()), 2)],
    ['Cut by', ['router', 'laser', 'hand'][Math.floor(3 * random())]!],
    ['Material and thickness', `${['plywood', 'mdf'][Math.floor(2 * random())]!} ${length(3 + 15 * random(), 3)}`],
    ['Number of ribs', String(8 + Math.floor(41 * random()))],
    ['Size of the sheets', ''],
  ]);
}

describe('random answers', () => {
  it.each(jobSeeds('answers to new', 1, byDay(6, 300)))(
    'of seed %i give a design, or say what would do',
    async (seed) => {
      const typed = typedAnswers(seed);
      const asked = new Set<string>();
      let refused = '';
      const answers = await askQuestions(
        (question) => {
          const [begins, answer] = [...typed].find(([start]) => question.startsWith(start))!;
          const once = asked.size;
          asked.add(begins);
          if (asked.size > once) return Promise.resolve(answer);
          // asked again: what would do is taken, once
          const would = /(\d+) ribs would do/.exec(refused)?.[1];
          if (would === undefined || asked.has('what would do')) throw new Error(`no way out of: ${refused}`);
          asked.add('what would do');
          return Promise.resolve(would);
        },
        (line) => {
          refused = line;
        },
      );
      const prepared = prepare(designOf(designText(answers)));
      const errors = [...prepared.problems, ...stockProblems(prepared)].filter(({ severity }) => severity === 'error');
      expect(errors).toEqual([]);
    },
  );
});
