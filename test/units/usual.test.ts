import { describe, expect, it } from 'vitest';
import { readDesign } from '../../lib/design/index.js';
import { LengthError, parseUsualSize } from '../../lib/units/index.js';
import { changed } from '../helpers/changed.js';

// 1525 x 1525 mm and 96 x 48 in (2438 x 1219 mm) are sizes that plywood is sold in: common practice, no source
describe('a size without a unit', () => {
  it.each([
    ['1525x1525', 'in', '1525 mm x 1525 mm'],
    ['2440 x 1220', 'in', '2440 mm x 1220 mm'],
    ['96x48', 'mm', '96 in x 48 in'],
    ['8 x 4', 'mm', '8 ft x 4 ft'],
  ] as const)('%s in a file in %s is refused with both readings', (text, unit, other) => {
    const read = () => parseUsualSize(text, unit);
    expect(read).toThrow(LengthError);
    expect(read).toThrow('would be usual');
    expect(read).toThrow(other);
    expect(read).toThrow(`"${text}" without a unit means`);
  });

  it.each([
    ['1525x1525 mm', 'in', 1525],
    ['1525 in x 1525 in', 'in', 1525 * 25.4],
    ['96x48 mm', 'mm', 96],
    ['96x48', 'in', 96 * 25.4],
    ['600x400', 'mm', 600],
    ['1525x1525', 'mm', 1525],
  ] as const)('%s in a file in %s is taken', (text, unit, width) => {
    expect(parseUsualSize(text, unit).width).toBeCloseTo(width, 9);
  });

  it('that no unit makes usual is left to the limits', () => {
    expect(parseUsualSize('0.001x9', 'mm').width).toBe(0.001);
  });
});

describe('a bare length in a design file', () => {
  it.each([
    ['hand-cut-inch', 'aperture: 52', 'aperture: 1320', '1320 mm', 'dish.aperture'],
    ['press-house', 'aperture: 1500', 'aperture: 60', '60 in', 'dish.aperture'],
    ['hand-cut-inch', 'thickness: 15/32', 'thickness: 12', '12 mm', 'materials.ply.thickness'],
    ['hand-cut-inch', 'rollWidth: 24', 'rollWidth: 600', '600 mm', 'stock[3].rollWidth'],
    ['hand-cut-inch', 'focalLength: 20', 'focalLength: 508', '508 mm', 'dish.focalLength'],
    ['hand-cut-inch', 'ply, size: 8 ft x 4 ft', 'ply, size: 2440x1220', '2440 mm x 1220 mm', 'stock[1].size'],
  ] as const)('of %s is refused: %s -> %s', (name, from, to, reading, key) => {
    const { problems } = readDesign(changed(name, from, to));
    const found = problems.find(({ code }) => code === 'wrong-unit');
    expect(found?.message).toContain('would be usual');
    expect(found?.message).toContain(reading);
    expect(found?.message).toContain(key);
    expect(found?.remedy).toContain(reading);
    expect(found?.place?.line).toBeGreaterThan(1);
    // the same with its unit is what the person meant
    const meant = readDesign(changed(name, from, `${to} ${reading.split(' ').at(-1) ?? ''}`));
    expect(meant.problems.filter(({ code }) => code === 'wrong-unit')).toEqual([]);
  });
});
