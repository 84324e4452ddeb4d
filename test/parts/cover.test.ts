/** The cover: cloth enough for its disc, and a disc that reaches behind the rim. */
import { describe, expect, it } from 'vitest';
import { prepare } from '../../lib/pipeline.js';
import { clothLengths, coverOf } from '../../lib/parts/cover.js';
import { designOf, fixture, type FixtureName, fixtureNames, fixtureText } from '../helpers/fixtures.js';

describe('lengths of cloth', () => {
  it.each([
    [400, 1470],
    [735, 1470],
    [900, 1470],
    [1300, 1470],
    [2300, 1470],
  ])('make a disc of radius %d mm from widths of %d mm: no place of it is bare', (radius, width) => {
    const lengths = clothLengths(radius, width);
    for (let i = 0; i < 5000; i++) {
      // points of a spiral, over the whole disc and on its edge
      const [r, angle] = [radius * Math.sqrt(i / 4999), 2.399963 * i];
      const [x, y] = [r * Math.cos(angle), r * Math.sin(angle)];
      const strip = Math.min(lengths.length - 1, Math.floor((x + radius) / width));
      expect(Math.abs(y)).toBeLessThanOrEqual(lengths[strip]! / 2 + 1e-6);
    }
    // and none is longer than its chord: the area left over is that outside of the disc
    for (const length of lengths) expect(length).toBeLessThanOrEqual(2 * radius + 1e-9);
  });

  it('are 1.8 m and 1.39 m for a disc of 1.8 m: the second begins at a chord 570 mm off the middle', () => {
    expect(clothLengths(900, 1470)).toEqual([1800, expect.closeTo(2 * Math.sqrt(900 ** 2 - 570 ** 2), 9)]);
  });
});

describe('the cover of a dish', () => {
  const of = (name: FixtureName) => {
    const { design, dish, parts } = prepare(fixture(name));
    return { cover: coverOf({ design, dish, parts }), design, dish };
  };

  it.each(fixtureNames)('%s: holds behind the rim with its hem', (name) => {
    const { cover, design, dish } = of(name);
    expect(cover.rim).toBeGreaterThanOrEqual(dish.apertureRadius);
    expect(cover.radius - cover.hem - cover.rim).toBeGreaterThanOrEqual(design.rib.rimHeight + 50);
    expect(cover.cord).toBeGreaterThan(2 * Math.PI * cover.rim + 500);
  });

  it('is slit where the focus lies inside the rim: 1.5 m across, 469 mm deep with a focal length of 300 mm', () => {
    const text = fixtureText('press-house').replace(/focalLength: \d+/, 'focalLength: 300');
    const { design, dish, parts } = prepare(designOf(text));
    expect(dish.depth).toBeCloseTo(750 ** 2 / 1200, 9);
    expect(coverOf({ design, dish, parts }).slit).toBe(true);
    expect(of('press-house').cover.slit).toBe(false);
  });
});
