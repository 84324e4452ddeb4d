import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { crossingHeight, facetAt, litRange } from '../../lib/dish/index.js';
import { bestHeight, bestPlane } from '../../lib/optics/best-plane.js';
import { estimate } from '../../lib/optics/estimate.js';
import { type Forecast, forecast, ForecastStopped, pointSunIntercept, summaryRows } from '../../lib/optics/index.js';
import { planAreas } from '../../lib/optics/set-up.js';
import { midLine } from '../../lib/optics/mid-line.js';
import { intercepts, squaredRadii } from '../../lib/optics/spot.js';
import { sunShape } from '../../lib/optics/sun-shape.js';
import { trace } from '../../lib/optics/trace.js';
import { bruteRays, caughtShare } from './brute.js';
import { dishOf, inputOf, perfect, smoothDish } from './dishes.js';
import { byDay, holds } from '../helpers/seeds.js';

const quick = { rays: 16_384, seed: 1 };
/** As many as a design is forecast with by night; an eighth by day. */
const many = byDay(32_768, 262_144);
/** The forecast of the plain input, made once for those who look at it. */
let plain: Forecast;
beforeAll(() => {
  plain = forecast(inputOf(), quick);
});

describe('loss table', () => {
  const inputs = fc.record({
    ribCount: fc.integer({ min: 6, max: 40 }),
    figure: fc.constantFrom('panel' as const, 'rib' as const),
    focalLength: fc.integer({ min: 400, max: 1500 }),
    seamGap: fc.double({ min: 0, max: 8, noNaN: true }),
    diameter: fc.integer({ min: 30, max: 700 }),
    offset: fc.oneof(fc.constant(0), fc.integer({ min: -60, max: 60 })),
    reflectance: fc.double({ min: 0.3, max: 1, noNaN: true }),
    stripSeamShare: fc.double({ min: 0, max: 0.3, noNaN: true }),
    absorptance: fc.double({ min: 0.3, max: 1, noNaN: true }),
    slopeErrorMrad: fc.double({ min: 0, max: 20, noNaN: true }),
    shape: fc.constantFrom('uniform' as const, 'limb-darkened' as const, 'circumsolar' as const),
    pointingErrorDeg: fc.constantFrom(0, 0.5, 3),
  });

  it('adds up to what came in, and no loss is negative', () => {
    holds(
      fc.property(inputs, (one) => {
        const { ribCount, figure, focalLength, seamGap } = one;
        const { power } = forecast(
          inputOf({
            dish: dishOf({ ribCount, figure, focalLength, seamGap }),
            reflector: one,
            vessel: { ...one, baseAbsorptance: one.absorptance, sideAbsorptance: one.absorptance },
            sun: one,
          }),
          { rays: 2048, seed: 5 },
        );
        const lost = power.losses.reduce((sum, { watts }) => sum + watts.value, 0);
        expect((lost + power.takenUpW.value) / power.incomingW).toBeCloseTo(1, 10);
        expect(power.incomingW).toBeCloseTo(800 * Math.PI * 0.75 ** 2, 9);
        // The closed-form and absorbed shares are losses by nature. What misses is so only where the light is narrowest:
        // a vessel beside the focus may stand in the hole of a ring of light, and blur or a dish turned off the sun
        // then steers light onto it.
        const inFocus = one.figure === 'panel' && one.offset === 0;
        for (const { watts } of power.losses.filter(({ watts: { standardError } }) => inFocus || standardError === 0))
          expect(watts.value).toBeGreaterThan(-5 * watts.standardError - 1e-9);
      }),
      { numRuns: 12, night: 400 },
    );
  });

  it('has plan areas that add up to the aperture', () => {
    const shape = dishOf();
    const areas = planAreas(shape, midLine(shape), 0.1);
    expect(areas.rim + areas.hub + areas.seams + areas.strips + areas.mirror).toBeCloseTo(Math.PI * 750 ** 2, 5);
    // the mirror by a plain sum over the panels
    const { from, to } = litRange(shape);
    let sum = 0;
    for (let i = 0; i < 10_000; i++)
      sum += 48 * facetAt(shape, from + ((i + 0.5) * (to - from)) / 10_000).halfWidth * ((to - from) / 10_000);
    expect((areas.mirror + areas.strips) / sum).toBeCloseTo(1, 9);
  });

  it('shades the mirror by the vessel’s area less what lies over the hub and the seams', () => {
    const { power } = forecast(inputOf({ sun: { slopeErrorMrad: 0 } }), quick);
    const shade = power.losses.find(({ key }) => key === 'shade')!.watts;
    const { from } = litRange(dishOf());
    const overMirror =
      Math.PI * 0.13 ** 2 - (24 * Math.tan(Math.PI / 24) * from ** 2) / 1e6 - (24 * 2 * (130 - from)) / 1e6;
    expect(Math.abs(shade.value - 800 * overMirror)).toBeLessThan(4 * shade.standardError + 0.002 * 800 * overMirror);
  });

  it('tells what the flat panels lose as the closed form does', () => {
    const { power } = forecast(inputOf({ vessel: { diameter: 120 } }), { rays: byDay(65_536, 262_144), seed: 1 });
    const flat = power.losses.find(({ key }) => key === 'flat-panels')!.watts;
    const { from, to } = litRange(dishOf());
    // light from under the vessel's shade is taken off: what lands near the axis is not only that, so integrate
    const shape = dishOf();
    let all = 0;
    let missed = 0;
    for (let i = 0; i < 20_000; i++) {
      const u = from + ((i + 0.5) * (to - from)) / 20_000;
      const half = facetAt(shape, u).halfWidth;
      const dark = u < 60 ? Math.min(half, Math.sqrt(3600 - u * u)) : 0;
      all += half - dark;
      missed += Math.max(0, half - Math.max(60, dark));
    }
    const { reflector } = inputOf();
    const unshaded = (all * 48 * ((to - from) / 20_000)) / 1e6;
    expect(Math.abs(flat.value / (800 * unshaded * reflector.reflectance * (missed / all)) - 1)).toBeLessThan(2e-3);
  });
});

