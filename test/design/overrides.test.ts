/** Sheets of another size: what they cost, and what stays. */
import { describe, expect, it } from 'vitest';
import { withSheetSize } from '../../lib/design/index.js';
import { changed } from '../helpers/changed.js';
import { designOf, fixture } from '../helpers/fixtures.js';

describe('sheets of another size', () => {
  // a square metre costs the same whatever the sheet: half a sheet at half the price
  it.each([
    [1220, 1220, 54 / 2],
    [2440, 610, 54 / 2],
    [1220, 610, 54 / 4],
    [2440, 1220, 54],
    [4880, 1220, 54 * 2],
  ])('of %i x %i mm cost by their area', (width, height, price) => {
    const birch = withSheetSize(fixture('press-house'), { width, height }).stock.find(
      ({ material }) => material === 'birch12',
    )!;
    expect(birch.size).toEqual({ width, height });
    expect(birch.price).toBeCloseTo(price, 9);
  });

  it('take the place of sheets alone: rolls keep their width and price, and clamps of the old size go', () => {
    const text = changed(
      'press-house',
      'size: 2440 x 1220, price: 54',
      'size: 2440 x 1220, price: 54, keepOuts: [[[0, 0], [50, 0], [0, 50]]]',
    );
    const design = designOf(text);
    expect(design.stock.find(({ material }) => material === 'birch12')!.keepOuts).toHaveLength(1);
    const other = withSheetSize(design, { width: 1500, height: 1500 });
    expect(other.stock.find(({ material }) => material === 'birch12')!.keepOuts).toEqual([]);
    const roll = other.stock.find(({ material }) => material === 'aluminium')!;
    expect([roll.rollWidth, roll.price, roll.size]).toEqual([600, 9, undefined]);
  });
});
