import { diagnosticText } from '../../lib/diagnostic/index.js';
import { readFileSync } from 'node:fs';
import { type Design, readDesign } from '../../lib/design/index.js';
import { buildCutFiles, buildJob } from '../../lib/pipeline.js';
import type { Job } from '../../lib/pipeline/types.js';
import { randomNester } from './random-nester.js';
import { byDay } from './seeds.js';

export const fixtureNames = ['press-house', 'table-top', 'hand-cut-inch', 'classroom', 'village-bakery'] as const;
/** With those that are looked at by their parts and lines alone, to keep the tests quick. */
export const allFixtureNames = [...fixtureNames, 'porch', 'cider-yard'] as const;
export type FixtureName = (typeof allFixtureNames)[number];

export function fixtureText(name: FixtureName): string {
  return readFileSync(new URL(`../../fixtures/${name}.yaml`, import.meta.url), 'utf8');
}

/** The design of a fixture, or of any text; throws the first problem. */
export function designOf(text: string): Design {
  const reading = readDesign(text);
  if (reading.kind === 'refused') throw new Error(reading.problems.map(diagnosticText).join('\n'));
  return reading.design;
}

export function fixture(name: FixtureName): Design {
  return designOf(fixtureText(name));
}

const jobs = new Map<FixtureName, Promise<Job>>();

/** Rays of a forecast of which nothing is asked but that it is there. */
export const dayRays = byDay(16_384, undefined);

/**
 * A fixture cut as it stands, by day with a nest of little effort and few rays: once in each process, for all test files that run in
 * it. Nothing may change it.
 */
export function jobOf(name: FixtureName): Promise<Job> {
  const design = fixture(name);
  const { effort } = design.nest;
  const quick = { ...design, nest: { ...design.nest, effort: byDay(0.05, effort) } };
  const made = jobs.get(name) ?? buildJob(quick, new Map(), undefined, dayRays);
  jobs.set(name, made);
  return made;
}

const cut = new Map<FixtureName, Promise<Job>>();

/** What is cut of a fixture, nested at random: no forecast and no book. Nothing may change it. */
export function cutOf(name: FixtureName): Promise<Job> {
  const made = cut.get(name) ?? buildCutFiles(fixture(name), new Map(), randomNester(1));
  cut.set(name, made);
  return made;
}
