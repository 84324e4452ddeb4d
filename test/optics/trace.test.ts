import { beforeAll, describe, expect, it } from 'vitest';
import { facetAt, litRange } from '../../lib/dish/index.js';
import { pointSunIntercept } from '../../lib/optics/index.js';
import { withShade } from '../../lib/optics/catch.js';
import { estimate } from '../../lib/optics/estimate.js';
import { disc } from '../../lib/optics/solid.js';
import { caughtShares, interceptCurve, intercepts, shareRadius, squaredRadii } from '../../lib/optics/spot.js';
import { sunShape } from '../../lib/optics/sun-shape.js';
import { type Rays, trace } from '../../lib/optics/trace.js';
import { bruteRays, caughtShare } from './brute.js';
import { dishOf, perfect, smoothDish } from './dishes.js';
import { byDay } from '../helpers/seeds.js';

const interceptAt = (rays: Rays, a: number, height: number) =>
  estimate(intercepts(rays, squaredRadii(rays, height), a));

describe('closed form of the point sun', () => {
  it('is what the formula of the flat width gives', () => {
    // γ(a) = ∫min(u·tan α, a)du / ∫u·tan α du without a seam, integrated by hand; the lit part from lib/dish
    const shape = dishOf({ seamGap: 0 });
    const { from, to } = litRange(shape);
    const k = Math.tan(Math.PI / 24);
    const whole = (k * (to ** 2 - from ** 2)) / 2;
    for (const a of [20, 50, 80]) {
      const meet = a / k;
      const byHand = ((k * (meet ** 2 - from ** 2)) / 2 + a * (to - meet)) / whole;
      expect(pointSunIntercept(shape, a, 550)).toBeCloseTo(byHand, 10);
    }
    expect(pointSunIntercept(shape, to * k, 550)).toBeCloseTo(1, 12);
  });

  it('is what a plain grid of reflected rays gives, in all planes', () => {
    for (const figure of ['panel', 'rib'] as const) {
      const shape = dishOf({ figure, ribCount: 9, seamGap: 3 });
      for (const height of [530, 550, 575]) {
        const hits = bruteRays(shape, [0, 0, 1], height, 0, 400, 60);
        for (const a of [60, 150, 220])
          expect(Math.abs(caughtShare(hits, a) - pointSunIntercept(shape, a, height))).toBeLessThan(4e-3);
      }
    }
  });
});

describe('trace against the closed form', () => {
  describe.each(['panel', 'rib'] as const)('agrees within 0.1 % at all radii: figure %s', (figure) => {
    const shape = dishOf({ figure });
    let rays: Rays;
    beforeAll(() => {
      rays = trace(perfect(shape, { rays: byDay(2 ** 18, 2 ** 20) }));
    });
    it.each([520, 535, 550, 565, 580])('plane at %i mm', (height) => {
      const curve = interceptCurve(rays, squaredRadii(rays, height), 150, 30);
      const worst = Math.max(
        ...curve.map(({ radius, intercept }) => Math.abs(intercept.value - pointSunIntercept(shape, radius, height))),
      );
      expect(worst).toBeLessThan(1e-3);
    });
  });

  it('agrees with a plain grid of rays when the dish is aimed off the sun, shade included', () => {
    const shape = dishOf({ ribCount: 7 });
    for (const degrees of [1, 4, 9]) {
      const pointing = (degrees * Math.PI) / 180;
      const hits = bruteRays(shape, [Math.sin(pointing), 0, Math.cos(pointing)], 560, 200, 300, 40);
      const rays = withShade(trace(perfect(shape, { pointing })), disc(200, 560));
      const caught = estimate(caughtShares(rays, squaredRadii(rays, 560), 200));
      expect(Math.abs(caught.value - caughtShare(hits, 200))).toBeLessThan(4e-3);
    }
  });
});

