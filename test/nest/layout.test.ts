import { describe, expect, it } from 'vitest';
import { type Layout, nest, type NestPart, type NestStock } from '../../lib/nest/index.js';
import { faultsOf } from '../helpers/nest-check.js';
import { box, part, ring, sheet, sliver } from '../helpers/nest-parts.js';

function nested(parts: readonly NestPart[], stock: readonly NestStock[], spacing = 0, effort = 0.02): Layout {
  const layout = nest(parts, stock, { spacing, seed: 1, effort });
  expect(faultsOf(parts, stock, spacing, layout)).toEqual([]);
  return layout;
}

const dish: NestPart[] = [
  part('rib', sliver(700, 260), { quantity: 12, rotations: 'any', faces: ['front', 'back'] }),
  part('cleat', box(120, 40), { quantity: 24, rotations: 'any' }),
  part('board', box(900, 900), {
    openings: [[...box(500, 500, 200, 200)].reverse()],
    rotations: 'any',
  }),
  part(
    'panel',
    ring([
      [0, -20],
      [700, -95],
      [700, 95],
      [0, 20],
    ]),
    { quantity: 12, group: 'card', rotations: [0, 180] },
  ),
];
const dishStock = [
  sheet('plywood', 2440, 1220, { margin: 10 }),
  sheet('card', 1500, 1000, { margin: 5, group: 'card' }),
];

describe('a layout', () => {
  it('keeps spacing, margin, rotations and counts, at first and when improved', () => {
    for (const effort of [0, 0.05]) {
      const layout = nested(dish, dishStock, 8, effort);
      expect(layout.unplaced).toEqual([]);
    }
  });

  it('is the same for the same seed and effort', () => {
    const run = (): string => JSON.stringify(nest(dish, dishStock, { spacing: 8, seed: 5, effort: 0.03 }));
    expect(run()).toBe(run());
  });

  it('is valid each time a better one is told of, and ends when asked', () => {
    let reported = 0;
    const last = nest(dish, dishStock, {
      spacing: 8,
      seed: 1,
      effort: Infinity,
      onBetter: (layout) => {
        if (reported++ < 3) expect(faultsOf(dish, dishStock, 8, layout)).toEqual([]);
      },
      stop: () => reported >= 3,
    });
    expect(reported).toBeGreaterThanOrEqual(3);
    expect(faultsOf(dish, dishStock, 8, last)).toEqual([]);
  });

  it('puts parts into the openings of others', () => {
    const frame = part('frame', box(100, 100), { openings: [[...box(60, 60, 20, 20)].reverse()] });
    const layout = nested([frame, part('inner', box(50, 50))], [sheet('s', 100, 100)], 5);
    expect(layout.unplaced).toEqual([]);
    expect(layout.sheets).toHaveLength(1);
  });

  it('leaves an opening alone that is too small by less than the spacing needs', () => {
    const frame = part('frame', box(100, 100), { openings: [[...box(60, 60, 20, 20)].reverse()] });
    const layout = nested([frame, part('inner', box(50.001, 50))], [sheet('s', 100, 100, { count: 1 })], 5);
    expect(layout.unplaced).toMatchObject([{ part: 'inner', copies: 1, reason: 'stock-used-up' }]);
  });

  it('keeps off clamps and knots by the spacing', () => {
    const stock = [sheet('s', 300, 100, { keepOuts: [box(20, 100, 140, 0)] })];
    const layout = nested([part('a', box(130, 100), { quantity: 2 })], stock, 10);
    expect(layout.sheets).toHaveLength(1);
    const tighter = nested([part('a', box(130.01, 100), { quantity: 2 })], stock, 10);
    expect(tighter.unplaced).toMatchObject([{ copies: 2, reason: 'larger-than-stock' }]);
  });

  it('lays parts within an offcut of any outline, margin kept', () => {
    const outline = ring([
      [1000, 50],
      [1600, 50],
      [1600, 250],
      [1300, 250],
      [1300, 550],
      [1000, 550],
    ]);
    const stock = [{ ...sheet('rest', 1, 1, { margin: 10, count: 1 }), shape: { kind: 'offcut', outline } as const }];
    const layout = nested([part('a', box(280, 480)), part('b', box(290, 180))], stock, 10);
    expect(layout.unplaced).toEqual([]);
    const wider = nested([part('a', box(281, 480)), part('b', box(290, 180))], stock, 10);
    expect(wider.unplaced).toHaveLength(1);
  });

  it('pays a roll by the length it takes', () => {
    const shape = { kind: 'roll', height: 500, maxLength: 5000 } as const;
    const stock = [{ ...sheet('mirror', 1, 1, { price: 20, count: 1 }), shape }];
    const layout = nested([part('strip', box(400, 250), { quantity: 4 })], stock);
    expect(layout.sheets[0]!.usedLength).toBeCloseTo(800, 6);
    expect(layout.cost).toBeCloseTo(16, 6);
  });

  it('buys the cheapest stock that holds everything, and no more than there is', () => {
    const parts = [part('a', box(400, 400), { quantity: 5 })];
    const stock = [
      sheet('big', 1200, 800, { price: 40 }),
      sheet('small', 800, 400, { price: 9, count: 2 }),
      sheet('dear', 800, 400, { price: 50 }),
    ];
    const layout = nested(parts, stock);
    expect(layout.cost).toBe(40);
    expect(nested([{ ...parts[0]!, quantity: 4 }], stock).cost).toBe(18);
  });

  it('leaves the largest rectangle on the last sheet and names it', () => {
    const layout = nested([part('a', box(500, 300), { quantity: 4 })], [sheet('s', 2000, 600)]);
    expect(layout.sheets[0]!.usedLength).toBeCloseTo(1000, 6);
    expect(layout.sheets[0]!.offcut).toMatchObject({ y: 0, height: 600 });
    expect(layout.sheets[0]!.offcut!.width).toBeCloseTo(1000, 6);
  });

  it('names what finds no place, with the least sheet that would do', () => {
    const parts = [
      part('long', box(900, 100), { rotations: [0, 90] }),
      part('many', box(300, 300), { quantity: 3 }),
      part('other', box(50, 50), { group: 'glass' }),
    ];
    const layout = nested(parts, [sheet('s', 320, 320, { margin: 5, count: 2 })]);
    expect(layout.unplaced).toEqual([
      { part: 'long', copies: 1, reason: 'larger-than-stock', minSheet: { width: 910, height: 110 } },
      { part: 'many', copies: 1, reason: 'stock-used-up', minSheet: null },
      { part: 'other', copies: 1, reason: 'no-stock-for-group', minSheet: { width: 50, height: 50 } },
    ]);
  });
});

describe('the check of layouts', () => {
  const parts = [part('a', box(100, 100), { quantity: 2 })];
  const stock = [sheet('s', 300, 100)];
  const layout = nest(parts, stock, { spacing: 10, seed: 1, effort: 0 });
  const moved = (dx: number): Layout => ({
    ...layout,
    sheets: layout.sheets.map((s) => ({
      ...s,
      placed: s.placed.map((p, i) => (i === 0 ? { ...p, x: p.x + dx } : p)),
    })),
  });

  it('finds a gap that is too small by two millionths of a millimetre, and parts on one another', () => {
    expect(faultsOf(parts, stock, 10, layout)).toEqual([]);
    expect(faultsOf(parts, stock, 10, moved(2e-6)).join()).toContain('from a-1');
    expect(faultsOf(parts, stock, 10, moved(110)).join()).toContain('from a-1');
  });
});
