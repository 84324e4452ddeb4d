/** Random jobs, written and simulated: refused with a named key, or without a finding. */
import { describe, expect, it } from 'vitest';
import { madeAgain, proveFolder } from '../../lib/check/index.js';
import { readDesign } from '../../lib/design/index.js';
import { remadeRecord } from '../../lib/index.js';
import { buildCutFiles } from '../../lib/pipeline.js';
import { randomNester } from '../helpers/random-nester.js';
import { randomRouterDesign, randomRouterJob } from '../helpers/random-router.js';
import { shop } from '../helpers/router-sheets.js';
import { byDay, jobSeeds } from '../helpers/seeds.js';

describe('random sheets for the router', () => {
  it.each(jobSeeds('router-random', 1, byDay(12, 1000)))('sheet %i is proven, or refused', (seed) => {
    const job = shop(randomRouterJob(seed));
    const errors = job.plan.problems.filter(({ severity }) => severity === 'error');
    expect(job.files.size > 0).toBe(errors.length === 0);
    for (const { key, remedy } of errors) expect([key.length > 0, remedy === '']).toEqual([true, false]);
    if (errors.length > 0) return;
    const { findings, worstEdge } = job.simulate();
    expect(findings.map(({ message }) => message)).toEqual([]);
    expect(worstEdge).toBeLessThan(0.05);
  });
});

describe('random designs for the router', () => {
  let made = 0;
  const seeds = jobSeeds('router-designs', 1, byDay(3, 1000));

  it.each(seeds)('design %i is cut and proven, or refused', async (seed) => {
    const reading = readDesign(randomRouterDesign(seed));
    if (reading.kind === 'refused') return;
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
    expect(made).toBeGreaterThan(byDay(0, 300));
  });
});