describe('ideal paraboloid', () => {
  const f = 550;
  const R = 750;
  const delta = 4.65e-3;
  const rim = 2 * Math.atan(R / (2 * f));
  const rays = trace(perfect(smoothDish(), { sun: sunShape('uniform', 0), rays: byDay(2 ** 18, 2 ** 20) }));

  it('keeps every ray within the published image of the rim', () => {
    // Duffie and Beckman, Solar Engineering of Thermal Processes, chapter on concentrating collectors: the image in the
    // focal plane is W = 2·r·sin δ/cos(φ + δ) wide, with the rim's mirror radius r = 2f/(1 + cos φ); from memory
    const mirrorRadius = (2 * f) / (1 + Math.cos(rim));
    const width = (2 * mirrorRadius * Math.sin(delta)) / Math.cos(rim + delta);
    // what is left of the panels' flat width: R·tan(π/20000)
    const flat = R * Math.tan(Math.PI / 20_000);
    const furthest = Math.sqrt(
      Math.max(...squaredRadii(rays, f).reduce((max, r2) => (r2 > max[0]! ? [r2] : max), [0])),
    );
    expect(furthest).toBeLessThan(width / 2 + flat);
    expect(furthest).toBeGreaterThan(0.97 * (width / 2));
  });

  it('has the intercept of the integral over aperture and sun', () => {
    // independent quadrature: circular aperture, cone of a uniform sun about the reflected ray to the focus
    const gridded = (a: number): number => {
      let within = 0;
      let all = 0;
      const inner = litRange(smoothDish()).from;
      for (let i = 0; i < 300; i++) {
        const r = inner + ((i + 0.5) * (R - inner)) / 300;
        const z = (r * r) / (4 * f);
        const distance = Math.hypot(r, f - z);
        // frame of the central ray from the mirror to the focus
        const [ax, az] = [-r / distance, (f - z) / distance];
        for (let j = 0; j < 60; j++) {
          const theta = delta * Math.sqrt((j + 0.5) / 60);
          for (let k = 0; k < 72; k++) {
            const turn = (2 * Math.PI * (k + 0.5)) / 72;
            const [p, q] = [Math.sin(theta) * Math.cos(turn), Math.sin(theta) * Math.sin(turn)];
            const dx = ax * Math.cos(theta) + az * p;
            const dz = az * Math.cos(theta) - ax * p;
            const x = r + (dx / dz) * (f - z);
            const y = (q / dz) * (f - z);
            all += r;
            if (x * x + y * y <= a * a) within += r;
          }
        }
      }
      return within / all;
    };
    for (const a of [1, 2, 3, 4, 6, 8]) {
      const traced = interceptAt(rays, a, f).value;
      expect(Math.abs(traced / gridded(a) - 1)).toBeLessThan(5e-3);
    }
  });

  it('spreads a normal slope error as a Rayleigh distribution', () => {
    // a flat dish: the reflected ray turns by twice the slope, so each direction in the focal plane has σ = f·√(4σs² + σp²)
    const shape = smoothDish({ apertureRadius: 30, innerRadius: 1, focalLength: 1000 });
    for (const [slopeError, specularity] of [
      [3e-3, 0],
      [0, 2e-3],
      [2e-3, 3e-3],
    ] as const) {
      const blurred = trace(perfect(shape, { slopeError, specularity }));
      const sigma = 1000 * Math.sqrt(4 * slopeError ** 2 + specularity ** 2);
      for (const a of [0.5 * sigma, sigma, 2 * sigma]) {
        const expected = 1 - Math.exp(-(a * a) / (2 * sigma * sigma));
        expect(Math.abs(interceptAt(blurred, a, 1000).value / expected - 1)).toBeLessThan(5e-3);
      }
    }
  });
});

describe('errors of a panel', () => {
  it('spreads evenly curled edges as the flat width grown by twice the angle', () => {
    // a flat dish: light from share s of the half-width h lands at s·(h + 2·c·f)
    const f = 5000;
    const shape = dishOf({
      focalLength: f,
      apertureRadius: 200,
      ribCount: 6,
      seamGap: 0,
      innerRadius: 20,
    });
    const curl = 4e-3;
    const rays = trace(perfect(shape, { edgeCurlMrad: 1000 * curl }));
    const { from, to } = litRange(shape);
    const a = 80;
    let caught = 0;
    let all = 0;
    for (let i = 0; i < 20_000; i++) {
      const half = facetAt(shape, from + ((i + 0.5) * (to - from)) / 20_000).halfWidth;
      all += half;
      caught += half * Math.min(1, a / (half + 2 * curl * f));
    }
    expect(Math.abs(interceptAt(rays, a, f).value - caught / all)).toBeLessThan(2e-3);
  });

  it('tilts panels by what ribs of uneven height do to them', () => {
    // along: 2f·(2π/L)·σ/√2; across, at the rim: 2f·σ/(√2·h), as the two heights differ by √2·σ over 2h
    const f = 5000;
    const shape = dishOf({
      focalLength: f,
      apertureRadius: 200,
      ribCount: 200,
      seamGap: 0,
      innerRadius: 190,
    });
    const sigma = 0.01;
    const rays = trace(perfect(shape, { ribError: sigma }));
    const { from, to } = litRange(shape);
    // turned back to the panel that each ray left
    const seen = Array.from(rays.x, (x, i) => {
      const drop = rays.low[i]! - rays.reference;
      const angle = Math.atan2(rays.y[i]! + rays.dydz[i]! * drop, x + rays.dxdz[i]! * drop);
      const turn = (Math.round((angle * 100) / Math.PI) * Math.PI) / 100;
      const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
      return [x * cos + rays.y[i]! * sin, rays.y[i]! * cos - x * sin] as const;
    });
    const spread = (axis: 0 | 1) => Math.sqrt(seen.reduce((sum, one) => sum + one[axis] ** 2, 0) / seen.length);
    const along = (2 * f * 2 * Math.PI * sigma) / Math.SQRT2 / (to - from);
    expect(Math.abs(spread(0) / along - 1)).toBeLessThan(0.02);
    const half = facetAt(shape, (from + to) / 2).halfWidth;
    const across = Math.hypot((2 * f * sigma) / Math.SQRT2 / half, half / Math.sqrt(3));
    expect(Math.abs(spread(1) / across - 1)).toBeLessThan(0.02);
  });
});