describe('forecast', () => {
  it('is the same for the same seed, to the last digit', () => {
    expect(JSON.stringify(forecast(inputOf(), quick))).toBe(JSON.stringify(plain));
  });

  it('takes up the intercept’s share of what the unshaded mirror gives back', () => {
    const result = forecast(inputOf({ vessel: { diameter: 120 } }), quick);
    const given =
      result.power.incomingW -
      result.power.losses
        .filter(({ key }) => ['rim', 'hub', 'seams', 'shade', 'reflector'].includes(key))
        .reduce((sum, { watts }) => sum + watts.value, 0);
    expect(result.power.arrivingW.value / given).toBeCloseTo(result.vessel!.intercept.value, 3);
    expect(result.power.takenUpW.value).toBeCloseTo(0.9 * result.power.arrivingW.value, 9);
    expect(result.vessel!.meanOnBase.value).toBeCloseTo(result.power.arrivingW.value / (800 * Math.PI * 0.06 ** 2), 9);
  });

  it('has a map that holds the light that arrives', () => {
    const result = plain;
    const side = (2 * result.map.halfSide) / result.map.cells;
    const onMap = (result.map.suns.reduce((sum, suns) => sum + suns, 0) * side * side * 800) / 1e6;
    expect(Math.abs(onMap / result.power.arrivingW.value - 1)).toBeLessThan(0.002);
    // rings of the curve hold the same light
    const { curve } = result.spot;
    const rings = curve
      .slice(1)
      .reduce((sum, { radius, suns }, i) => sum + suns.value * Math.PI * (radius ** 2 - curve[i]!.radius ** 2), 0);
    expect(Math.abs((rings * 800) / 1e6 / result.power.arrivingW.value - 1)).toBeLessThan(0.002);
    // symmetric about both axes of the panels' pattern
    const at = (row: number, column: number) => result.map.suns[row * result.map.cells + column]!;
    for (const [row, column] of [
      [5, 18],
      [12, 30],
      [20, 25],
    ] as const)
      expect(at(row, column)).toBeCloseTo(at(result.map.cells - 1 - row, column), 6);
  });

  it('has a peak below the limit of the smooth dish and above its mean', () => {
    // no mirror of rim angle φ is brighter on the axis than sin²φ/sin²δ suns times its reflectance (Rabl, Active Solar
    // Collectors and Their Applications, 1985; from memory)
    const result = forecast(
      inputOf({
        dish: smoothDish(),
        sun: { slopeErrorMrad: 0, specularityMrad: 0, edgeCurlMrad: 0 },
        vessel: { diameter: 40 },
      }),
      { rays: many, seed: 1 },
    );
    const rim = 2 * Math.atan(750 / 1100);
    const limit = 0.85 * (Math.sin(rim) / Math.sin(4.65e-3)) ** 2;
    expect(result.map.peak.value).toBeLessThan(limit * 1.001);
    // the hole of hub and shade takes its part of the cone away: within 10 % of the limit on the axis
    expect(result.map.peak.value).toBeGreaterThan(0.9 * limit);
  });

  it('finds the best plane where figure rib focuses, and at f for figure panel', () => {
    for (const figure of ['panel', 'rib'] as const) {
      const shape = dishOf({ figure });
      const result = forecast(inputOf({ dish: shape }), { rays: many, seed: 2 });
      const rim = crossingHeight(facetAt(shape, litRange(shape).to));
      expect(Math.abs(result.spot.bestPlane.value - rim)).toBeLessThan(3 * result.spot.bestPlane.standardError + 1.5);
    }
  });

  it('states the error of the best plane as it scatters from seed to seed', () => {
    for (const figure of ['panel', 'rib'] as const) {
      const settings = perfect(dishOf({ figure }), { sun: sunShape('uniform', 0), slopeError: 3e-3, rays: 4096 });
      const planes = Array.from({ length: 24 }, (_, seed) => bestPlane(trace({ ...settings, seed }), 0.9, 750));
      const mean = planes.reduce((sum, { value }) => sum + value, 0) / planes.length;
      const scatter = planes.reduce((sum, { value }) => sum + (value - mean) ** 2, 0) / (planes.length - 1);
      const stated = planes.reduce((sum, { standardError }) => sum + standardError ** 2, 0) / planes.length;
      // 24 seeds know their own spread to a seventh
      expect(Math.sqrt(scatter / stated)).toBeGreaterThan(0.7);
      expect(Math.sqrt(scatter / stated)).toBeLessThan(1.4);
    }
  });

  it('stops when asked to', () => {
    let asked = 0;
    expect(() => forecast(inputOf(), { ...quick, stop: () => ++asked > 2 })).toThrow(ForecastStopped);
  });

  it('heats as the power and losses say, and says when the target is out of reach', () => {
    const result = forecast(inputOf({ load: { targetC: 99 }, sun: { irradianceWPerM2: 60 } }), quick);
    const { warming } = result.heat!;
    if (warming.kind !== 'out-of-reach') throw new Error(warming.kind);
    expect(warming.reachableC.value).toBeLessThan(99);
    expect(forecast(inputOf({ load: null }), quick).heat!.warming.kind).toBe('no-load');
    const fine = plain.heat!.warming;
    // never faster than without losses: 12 kg of water by 66 K
    const power = plain.power.takenUpW.value;
    expect(fine.kind === 'reached' && fine.minutes.value).toBeGreaterThan((12 * 4186 * 66) / power / 60);
  });

  it('uses the clear sky of a site', () => {
    const result = forecast(
      inputOf({
        site: { latitudeDeg: 47, longitudeDeg: 11, altitudeM: 600, timeZone: 1 },
        sun: { irradianceWPerM2: null },
      }),
      quick,
    );
    expect(result.irradianceWPerM2).toBe(result.day!.noonDirectWPerM2);
    expect(result.irradianceWPerM2).toBeGreaterThan(result.day!.meanDirectWPerM2);
    expect(result.sunElevationDeg).toBe(result.day!.noonElevationDeg);
  });
});

