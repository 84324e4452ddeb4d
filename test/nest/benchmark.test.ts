import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { areaOf, type StripInstance, placementsOf, requestOf, stripFaults } from '../../cli/bench/nest-instance.js';
import { nest } from '../../lib/nest/index.js';
import { byDay } from '../helpers/seeds.js';

/** Instances of the ESICUP Cutting and Packing Datasets; sources in each file. */
function instance(name: string): StripInstance {
  const file = fileURLToPath(new URL(`../../fixtures/nesting/${name}.json`, import.meta.url));
  return JSON.parse(readFileSync(file, 'utf8')) as StripInstance;
}

function densityOf(name: string, effort: number): number {
  const strip = instance(name);
  const { parts, stock } = requestOf(strip);
  const layout = nest(parts, stock, { spacing: 0, seed: 1, effort });
  const length = layout.sheets.reduce((sum, { usedLength }) => sum + usedLength, 0);
  expect(stripFaults(strip, placementsOf(layout), length)).toEqual([]);
  return (100 * areaOf(strip)) / (length * strip.stripWidth);
}

describe('published instances', () => {
  // after a hundredth of the time of the published tables: within five points of Imamichi, Yagiura and Nagamochi 2009
  it.each([
    ['albano', 88.16],
    ['fu', 90.67],
    ['marques', 89.03],
  ])('%s is packed without overlap, within five points of the published density', (name, published) => {
    expect(densityOf(name, byDay(0.1, 0.4))).toBeGreaterThan(published - 5);
  });

  it.each(['blaz', 'dighe1', 'jakobs1', 'mao', 'shapes0', 'shapes1'])('%s is packed without overlap', (name) => {
    expect(densityOf(name, byDay(0.015, 0.1))).toBeGreaterThan(densityOf(name, 0));
  });
});