describe('symmetry and limits', () => {
  const built = { sun: sunShape('uniform', 0), slopeError: 3e-3, specularity: 1e-3, edgeCurlMrad: null } as const;

  it('has no preferred direction when all panels are traced', () => {
    const { x, y, count } = trace(perfect(dishOf(), { ...built, pointing: 1e-9 }));
    let [sx, sy, sxx, syy, sxy] = [0, 0, 0, 0, 0];
    for (let i = 0; i < count; i++) {
      sx += x[i]!;
      sy += y[i]!;
      sxx += x[i]! ** 2;
      syy += y[i]! ** 2;
      sxy += x[i]! * y[i]!;
    }
    const size = Math.sqrt(sxx / count);
    expect(Math.abs(sx / count)).toBeLessThan(0.01 * size);
    expect(Math.abs(sy / count)).toBeLessThan(0.01 * size);
    expect(Math.abs(syy / sxx - 1)).toBeLessThan(0.02);
    expect(Math.abs(sxy / sxx)).toBeLessThan(0.01);
  });

  const seamless = (ribCount: number) => {
    const shape = dishOf({
      ribCount,
      seamGap: 0,
      panelThickness: 0,
      facingThickness: 1e-6,
    });
    const rays = trace(perfect(shape, { ...built, edgeCurlMrad: 0, rays: byDay(2 ** 16, 2 ** 19) }));
    const squared = squaredRadii(rays, 550);
    return {
      radius90: shareRadius(rays, squared, 0.9, 750),
      meanSquare: squared.reduce((sum, r2) => sum + r2, 0) / rays.count,
    };
  };

  it('never widens the spot with more ribs', () => {
    const radii = byDay([6, 12, 24, 60, 400], [6, 8, 12, 16, 24, 36, 60, 120, 400, 20_000]).map(
      (ribCount) => seamless(ribCount).radius90,
    );
    for (let i = 1; i < radii.length; i++) {
      const [more, fewer] = [radii[i]!, radii[i - 1]!];
      expect(more.value).toBeLessThan(fewer.value + 3 * Math.hypot(more.standardError, fewer.standardError));
    }
  });

  it('tends to the smooth dish as the square of the panels’ width', () => {
    // flat width adds the mean of w² to the mean square radius: tan²α/6·(u1² + u2²) over the lit mid-line
    const smooth = seamless(20_000);
    for (const ribCount of [100, 400]) {
      const { from, to } = litRange(dishOf({ ribCount, seamGap: 0, facingThickness: 1e-6 }));
      const flat = (Math.tan(Math.PI / ribCount) ** 2 / 6) * (from * from + to * to);
      expect(Math.abs((seamless(ribCount).meanSquare - smooth.meanSquare) / flat - 1)).toBeLessThan(0.02);
    }
    expect(Math.abs(seamless(1600).radius90.value / smooth.radius90.value - 1)).toBeLessThan(3e-3);
  });
});

describe('sampling', () => {
  it('gives the same rays for the same seed and others for another', () => {
    const of = (seed: number) => trace(perfect(dishOf(), { rays: 1600, seed, slopeError: 1e-3 }));
    expect(of(3)).toEqual(of(3));
    expect(of(3).x).not.toEqual(of(4).x);
  });

  it('tells its own error honestly', () => {
    const shape = dishOf();
    const truth = pointSunIntercept(shape, 50, 560);
    const misses = Array.from({ length: 60 }, (_, seed) => {
      const { value, standardError } = interceptAt(trace(perfect(shape, { rays: 16_384, seed })), 50, 560);
      return (value - truth) / standardError;
    });
    // Student's t of 15 degrees of freedom has a standard deviation of √(15/13)
    const spread = Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / misses.length);
    expect(spread).toBeGreaterThan(0.7);
    expect(spread).toBeLessThan(1.5);
  });

  it('shrinks its error with the root of the number of rays or faster', () => {
    const counts = [2 ** 12, 2 ** 14, 2 ** 16, ...byDay([], [2 ** 18, 2 ** 20])];
    const settings = perfect(dishOf(), { sun: sunShape('uniform', 0), slopeError: 3e-3 });
    const errors = counts.map((rays) => {
      const each = [1, 2, 3, 4].map((seed) => interceptAt(trace({ ...settings, rays, seed }), 60, 550).standardError);
      return Math.log(Math.sqrt(each.reduce((sum, error) => sum + error * error, 0) / each.length));
    });
    const x = counts.map(Math.log);
    const mean = (list: readonly number[]) => list.reduce((sum, value) => sum + value, 0) / list.length;
    const [mx, my] = [mean(x), mean(errors)];
    const slope =
      x.reduce((sum, v, i) => sum + (v - mx) * (errors[i]! - my), 0) / x.reduce((sum, v) => sum + (v - mx) ** 2, 0);
    expect(slope).toBeLessThan(-0.5);
    expect(slope).toBeGreaterThan(-1.1);
  });

  it('refuses less than one ray a batch', () => {
    expect(() => trace(perfect(dishOf(), { rays: 10 }))).toThrow(RangeError);
  });
});