describe('aim', () => {
  it('keeps 90 % at the tolerance, by a plain grid of rays', () => {
    const shape = dishOf({ ribCount: 12 });
    const result = forecast(
      inputOf({
        dish: shape,
        vessel: { diameter: 300 },
        sun: { slopeErrorMrad: 0, specularityMrad: 0, edgeCurlMrad: 0 },
      }),
      { rays: many, seed: 3 },
    );
    const angle = (result.vessel!.aim.toleranceDeg.low.value * Math.PI) / 180;
    const at = (a: number) =>
      caughtShare(bruteRays(shape, [Math.sin(a), 0, Math.cos(a)], 550, 150, 200, 40), 150) * Math.cos(a);
    // a point sun instead of the disc: the edge is blurred evenly to both sides, so 1 % is granted
    expect(Math.abs(at(angle) / at(0) - 0.9)).toBeLessThan(0.01);
  });

  it('falls steadily off the sun', () => {
    const { curve } = plain.vessel!.aim;
    for (let i = 1; i < curve.length; i++)
      for (const side of ['low', 'high', 'aside'] as const)
        expect(curve[i]![side]).toBeLessThan(curve[i - 1]![side] + 0.005);
  });
});

describe('published dish of eleven petals', () => {
  // Pavlovic et al., Journal of Solar Energy 2015, 326536, and Thermal Science 20, 2016, S1237: aperture 3.8 m, eleven
  // petals, f = 2.26 m. From memory: depth 0.399 m, and the best place of a 400 mm vessel 2.1 m from the vertex, nearer
  // than f. Petals that are straight across and whose edges are the parabola (figure `rib`) explain that: they focus at
  // f·cos²α = 2.08 m. Their intercepts and powers are not compared: the papers' vessel, errors and area are not ours.
  const shape = dishOf({
    figure: 'rib',
    ribCount: 11,
    focalLength: 2260,
    apertureRadius: 1900,
    innerRadius: 200,
    seamGap: 0,
    panelThickness: 1,
    reflectorThickness: 0,
    facingThickness: 1,
  });

  it('is 0.399 m deep', () => {
    expect(Math.abs(shape.profile.height(shape.apertureRadius) - 399)).toBeLessThan(0.5);
  });

  it('catches most at about 2.1 m and much less at f', () => {
    const rays = trace(perfect(shape, { sun: sunShape('uniform', 0), rays: 65_536 }));
    const caught = (height: number) => estimate(intercepts(rays, squaredRadii(rays, height), 200)).value;
    const heights = Array.from({ length: 41 }, (_, i) => 1960 + 10 * i);
    const best = heights.reduce((a, b) => (caught(b) > caught(a) ? b : a));
    expect(Math.abs(best - 2100)).toBeLessThan(40);
    expect(caught(2260)).toBeLessThan(0.85 * caught(best));
    expect(Math.abs(bestHeight(rays, 0.9, 1900) - 2260 * Math.cos(Math.PI / 11) ** 2)).toBeLessThan(12);
    // and the point sun says the same in closed form
    expect(pointSunIntercept(shape, 200, 2081)).toBeGreaterThan(pointSunIntercept(shape, 200, 2260));
  });
});

