/**
 * Whatever is answered to `new` within 300 mm to 3 m, f/D 0.25 to 1.2, 3 to 18 mm stock and 8 to 48 ribs, for all three
 * processes and in both units, with and without a vessel and a place: a design that `check` takes, or a refusal that
 * says what would do.
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
  const heats = random() < 0.5;
  return new Map([
    [
      'What to heat',
      heats ? `${(1 + 20 * random()).toFixed(1)} l in ${length(aperture * (0.1 + 0.2 * random()), 1)}` : '',
    ],
    ['Where', random() < 0.5 ? `${(60 - 120 * random()).toFixed(2)} ${(180 - 360 * random()).toFixed(2)}` : ''],
    ['Size of the dish', length(aperture, 2)],
    ['Board for the ribs', `${['plywood', 'mdf'][Math.floor(2 * random())]!} ${length(3 + 15 * random(), 3)}`],
    ['Size and price of a sheet', random() < 0.5 ? '' : unit === 'mm' ? '2500 x 1250 for 40' : '96 x 48 for 40'],
    ['How it is cut', ['router', 'laser', 'hand'][Math.floor(3 * random())]!],
    ['Diameter of the router bit', random() < 0.5 ? '' : length(3 + 5 * random(), 3)],
    ['Drill bits', ''],
    ['Focal length', length(aperture * (0.26 + 0.94 * random()), 2)],
    ['Number of ribs', String(8 + Math.floor(41 * random()))],
    ['Price of a sheet', random() < 0.5 ? '' : (100 * random()).toFixed(2)],
    ['Price per metre', random() < 0.5 ? '' : (100 * random()).toFixed(2)],
  ]);
}

/** A refusal that asks for other answers, in words. */
class Refused extends Error {}

describe('random answers', () => {
  it.each(jobSeeds('answers to new', 1, byDay(6, 300)))(
    'of seed %i give a design, or say what would do',
    async (seed) => {
      const typed = typedAnswers(seed);
      const asked = new Set<string>();
      let refused = '';
      const answering = askQuestions(
        (question) => {
          const [begins, answer] = [...typed].find(([start]) => question.startsWith(start))!;
          const once = asked.size;
          asked.add(begins);
          if (asked.size > once) return Promise.resolve(answer);
          // asked again: what would do is taken, once
          const would = /(\d+) ribs would work/.exec(refused)?.[1];
          if (would === undefined || asked.has('what would do')) throw new Refused(refused);
          asked.add('what would do');
          return Promise.resolve(would);
        },
        (message, remedy) => {
          refused = `  ${message}; ${remedy}`;
        },
      );
      const answers = await answering.catch((error: unknown) => {
        if (!(error instanceof Refused)) throw error;
        // what is wrong; what would do
        expect(error.message).toMatch(/^ {2}\S.{20,}; \S.{8,}$/);
        return null;
      });
      if (answers === null) return;
      const prepared = prepare(designOf(designText(answers)));
      const errors = [...prepared.problems, ...stockProblems(prepared)].filter(({ severity }) => severity === 'error');
      expect(errors).toEqual([]);
    },
  );
});
