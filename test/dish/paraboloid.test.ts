import { publishedOffsets } from '../helpers/published-dish.js';
import { Bezier } from 'bezier-js';
import * as polyclip from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import { clearRadius, cornerRadius, flatLength, paraboloid, parallelLength, rimAngle } from '../../lib/dish/index.js';
import { romberg } from './shapes.js';

/** A parabola arc is a quadratic Bezier: from the vertex to (R, R²/4f), its middle control point at (R/2, 0). */
function asBezier(R: number, f: number): Bezier {
  return new Bezier(0, 0, R / 2, 0, R, (R * R) / (4 * f));
}

const shapes = [
  [750, 550],
  [320, 220],
  [660.4, 508],
  [2000, 1000],
] as const;

describe('profile', () => {
  it.each(shapes)('passes through the points of a quadratic Bezier (bezier-js), R %d f %d', (R, f) => {
    const curve = asBezier(R, f);
    for (let t = 0; t <= 1; t += 1 / 64) {
      const { x, y } = curve.get(t);
      expect(Math.abs(paraboloid(f).height(x) - y)).toBeLessThan(1e-9);
      const { x: dx, y: dy } = curve.derivative(t);
      expect(Math.abs(paraboloid(f).slopeAngle(x) - Math.atan2(dy, dx))).toBeLessThan(1e-12);
    }
  });

  it.each(shapes)('is as long as that Bezier (bezier-js), R %d f %d', (R, f) => {
    const length = asBezier(R, f).length();
    expect(Math.abs(paraboloid(f).arcLength(R) / length - 1)).toBeLessThan(1e-9);
  });

  it('has a parallel on the convex side that is as long as its points say (Romberg integration)', () => {
    for (const [R, f] of shapes)
      for (const d of [-4, 0.15, 1.65, 3.3, 20]) {
        const at = (r: number) => {
          const psi = Math.atan(r / (2 * f));
          return [r + d * Math.sin(psi), (r * r) / (4 * f) - d * Math.cos(psi)] as const;
        };
        const h = 1e-3;
        const speed = (r: number) => {
          // fourth-order difference of the points themselves
          const [a, b, c, e] = [at(r - 2 * h), at(r - h), at(r + h), at(r + 2 * h)];
          const rate = (i: 0 | 1) => (a[i] - 8 * b[i] + 8 * c[i] - e[i]) / (12 * h);
          return Math.hypot(rate(0), rate(1));
        };
        const byHand = romberg(speed, 10, R);
        expect(
          Math.abs((parallelLength(paraboloid(f), R, d) - parallelLength(paraboloid(f), 10, d)) / byHand - 1),
        ).toBeLessThan(1e-9);
      }
  });

  it('has the heights of a published dish', () => {
    // printed to 3 or 4 digits, and the row of 126.6 is 0.05 cm off its own formula
    for (const [x, y] of publishedOffsets) expect(Math.abs(paraboloid(226).height(x) - y)).toBeLessThan(0.06);
  });

  it('is 9.375 in deep at 60 in aperture and 24 in focal length: 30²/(4·24)', () => {
    expect(paraboloid(24).height(30)).toBe(9.375);
  });

  it('has a rim angle of a right angle at a quarter of the aperture, seen by the ray from the rim to the focus', () => {
    expect(rimAngle(paraboloid(250), 500)).toBeCloseTo(Math.PI / 2, 14);
    for (const [R, f] of shapes) {
      const toFocus = Math.atan2(R, f - (R * R) / (4 * f));
      expect(Math.abs(rimAngle(paraboloid(f), R) - toFocus)).toBeLessThan(1e-12);
    }
  });
});

describe('surface', () => {
  it('is the integral of its rings (Romberg)', () => {
    for (const [R, f] of shapes) {
      const byHand = romberg((r) => 2 * Math.PI * r * Math.hypot(1, r / (2 * f)), 0, R);
      expect(Math.abs(paraboloid(f).area(R) / byHand - 1)).toBeLessThan(1e-10);
    }
  });

  it('comes down to the disc for a flat dish', () => {
    expect(Math.abs(paraboloid(1e7).area(100) / (Math.PI * 100 * 100) - 1)).toBeLessThan(1e-10);
  });
});

describe('set-back', () => {
  const ribs = (count: number, thickness: number, from: number): [number, number][][] =>
    [0, 1].map((k) => {
      const angle = (2 * Math.PI * k) / count;
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      const corner = (r: number, q: number): [number, number] => [r * cos - q * sin, r * sin + q * cos];
      const half = thickness / 2;
      return [corner(from, -half), corner(from + 500, -half), corner(from + 500, half), corner(from, half)];
    });
  const overlaps = (count: number, thickness: number, from: number): boolean => {
    const [a, b] = ribs(count, thickness, from);
    return polyclip.intersection([a!], [b!]).length > 0;
  };

  it.each([
    [24, 12],
    [20, 5],
    [18, 11.9],
    [6, 18],
    [120, 9],
  ])('is where neighbours just stop to overlap (polyclip-ts), %d ribs of %d', (count, thickness) => {
    const clear = clearRadius(count, thickness);
    expect(overlaps(count, thickness, clear + 1e-6)).toBe(false);
    expect(overlaps(count, thickness, clear - 1e-3)).toBe(true);
  });

  it('keeps 22 ribs of 13 mm from meeting at a point: near the circle that is 22 times 13 mm round', () => {
    expect(Math.abs(clearRadius(22, 13) - (22 * 13) / (2 * Math.PI))).toBeLessThan(1);
    expect(overlaps(22, 13, 0)).toBe(true);
  });

  it('puts outer corners on a circle and gives flats as wide as the ribs at the clear radius', () => {
    for (const [count, thickness] of [
      [24, 12],
      [7, 18],
    ] as const) {
      const clear = clearRadius(count, thickness);
      expect(cornerRadius(count, thickness)).toBeCloseTo(Math.hypot(clear, thickness / 2), 10);
      expect(flatLength(count, clear)).toBeCloseTo(thickness, 10);
    }
  });
});