describe('summary', () => {
  it('prints every value with a unit and a sensible error', () => {
    const rows = summaryRows(plain, (mm) => `${(mm / 25.4).toFixed(2)} in`);
    const labels = rows.map(({ label }) => label);
    expect(new Set(labels).size).toBe(labels.length);
    for (const label of [
      'power absorbed',
      'time to target',
      'stagnation temperature',
      'aim tolerance, sideways',
      'standardised cooking power',
    ])
      expect(labels).toContain(label);
    for (const { value, standardError } of rows) {
      if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
      if (standardError !== undefined) expect(standardError).toBeGreaterThan(0);
    }
    expect(rows.find(({ label }) => label.startsWith('radius of 90'))!.note).toContain(' in');
  });

  it('says what a slip gains as a gain, and no cost below nothing', () => {
    const slip = plain.workmanship.find(({ key }) => key === 'hub')!;
    const effect = (value: number) => {
      const workmanship = [{ ...slip, watts: { value, standardError: 0.1 } }];
      return summaryRows({ ...plain, workmanship }).find(({ label }) => label.endsWith(slip.label));
    };
    expect(effect(-2.6)).toMatchObject({ label: 'gains: hub 1 mm too large in radius', value: 2.6 });
    expect(effect(2.6)).toMatchObject({ label: 'costs: hub 1 mm too large in radius', value: 2.6 });
  });
});
