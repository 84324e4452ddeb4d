import { describe, expect, it } from 'vitest';
import { billsOf, type Layout, nest } from '../../lib/nest/index.js';
import { randomFrom } from '../../lib/geometry/index.js';
import { faultsOf } from '../helpers/nest-check.js';
import { box, part, sheet } from '../helpers/nest-parts.js';
import { byDay, seedFrom } from '../helpers/seeds.js';
import { minCost, type WholeBox, type WholeSheet } from './bill-brute.js';

interface Problem {
  readonly boxes: readonly WholeBox[];
  readonly stock: readonly WholeSheet[];
  readonly turn: boolean;
}

/** A few boxes, and three kinds of sheet of which there are a few each. */
function problemOf(seed: number): Problem {
  const random = randomFrom(seed * 7919 + 3);
  const from = (min: number, max: number): number => min + random.integer(max - min + 1);
  const boxes = Array.from({ length: from(3, 7) }, () => ({ width: from(1, 5), height: from(1, 4) }));
  const stock = Array.from({ length: 3 }, () => ({
    width: from(4, 9),
    height: from(3, 6),
    price: from(20, 100),
    count: from(1, 4),
  }));
  return { boxes, stock, turn: random.real() < 0.5 };
}

describe('the bill', () => {
  it('is the least that any choice of sheets comes to, by trying them all', () => {
    const dear: string[] = [];
    let solvable = 0;
    const first = seedFrom(1);
    for (let seed = first; seed < first + byDay(5, 400); seed++) {
      const { boxes, stock, turn } = problemOf(seed);
      const min = minCost(boxes, stock, turn);
      if (min === null) continue;
      solvable++;
      const parts = boxes.map(({ width, height }, i) =>
        part(`p${i}`, box(100 * width, 100 * height), { rotations: turn ? [0, 90] : [0] }),
      );
      const sheets = stock.map(({ width, height, price, count }, i) =>
        sheet(`s${i}`, 100 * width, 100 * height, { price, count }),
      );
      const layout = nest(parts, sheets, { spacing: 0, seed: 1, effort: 0.05 });
      expect(faultsOf(parts, sheets, 0, layout), `seed ${seed}`).toEqual([]);
      if (layout.unplaced.length > 0 || Math.abs(layout.cost - min) > 1e-6)
        dear.push(`seed ${seed}: ${layout.cost} for ${min}, ${layout.unplaced.length} left over`);
    }
    expect(dear).toEqual([]);
    expect(solvable).toBeGreaterThan(byDay(3, 300));
  });

  it('leaves no part on a sheet that is too low for it', () => {
    // cheap sheets tempt: all parts have room on them by area, and two stick out above
    const parts = [
      part('a', box(500, 100), { rotations: [0, 90] }),
      part('b', box(400, 400), { quantity: 2, rotations: [0, 90] }),
      part('c', box(500, 300), { rotations: [0, 90] }),
    ];
    const stock = [
      sheet('low', 700, 400, { price: 35, count: 1 }),
      sheet('lower', 700, 300, { price: 70, count: 2 }),
      sheet('square', 500, 500, { price: 53, count: 3 }),
    ];
    const layout = nest(parts, stock, { spacing: 0, seed: 1, effort: 0.05 });
    expect(faultsOf(parts, stock, 0, layout)).toEqual([]);
    expect(layout.cost).toBe(141);
  });

  it('is said to be the least only where nothing cheaper has the area', () => {
    const parts = [part('a', box(400, 400), { quantity: 5 })];
    const stock = [sheet('big', 1200, 800, { price: 40 }), sheet('small', 800, 400, { price: 12, count: 2 })];
    const laid = (ids: readonly string[]): Layout => ({
      sheets: ids.map((id) => ({ stock: id, width: 1200, height: 800, placed: [], usedLength: 0, offcut: null })),
      unplaced: [],
      cost: 0,
    });
    // five squares of 0.16 m² on 0.96 m²; the two small ones hold four
    expect(billsOf(parts, stock, 0, laid(['big']))).toMatchObject([
      { group: 'ply', cost: 40, sheets: 1, proven: true, cheaper: null },
    ]);
    const [two] = billsOf(parts, stock, 0, laid(['big', 'small']));
    expect(two).toMatchObject({ cost: 52, proven: false, cheaper: { stock: [{ id: 'big', count: 1 }], price: 40 } });
    expect(two?.cheaper?.filled).toBeCloseTo(5 / 6, 9);
    const fewer = [sheet('big', 1200, 800, { price: 40, count: 0 }), sheet('small', 800, 400, { price: 12 })];
    expect(billsOf(parts, fewer, 0, laid(['small', 'small', 'small']))[0]?.proven).toBe(true);
  });
});
