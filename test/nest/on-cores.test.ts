import { describe, expect, it } from 'vitest';
import { nestOnCores, type NestProgress } from '../../cli/nest/on-cores.js';
import { faultsOf } from '../helpers/nest-check.js';
import { box, part, sheet, sliver } from '../helpers/nest-parts.js';

const parts = [
  part('rib', sliver(700, 260), { quantity: 10, rotations: 'any', faces: ['front', 'back'] }),
  part('cleat', box(120, 40), { quantity: 10, rotations: 'any' }),
];
const stock = [sheet('plywood', 1500, 1000, { margin: 10 })];

describe('the nest on all cores', () => {
  it('gives the same layout for a fixed effort, whatever the cores', async () => {
    const run = (cores: number) => nestOnCores(parts, stock, { spacing: 6, seed: 3, effort: 0.01, cores });
    const [one, two] = [await run(1), await run(2)];
    expect(one).toEqual(two);
    expect(faultsOf(parts, stock, 6, one)).toEqual([]);
  });

  it('ends when its time is up, with a valid nest', async () => {
    // without the limit this effort would go on for hours
    const layout = await nestOnCores(parts, stock, { spacing: 6, seed: 3, effort: 1e6, seconds: 0.2, cores: 1 });
    expect(faultsOf(parts, stock, 6, layout)).toEqual([]);
  });

  it('gives a valid nest in no time at all', async () => {
    const layout = await nestOnCores(parts, stock, { spacing: 6, seed: 3, effort: 1, seconds: 0 });
    expect(layout.unplaced).toEqual([]);
    expect(faultsOf(parts, stock, 6, layout)).toEqual([]);
  });

  it('keeps the best so far when it is ended early, and tells how it stands', async () => {
    const reported: NestProgress[] = [];
    const layout = await nestOnCores(parts, stock, {
      spacing: 6,
      seed: 3,
      effort: 1000,
      signal: AbortSignal.abort(),
      onProgress: (progress) => reported.push(progress),
    });
    expect(faultsOf(parts, stock, 6, layout)).toEqual([]);
    expect(reported.length).toBeGreaterThan(0);
    expect(reported[0]!.layout.sheets.length).toBeGreaterThan(0);
  });

  it('names bad input before any work', async () => {
    const twice = [...parts, ...parts];
    await expect(nestOnCores(twice, stock, { spacing: 6, seed: 3, effort: 1 })).rejects.toThrow(
      'part rib occurs twice',
    );
  });
});
