import { describe, expect, it } from 'vitest';
import { bounds, boundsOfAll, hasStrokes, pathLength, strokeText, strokeTextWidth } from '../../lib/geometry/index.js';

const letters = `ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789.,-/()x°ø"':+=#`;
const origin = { x: 0, y: 0 };
const each = Array.from(letters);

describe('the single-line font', () => {
  it.each(each)('draws %s within its width, from descender to bracket', (letter) => {
    expect(hasStrokes(letter)).toBe(true);
    const strokes = strokeText(letter, origin, 6, 0);
    for (const stroke of strokes) {
      expect(stroke.length).toBeGreaterThan(1);
      expect(pathLength(stroke)).toBeGreaterThan(0.4);
    }
    const box = boundsOfAll(strokes.map(bounds));
    expect(box.minX).toBeGreaterThan(-0.01);
    expect(box.maxX).toBeLessThan(strokeTextWidth(letter, 6) + 0.3);
    expect(box.minY).toBeGreaterThanOrEqual(-2.01);
    expect(box.maxY).toBeLessThanOrEqual(7.01);
  });

  it('draws no two letters alike', () => {
    const drawn = each.map((letter) => JSON.stringify(strokeText(letter, origin, 6, 0)));
    expect(new Set(drawn).size).toBe(new Set(each).size);
  });

  it('has capitals and digits of the height asked for', () => {
    for (const letter of 'ABCDEFGHIJKLMNOPRSTUVWXYZ0123456789') {
      const box = boundsOfAll(strokeText(letter, origin, 10, 0).map(bounds));
      expect(box.minY).toBeCloseTo(0, 9);
      expect(box.maxY).toBeCloseTo(10, 9);
    }
  });

  it('spaces a line by its widths, so that it can be set flush right', () => {
    const width = strokeTextWidth('RIB 12', 10);
    expect(width).toBeCloseTo(strokeTextWidth('RIB', 10) + strokeTextWidth('12', 10) + ((2 * 1.75 + 2.5) * 10) / 6, 9);
    const box = boundsOfAll(strokeText('H12H', origin, 10, 0).map(bounds));
    expect(box.maxX - box.minX).toBeCloseTo(strokeTextWidth('H12H', 10), 9);
    expect(strokeTextWidth('', 10)).toBe(0);
    expect(strokeText('', origin, 10, 0)).toEqual([]);
  });

  it('turns and moves text as a whole', () => {
    const at = { x: 100, y: 50 };
    const angle = 0.7;
    const turned = strokeText('Rib 3', at, 12, angle);
    strokeText('Rib 3', origin, 12, 0).forEach((stroke, i) =>
      stroke.forEach(({ x, y, bulge }, k) => {
        const got = turned[i]![k]!;
        expect(got.x).toBeCloseTo(100 + x * Math.cos(angle) - y * Math.sin(angle), 9);
        expect(got.y).toBeCloseTo(50 + x * Math.sin(angle) + y * Math.cos(angle), 9);
        expect(got.bulge).toBe(bulge);
      }),
    );
  });

  it('drops an accent it lacks, and shows a box for what it lacks altogether', () => {
    expect(strokeText('é', origin, 10, 0)).toEqual(strokeText('e', origin, 10, 0));
    expect(hasStrokes('é')).toBe(false);
    const box = strokeText('語', origin, 10, 0);
    expect(box).toHaveLength(1);
    expect(box[0]).toHaveLength(5);
    expect(strokeText('\u0000', origin, 10, 0)).toEqual(box);
    expect(strokeText('\ud800', origin, 10, 0)).toEqual(box);
  });

  it.each([0, -1, NaN])('refuses a height of %d', (height) => {
    expect(() => strokeText('A', origin, height, 0)).toThrow(/above 0/);
  });
});
