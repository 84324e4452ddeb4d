import { beforeAll, describe, expect, it } from 'vitest';
import { verify } from '../../lib/check/index.js';
import { filesOf, makeRandom, type OneSheet, singleSheets } from '../helpers/jobs.js';
import { randomOf } from '../helpers/random-nester.js';
import { byDay, seedFrom } from '../helpers/seeds.js';
import { plants } from './plant.js';

/** Jobs by how much time there is; the long run is `npm run proof`. */
const jobs = byDay(3, 200);
const firstSeed = seedFrom(1000);
/** Times that each fault is planted. */
const times = byDay(3, 200);
/** What is asked of every cut by the numbers of the project, mm. */
const greatestError = 0.02;

/** Good jobs are kept as single sheets, which are quick to prove again. */
const sheets: OneSheet[] = [];

describe(`random jobs, seeds from ${firstSeed}`, () => {
  const alarms: string[] = [];
  let made = 0;
  let worst = 0;

  beforeAll(async () => {
    for (let seed = firstSeed; made < jobs; seed += 1) {
      const job = await makeRandom(seed);
      if (job.kind === 'refused') {
        expect(
          job.messages.every((message) => message.length > 10),
          `seed ${seed}`,
        ).toBe(true);
        continue;
      }
      made += 1;
      const proof = verify(job.files);
      alarms.push(...proof.faults.map(({ message }) => `seed ${seed}: ${message}`));
      for (const { worstInward, worstOutward } of proof.sheets)
        worst = Math.max(worst, worstInward?.mm ?? 0, worstOutward?.mm ?? 0);
      const fresh = singleSheets(job.files);
      // a sheet of each kind is enough; a few hundred of them would only fill the memory
      sheets.push(
        ...byDay(
          fresh,
          fresh.filter((_, i) => i % 4 === seed % 4),
        ),
      );
    }
  });

  it('raise no alarm', () => {
    expect(alarms).toEqual([]);
  });

  it(`are cut within ${greatestError} mm`, () => {
    console.info(`${made} jobs, greatest cut error ${worst.toFixed(6)} mm`);
    expect(worst).toBeLessThanOrEqual(greatestError);
    expect(worst).toBeGreaterThan(0);
  });

  it('prove right when written plainly, one sheet at a time', () => {
    const wrong = sheets.slice(0, 12).flatMap((sheet) => verify(filesOf(sheet)).faults.map(({ message }) => message));
    expect(wrong).toEqual([]);
  });
});

describe('planted faults', () => {
  it.each(Object.entries(plants))('%s is found', (name, plant) => {
    const random = randomOf(Array.from(name).reduce((sum, letter) => sum * 31 + letter.charCodeAt(0), 7) % 2 ** 31);
    const missed: string[] = [];
    let planted = 0;
    for (let tries = 0; planted < times && tries < 20 * times; tries += 1) {
      const at = Math.floor(random() * sheets.length);
      const mutated = plant(sheets[at]!, random);
      if (!mutated) continue;
      planted += 1;
      if (verify(mutated.files).ok) missed.push(`sheet ${at}: ${mutated.what}`);
    }
    expect(missed).toEqual([]);
    expect(planted).toBe(times);
  });
});
