import { describe, expect, it } from 'vitest';
import { nest, NestError, type NestPart, type NestStock } from '../../lib/nest/index.js';
import { box, part, ring, sheet } from '../helpers/nest-parts.js';

function codeOf(
  parts: readonly NestPart[],
  stock: readonly NestStock[] = [sheet('s', 1000, 1000)],
  spacing = 0,
): string {
  try {
    nest(parts, stock, { spacing, seed: 1, effort: 0 });
  } catch (error) {
    if (error instanceof NestError) return `${error.code} ${error.id}`;
    throw error;
  }
  return 'none';
}

describe('the nest refuses', () => {
  it.each([
    [
      'an outline without area',
      [
        part(
          'a',
          ring([
            [0, 0],
            [5, 5],
            [9, 9],
          ]),
        ),
      ],
      'zero-area a',
    ],
    [
      'an outline that crosses itself',
      [
        part(
          'a',
          ring([
            [0, 0],
            [10, 10],
            [10, 0],
            [0, 11],
          ]),
        ),
      ],
      'self-crossing a',
    ],
    [
      'a corner that is no number',
      [
        part(
          'a',
          ring([
            [0, 0],
            [10, NaN],
            [10, 10],
          ]),
        ),
      ],
      'not-a-number a',
    ],
    [
      'an endless corner',
      [
        part(
          'a',
          ring([
            [0, 0],
            [Infinity, 0],
            [10, 10],
          ]),
        ),
      ],
      'not-a-number a',
    ],
    ['two parts of one name', [part('a', box(5, 5)), part('a', box(6, 6))], 'duplicate-id a'],
    ['half a part', [part('a', box(5, 5), { quantity: 1.5 })], 'bad-quantity a'],
    ['a part that may lie no way', [part('a', box(5, 5), { rotations: [] })], 'no-rotation a'],
  ])('%s', (_, parts, code) => {
    expect(codeOf(parts)).toBe(code);
  });

  it.each([
    ['a sheet of no size', sheet('s', 0, 100)],
    ['a margin below 0', sheet('s', 10, 10, { margin: -1 })],
    ['a price that is no number', sheet('s', 10, 10, { price: NaN })],
    ['a count below 0', sheet('s', 10, 10, { count: -1 })],
  ])('%s', (_, stock) => {
    expect(codeOf([part('a', box(5, 5))], [stock])).toBe('bad-stock s');
  });

  it('a spacing below 0', () => {
    expect(codeOf([part('a', box(5, 5))], undefined, -1)).toBe('bad-spacing spacing');
  });
});

describe('the nest answers', () => {
  it('without stock, without parts and with margins that leave no room', () => {
    const parts = [part('a', box(5, 5))];
    const nested = (p: NestPart[], stock: NestStock[]) => nest(p, stock, { spacing: 0, seed: 1, effort: 0.01 });
    expect(nested(parts, []).unplaced).toMatchObject([{ reason: 'no-stock-for-group' }]);
    expect(nested([], [sheet('s', 10, 10)])).toEqual({ sheets: [], unplaced: [], cost: 0 });
    expect(nested(parts, [sheet('s', 10, 10, { margin: 6 })]).unplaced).toMatchObject([
      { reason: 'larger-than-stock' },
    ]);
    expect(nested(parts, [sheet('s', 10, 10, { count: 0 })]).unplaced).toMatchObject([{ reason: 'stock-used-up' }]);
  });
});
