/** The comparison of sheet sizes: what it says of prices, its columns, and each warning once. */
import { afterAll, describe, expect, it } from 'vitest';
import { smallDish } from '../faults/small-dish.js';
import { inProcess, workshop } from '../helpers/command.js';

const text = smallDish('Small');
const place = workshop({
  'unpriced.yaml': text,
  'half.yaml': text.replace('{ material: ply, size: 900 x 600 }', '{ material: ply, size: 900 x 600, price: 11 }'),
  // a hole that does not suit its screw is worth knowing, and no more
  'warned.yaml': text,
});
afterAll(() => place.clear());
const stock = (...args: string[]) => inProcess(place.folder, ['stock', ...args, '--seconds', '0']);

describe('stock', () => {
  it('says that prices are missing, and names no cost of 0.00', async () => {
    const { out, err } = await stock('unpriced.yaml', '--try', '1200x800');
    expect(out).toContain('no prices');
    expect(out).not.toContain('0.00');
    expect(err).toContain('The stock has no prices');
  });

  it('names the materials without a price', async () => {
    const { err } = await stock('half.yaml');
    expect(err).toContain('The cost leaves out what has no price in stock: card');
  });

  it('says what its columns mean', async () => {
    const { out, err } = await stock('half.yaml');
    const [heads = ''] = out.split('\n');
    for (const column of ['sheets', 'bought', 'waste', 'largest piece left']) {
      expect(heads).toContain(column);
      expect(err).toContain(`${column}: `);
    }
  });

  it('gives each warning once, however many sizes it tries', async () => {
    const { err } = await stock('warned.yaml', '--try', '1200x800', '--try', '1000x700');
    const warnings = err.split('\n').filter((line) => line.includes(': warning: '));
    expect(warnings.length).toBeGreaterThan(0);
    expect(new Set(warnings).size).toBe(warnings.length);
  });

  it('gives one JSON document with its problems, also where no size takes every part', async () => {
    const ran = await stock('unpriced.yaml', '--sheet', '300x130', '--try', '310x130', '--json');
    expect(ran.code).toBe(1);
    const result = JSON.parse(ran.out) as { problems: { code: string }[] };
    expect(result.problems.map(({ code }) => code)).toContain('no-size-fits');
  });
});
