import { describe, expect, it } from 'vitest';
import { runInput } from '../../cli/fuzz/run.js';
import { targets } from '../../cli/fuzz/targets.js';
import { seedFrom } from '../helpers/seeds.js';

// the long run is `npm run fuzz`, which also tells how long each takes
const count = 500;
const seed = seedFrom(20);
const noClock = (): number => 0;

describe('readers of files', () => {
  const all = targets();

  it.each(all)('take the good $name', ({ read, text }) => {
    expect(read(text)).toEqual([]);
  });

  it(`refuse ${count} mutated files of seed ${seed} with a message`, () => {
    const outcomes = Array.from({ length: count }, (_, index) => runInput(all, seed, index, noClock));
    const failures = outcomes.flatMap(({ failure, target }, index) =>
      failure === null ? [] : [`${index} ${target}: ${failure}`],
    );
    expect(failures).toEqual([]);
    // most are refused, some pass: else the inputs would be too wild or too tame to say anything
    const accepted = outcomes.filter((outcome) => outcome.accepted).length;
    expect(accepted).toBeGreaterThan(count * 0.05);
    expect(accepted).toBeLessThan(count * 0.8);
  });

  it('end a nest of aliases and a deep nest with a message', () => {
    const design = all.find(({ name }) => name === 'design')!;
    const aliases = Array.from(
      { length: 40 },
      (_, i) => `a${i}: &a${i} [${i === 0 ? 'x' : `*a${i - 1}, *a${i - 1}`}]`,
    ).join('\n');
    for (const text of [
      aliases,
      '['.repeat(500_000),
      '{a: '.repeat(200_000),
      '- '.repeat(400_000),
      `name: ${'x'.repeat(2_000_000)}`,
    ])
      expect(design.read(text).length).toBeGreaterThan(0);
  });
});
