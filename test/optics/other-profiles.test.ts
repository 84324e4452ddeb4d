/** The forecast of the dishes that are no shallow paraboloid, against a slow tracer and against values by hand. */
import { describe, expect, it } from 'vitest';
import { spread } from '../../lib/dish/index.js';
import { forecast, pointSunIntercept } from '../../lib/optics/index.js';
import { withShade } from '../../lib/optics/catch.js';
import { estimate } from '../../lib/optics/estimate.js';
import { disc } from '../../lib/optics/solid.js';
import { fluxMap } from '../../lib/optics/flux-map.js';
import { caughtShares, intercepts, squaredRadii } from '../../lib/optics/spot.js';
import { trace } from '../../lib/optics/trace.js';
import { inputOf, litOf } from '../../lib/pipeline/forecast.js';
import { designOf, fixtureText } from '../helpers/fixtures.js';
import { spreadText } from '../helpers/other-dishes.js';
import { bruteRays, caughtShare } from './brute.js';
import { dishOf, perfect } from './dishes.js';
import { byDay } from '../helpers/seeds.js';

const even = spread({ height: 550, radius: 85, apertureRadius: 750 });
const dishes = [
  ['spread', dishOf({ profile: even, ribCount: 12 }), 550],
  ['spread on plain ribs', dishOf({ profile: even, ribCount: 12, figure: 'rib' }), 550],
  ['deep', dishOf({ focalLength: 250, ribCount: 12, seamGap: 1 }), 250],
] as const;

describe.each(dishes)('%s', (_, shape, plane) => {
  const radii = [40, 90, 140, 190];

  it('has the trace of a plain grid of rays and vectors, aimed true and off the sun, shade included', () => {
    for (const degrees of [0, 2]) {
      const pointing = (degrees * Math.PI) / 180;
      const height = plane + 10;
      const hits = bruteRays(shape, [Math.sin(pointing), 0, Math.cos(pointing)], height, 130, 300, 40);
      const rays = withShade(trace(perfect(shape, { pointing })), disc(130, height));
      for (const a of radii) {
        const caught = estimate(caughtShares(rays, squaredRadii(rays, height), a));
        expect(Math.abs(caught.value - caughtShare(hits, a))).toBeLessThan(4e-3);
      }
    }
  });

  it('has the intercept of the integral over the mid-line', () => {
    const rays = trace(perfect(shape));
    for (const height of [plane - 8, plane, plane + 8])
      for (const a of radii) {
        const caught = estimate(intercepts(rays, squaredRadii(rays, height), a)).value;
        expect(Math.abs(caught - pointSunIntercept(shape, a, height))).toBeLessThan(2e-3);
      }
  });
});

describe('a spread dish', () => {
  it('is as bright as its overlapping images of panels say', () => {
    // a point sun, no seams: a panel's image is the panel narrowed to k = a/R along its mid-line, so it is 1/k suns
    // bright; of N images turned about the axis, N·atan(tan(π/N)/k)/π cover a place within radius a on average
    const shape = dishOf({ profile: even, seamGap: 0 });
    const rays = trace(perfect(shape, { rays: byDay(2 ** 18, 2 ** 20) }));
    const k = 85 / 750;
    const expected = (24 * Math.atan(Math.tan(Math.PI / 24) / k)) / Math.PI / k;
    const squared = squaredRadii(rays, 550);
    const within = (a: number) => estimate(intercepts(rays, squared, a)).value;
    const mirror = 24 * Math.tan(Math.PI / 24) * (743 ** 2 - 50.6 ** 2);
    for (const [inner, outer] of [
      [20, 40],
      [40, 60],
      [60, 80],
    ] as const) {
      const suns = ((within(outer) - within(inner)) * mirror) / (Math.PI * (outer ** 2 - inner ** 2));
      expect(Math.abs(suns / expected - 1)).toBeLessThan(0.01);
    }
  });

  it('keeps the demo below 60 suns with at least 98 % of the power of the paraboloid', () => {
    const rays = byDay(65_536, 262_144);
    const result = (text: string) =>
      forecast(inputOf(litOf(designOf(`${text}sun: { slopeError: 3, specularity: 1 }\n`))), { seed: 1, rays });
    const [point, wide] = [result(fixtureText('press-house')), result(spreadText)];
    expect(point.map.peak.value).toBeGreaterThan(600);
    expect(wide.map.peak.value).toBeLessThan(60);
    expect(wide.power.takenUpW.value / point.power.takenUpW.value).toBeGreaterThan(0.98);
    // the mean over the vessel cannot lie above the brightest place
    expect(wide.vessel!.meanOnBase.value).toBeLessThan(wide.map.peak.value);
  });

  it('has the brightest place that a count of plain rays in cells finds', () => {
    const shape = dishOf({ profile: even, ribCount: 12 });
    const height = 550;
    const cell = 7;
    const half = 20.5 * cell;
    const area = 1;
    const rays = trace(perfect(shape, { rays: byDay(2 ** 18, 2 ** 20) }));
    const map = fluxMap(rays, height, half, area, 12, true);
    const hits = bruteRays(shape, [0, 0, 1], height, 0, 400, 80);
    const counts = new Map<string, number>();
    let all = 0;
    for (const { x, y, light } of hits) {
      all += light;
      const key = `${Math.floor((x + half) / cell)} ${Math.floor((y + half) / cell)}`;
      counts.set(key, (counts.get(key) ?? 0) + light);
    }
    const brightest = (Math.max(...counts.values()) / all / cell ** 2) * area;
    expect(Math.abs(map.peak.value / brightest - 1)).toBeLessThan(0.06);
  });
});

describe('a deep dish', () => {
  it('brings the light from above the vessel’s plane to the focus as that from below', () => {
    // smooth, point sun: every ray of a paraboloid meets the focus, whatever the rim angle
    const shape = dishOf({ focalLength: 250, ribCount: 2000, seamGap: 0, facingThickness: 1e-6 });
    const rays = trace(perfect(shape));
    const flatWidth = 750 * Math.tan(Math.PI / 2000);
    // but for the belt about 2f, where the rays run level and no plane tells where they go
    expect(estimate(intercepts(rays, squaredRadii(rays, 250), flatWidth + 0.5)).value).toBeGreaterThan(0.999);
  });
});
