/** Random laser machines: cut and proven, or refused with the key. */
import { describe, expect, it } from 'vitest';
import { madeAgain, proveFolder } from '../../lib/check/index.js';
import { readDesign } from '../../lib/design/index.js';
import { remadeRecord } from '../../lib/index.js';
import { buildCutFiles } from '../../lib/pipeline.js';
import { smallDish } from '../faults/small-dish.js';
import { randomNester, randomOf } from '../helpers/random-nester.js';
import { byDay, jobSeeds } from '../helpers/seeds.js';

/** A small dish for a laser of any kind. */
function randomLaserDesign(seed: number): string {
  const next = randomOf(seed);
  const between = (low: number, high: number): number => Math.round(1000 * (low + next() * (high - low))) / 1000;
  const whole = (low: number, high: number): number => Math.round(between(low, high));
  const chance = (share: number): boolean => next() < share;
  const pick = <T>(...some: readonly T[]): T => some[Math.floor(next() * some.length)]!;
  const programUnits = pick('mm', 'mm', 'in');
  const material = () => ({
    ...(chance(0.8) ? { kerf: between(0.01, 0.6) } : {}),
    ...(chance(0.95)
      ? {
          cutSpeed: whole(50, 5000),
          markSpeed: whole(500, 30_000),
          cutPower: between(1, 100),
          markPower: between(0.1, 40),
        }
      : {}),
  });
  const machine = {
    kind: 'laser',
    ...(chance(0.3) ? { area: `${whole(850, 1600)} x ${whole(590, 1200)}` } : {}),
    programUnits,
    ...(chance(0.5) ? { decimals: programUnits === 'in' ? pick(5, 6) : pick(4, 5, 6) } : {}),
    arcs: pick('arcs', 'arcs', 'lines'),
    lineTolerance: pick(0.002, 0.01, 0.015),
    lineNumbers: pick(0, 0, 1, 10, 1000),
    commentLength: pick(48, 60, 96, 250),
    commentCharacters: pick('ascii', 'capitals'),
    pathMode: pick('exact', 'exact-stop', 'continuous'),
    pathTolerance: pick(0.005, 0.02, 0.05),
    coolant: pick('off', 'mist', 'flood'),
    ...(chance(0.3) ? { parking: [whole(0, 500), whole(0, 500)] } : {}),
    end: pick('M2', 'M30'),
    ...(chance(0.7) ? { travelSpeed: whole(500, 60_000) } : {}),
    ...(chance(0.7) ? { acceleration: whole(50, 10_000) } : {}),
    order: [
      ...pick(['drill', 'scribe', 'opening'], ['scribe', 'opening', 'drill'], ['opening', 'drill', 'scribe']),
      'outline',
    ],
    toolPaths: chance(0.85),
    beam: pick('M3', 'M4'),
    ...(chance(0.95) ? { fullPower: pick(1, 100, 255, 1000, 24_000) } : {}),
    materials: { ply: material(), card: material() },
  };
  const process = { kind: 'laser', kerf: between(0.05, 0.4), web: between(0, 6), margin: between(2, 10) };
  return smallDish(`Laser ${seed}`, `machine: ${JSON.stringify(machine)}`)
    .replace('process: { kind: hand }', `process: ${JSON.stringify(process)}`)
    .replace('process: hand', `process: ${pick('laser', 'hand')}`)
    .replace('ribs: 8', `ribs: ${6 + Math.floor(next() * 5)}`);
}

describe('random designs for a laser', () => {
  let made = 0;

  it.each(jobSeeds('laser-designs', 1, byDay(3, 300)))('design %i is cut and proven, or refused', async (seed) => {
    const reading = readDesign(randomLaserDesign(seed));
    if (reading.kind === 'refused') throw new Error(reading.problems.map(({ message }) => message).join());
    const job = await buildCutFiles(reading.design, new Map(), randomNester(seed));
    const errors = job.problems.filter(({ severity }) => severity === 'error');
    for (const { place, remedy = '' } of errors)
      expect([(place?.path ?? []).length > 0, /report this/.test(remedy)]).toEqual([true, false]);
    if (errors.length > 0) return;
    made += 1;
    const { faults } = proveFolder(job.files, undefined, madeAgain(job.files, remadeRecord));
    expect(faults.map(({ message }) => message)).toEqual([]);
  });

  it('are cut often enough to say something', () => {
    expect(made).toBeGreaterThan(byDay(0, 100));
  });
});
