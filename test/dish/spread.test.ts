import { describe, expect, it } from 'vitest';
import { bendRadius, offsetPoint, paraboloid, parallelLength, type Profile, spread } from '../../lib/dish/index.js';
import { romberg } from './shapes.js';

const targets = [
  { height: 550, radius: 85.4, apertureRadius: 750 },
  { height: 180, radius: 60, apertureRadius: 500 },
  { height: 3000, radius: 400, apertureRadius: 900 },
] as const;
const shares = [0.01, 0.1, 0.35, 0.62, 0.9, 0.999];

/** A derivative by differences of the fourth order. */
const rate = (f: (t: number) => number, t: number, h: number): number =>
  (f(t - 2 * h) - 8 * f(t - h) + 8 * f(t + h) - f(t + 2 * h)) / (12 * h);

/** Where a ray straight down at u crosses a level plane, by vectors from the heights alone: d' = d − 2(d·n)n. */
function landing({ height }: Profile, u: number, plane: number): number {
  const slope = rate(height, u, 0.05);
  const n = { x: -slope / Math.hypot(1, slope), z: 1 / Math.hypot(1, slope) };
  const out = { x: 2 * n.z * n.x, z: -1 + 2 * n.z * n.z };
  return u + (out.x / out.z) * (plane - height(u));
}

describe.each(targets)('spread over $radius mm at $height mm', (target) => {
  const profile = spread(target);
  const R = target.apertureRadius;

  it('sends every radius to its own radius on the disc (law of reflection on the heights)', () => {
    for (const share of shares)
      expect(Math.abs(landing(profile, share * R, target.height) - share * target.radius)).toBeLessThan(1e-6);
  });

  it('lights rings of equal area by rings of equal area', () => {
    // a ring's area is the difference of two squared radii times π
    const on = (u: number) => landing(profile, u, target.height) ** 2;
    const rings = Array.from(
      { length: 9 },
      (_, i) => on(R * Math.sqrt((i + 2) / 10)) - on(R * Math.sqrt((i + 1) / 10)),
    );
    for (const ring of rings) expect(Math.abs(ring / (target.radius ** 2 / 10) - 1)).toBeLessThan(1e-6);
  });

  it('states slope, turn and bend of its own heights', () => {
    for (const share of shares) {
      const u = share * R;
      const slope = rate(profile.height, u, 0.05);
      const second = rate((t) => rate(profile.height, t, 0.5), u, 0.5);
      expect(Math.abs(profile.slope(u) - slope)).toBeLessThan(1e-9);
      expect(Math.abs(profile.slopeAngle(u) - Math.atan(slope))).toBeLessThan(1e-9);
      expect(Math.abs(profile.turn(u) - second / (1 + slope * slope))).toBeLessThan(1e-8);
      // curvature z''/(1 + z'²)^{3/2} (any calculus text)
      expect(Math.abs(bendRadius(profile, u) * second - (1 + slope * slope) ** 1.5)).toBeLessThan(1e-3);
    }
  });

  it('is as long and as large as its points say (Romberg integration), and so are its parallels', () => {
    const speed = (u: number) => Math.hypot(1, u < 1 ? profile.slope(u) : rate(profile.height, u, 0.05));
    const length = romberg(speed, 0, R);
    expect(Math.abs(profile.arcLength(R) / length - 1)).toBeLessThan(1e-9);
    const area = romberg((u) => 2 * Math.PI * u * speed(u), 0, R);
    expect(Math.abs(profile.area(R) / area - 1)).toBeLessThan(1e-9);
    const layer = (u: number) =>
      Math.hypot(
        rate((t) => offsetPoint(profile, t, 3).x, u, 0.05),
        rate((t) => offsetPoint(profile, t, 3).y, u, 0.05),
      );
    const parallel = romberg(layer, 10, R);
    expect(parallelLength(profile, R, 3) - parallelLength(profile, 10, 3)).toBeCloseTo(parallel, 6);
  });

  it('narrowed, has the same heights nearer the axis, with slope, turn and length of its own', () => {
    const narrow = profile.narrowed(0.9);
    for (const share of shares) {
      const u = share * R;
      expect(narrow.height(0.9 * u)).toBe(profile.height((0.9 * u) / 0.9));
      expect(Math.abs(narrow.slope(0.9 * u) - rate(narrow.height, 0.9 * u, 0.05))).toBeLessThan(1e-9);
      expect(Math.abs(narrow.turn(0.9 * u) - rate(narrow.slopeAngle, 0.9 * u, 0.05))).toBeLessThan(1e-9);
    }
    const length = romberg((u) => Math.hypot(1, narrow.slope(u)), 0, 0.9 * R);
    expect(Math.abs(narrow.arcLength(0.9 * R) / length - 1)).toBeLessThan(1e-9);
  });

  it('is shallower than the paraboloid of that height, and keeps its rays on their side of the axis', () => {
    expect(profile.height(R)).toBeLessThan(paraboloid(target.height).height(R));
    for (const share of shares) expect(landing(profile, share * R, target.height)).toBeGreaterThan(0);
  });
});

describe('the spread', () => {
  it('over nothing is the paraboloid z = u²/4f to a nanometre', () => {
    for (const { height: f, apertureRadius: R } of targets) {
      const point = spread({ height: f, radius: 0, apertureRadius: R });
      for (const share of shares) {
        const u = share * R;
        expect(Math.abs(point.height(u) - (u * u) / (4 * f))).toBeLessThan(1e-6);
        expect(Math.abs(point.turn(u) - paraboloid(f).turn(u))).toBeLessThan(1e-12);
      }
      expect(point.arcLength(R)).toBeCloseTo(paraboloid(f).arcLength(R), 8);
      expect(point.area(R) / paraboloid(f).area(R)).toBeCloseTo(1, 12);
    }
  });

  it('begins as the paraboloid of focal length h/(1 − a/R): near the axis 2ψ = u·(1 − a/R)/h', () => {
    const profile = spread({ height: 550, radius: 85.4, apertureRadius: 750 });
    const f = 550 / (1 - 85.4 / 750);
    for (const u of [0.5, 2, 5]) expect(Math.abs((profile.height(u) * 4 * f) / (u * u) - 1)).toBeLessThan(1e-4);
  });

  it.each([
    { height: 0, radius: 10, apertureRadius: 100 },
    { height: 100, radius: 100, apertureRadius: 100 },
    { height: 100, radius: -1, apertureRadius: 100 },
    { height: 0.001, radius: 1, apertureRadius: 100 },
  ])('refuses what no mirror does: %j', (target) => {
    expect(() => spread(target)).toThrow(RangeError);
  });
});
