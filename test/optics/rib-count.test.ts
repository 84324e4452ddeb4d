import { describe, expect, it } from 'vitest';
import { minRibs } from '../../lib/optics/index.js';

describe('ribs that a vessel asks for', () => {
  it.each([
    // half a side of a regular polygon over its radius (any table of polygons): hexagon 1/2, octagon √(2 − √2)/2,
    // decagon (√5 − 1)/4, dodecagon (√6 − √2)/4; the vessel a hair wider and a hair narrower than that
    [6, 0.5],
    [8, Math.sqrt(2 - Math.SQRT2) / 2],
    [10, (Math.sqrt(5) - 1) / 4],
    [12, (Math.sqrt(6) - Math.SQRT2) / 4],
  ])('are as many as a polygon has whose half side is the vessel’s radius: %d', (ribs, share) => {
    expect(minRibs(1000 * share * (1 + 1e-9), 1000)).toBe(ribs);
    expect(minRibs(1000 * share * (1 - 1e-9), 1000)).toBe(ribs + 1);
  });

  it('are no more where the panels are just as wide as the vessel', () => {
    // half the side of a regular polygon in a circle: R·sin(π/N)
    for (let n = 3; n <= 240; n++) {
      expect(minRibs(750 * Math.sin(Math.PI / n), 750)).toBe(n);
      expect(minRibs(750 * Math.sin(Math.PI / n) * 0.9999, 750)).toBe(n + 1);
    }
  });

  it('are three at least, and three for a vessel as wide as the dish', () => {
    expect(minRibs(900, 1000)).toBe(3);
    expect(minRibs(1000, 1000)).toBe(3);
    expect(minRibs(2000, 1000)).toBe(3);
  });
});
