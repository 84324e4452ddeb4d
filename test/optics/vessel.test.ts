/**
 * The vessel's surfaces against a tracer of another kind: points on a plain grid over every panel in space, rays that
 * are marched in small steps until they are inside the solid, and the surface result by which way they came in.
 */
import { describe, expect, it } from 'vitest';
import { facetAt, litRange } from '../../lib/dish/index.js';
import type { DishShape } from '../../lib/dish/index.js';
import { lightOn } from '../../lib/optics/catch.js';
import { estimate } from '../../lib/optics/estimate.js';
import { advise, forecast, type Vessel } from '../../lib/optics/index.js';
import { hangingFor, strikes } from '../../lib/optics/hanging.js';
import { setUp } from '../../lib/optics/set-up.js';
import { axisElevation, placeVessel } from '../../lib/optics/solid.js';
import { sunShape } from '../../lib/optics/sun-shape.js';
import { trace } from '../../lib/optics/trace.js';
import { byDay } from '../helpers/seeds.js';
import { discOf, dishOf, inputOf, perfect } from './dishes.js';

type Vector = readonly [number, number, number];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const along = (p: Vector, t: number, d: Vector): Vector => [p[0] + t * d[0], p[1] + t * d[1], p[2] + t * d[2]];

/** A pot in the frame of the ground: x south, y east, z up, with the dish's axis in the plane of x and z. */
interface Pot {
  readonly radius: number;
  readonly height: number;
  readonly base: Vector;
}

const inside = ({ radius, height, base }: Pot, p: Vector): boolean =>
  p[2] >= base[2] && p[2] <= base[2] + height && Math.hypot(p[0] - base[0], p[1] - base[1]) <= radius;

/** The surface by which a ray enters, found by steps of a millimetre and halving. */
function entered(pot: Pot, from: Vector, d: Vector, reach: number): 'base' | 'side' | 'lid' | null {
  // only the stretch near the pot is walked
  const middle = along(pot.base, pot.height / 2, [0, 0, 1]);
  const nearest = dot([middle[0] - from[0], middle[1] - from[1], middle[2] - from[2]], d);
  const span = Math.hypot(pot.radius, pot.height / 2) + 2;
  const off = along(from, nearest, d);
  if (Math.hypot(off[0] - middle[0], off[1] - middle[1], off[2] - middle[2]) > span) return null;
  for (let t = Math.max(0, nearest - span); t < Math.min(reach, nearest + span); t += 1) {
    if (!inside(pot, along(from, t, d))) continue;
    let [out, within] = [t - 1, t];
    for (let i = 0; i < 30; i++) {
      const half = (out + within) / 2;
      if (inside(pot, along(from, half, d))) within = half;
      else out = half;
    }
    const p = along(from, out, d);
    if (p[2] < pot.base[2]) return 'base';
    return p[2] > pot.base[2] + pot.height ? 'lid' : 'side';
  }
  return null;
}

/** Shares of the mirror's light by surface: a point sun, or one drawn as rings of points. */
function byHand(shape: DishShape, pot: Omit<Pot, 'base'>, offset: number, elevationDeg: number, sunRadius: number) {
  const e = (elevationDeg * Math.PI) / 180;
  const axis: Vector = [Math.cos(e), 0, Math.sin(e)];
  const upper: Vector = [-Math.sin(e), 0, Math.cos(e)];
  const level: Vector = [0, 1, 0];
  const f = shape.profile.focusHeight;
  const base = along([f * axis[0], f * axis[1], f * axis[2]], offset, [0, 0, 1]);
  const solid: Pot = { ...pot, base };
  const lit = litRange(shape);
  const found = { base: 0, side: 0, lid: 0, shade: 0 };
  let all = 0;
  const panels = shape.layout.ribs.length;
  const [steps, widths, suns] = [byDay(60, 120), Math.round(byDay(200, 400) / panels), sunRadius > 0 ? 6 : 1];
  for (let i = 0; i < steps; i++) {
    const u = lit.from + ((i + 0.5) * (lit.to - lit.from)) / steps;
    const { z, halfWidth } = facetAt(shape, u);
    const slope = (facetAt(shape, u + 0.01).z - facetAt(shape, u - 0.01).z) / 0.02;
    for (let j = 0; j < widths; j++) {
      const w = -halfWidth + ((j + 0.5) * 2 * halfWidth) / widths;
      for (let panel = 0; panel < panels; panel++) {
        const angle = (2 * Math.PI * panel) / panels;
        const [c, s] = [Math.cos(angle), Math.sin(angle)];
        // in the dish: towards the upper rim, level, along the axis; then in the frame of the ground
        const place = (x: number, y: number, h: number): Vector => [
          x * upper[0] + y * level[0] + h * axis[0],
          x * upper[1] + y * level[1] + h * axis[1],
          x * upper[2] + y * level[2] + h * axis[2],
        ];
        const p = place(u * c - w * s, u * s + w * c, z);
        const norm = Math.hypot(slope, 1);
        const n = place((-slope * c) / norm, (-slope * s) / norm, 1 / norm);
        for (let k = 0; k < suns; k++) {
          const r = sunRadius * Math.sqrt((k + 0.5) / suns);
          const turn = 2.4 * (k + 7 * j + 13 * i + 29 * panel);
          const sun = place(r * Math.cos(turn), r * Math.sin(turn), Math.sqrt(1 - r * r));
          const light = halfWidth * norm * dot(sun, n);
          all += light;
          if (entered(solid, p, sun, Infinity) !== null) {
            found.shade += light;
            continue;
          }
          const d = along([-sun[0], -sun[1], -sun[2]], 2 * dot(sun, n), n);
          const by = entered(solid, p, d, Infinity);
          if (by !== null) found[by] += light;
        }
      }
    }
  }
  return { base: found.base / all, side: found.side / all, lid: found.lid / all, shade: found.shade / all };
}

const potOf = (change: Partial<Vessel> = {}): Vessel => ({
  ...discOf(260),
  mount: 'level',
  height: 260,
  ...change,
});

describe('a pot hung level', () => {
  it.each([
    ['the demo’s kettle at its focus', dishOf(), potOf(), 43],
    ['hung lower', dishOf(), potOf({ offset: -160 }), 43],
    ['hung higher, low sun', dishOf(), potOf({ offset: 60, height: 150 }), 20],
    ['high sun', dishOf({ ribCount: 12 }), potOf({ offset: -90, diameter: 180 }), 70],
    ['a flat dish of few ribs', dishOf({ ribCount: 7, focalLength: 900 }), potOf({ height: 120, offset: -40 }), 55],
    [
      'in a deep dish, lit from above too',
      dishOf({ focalLength: 300, ribCount: 16 }),
      potOf({ diameter: 160, height: 120, offset: -30 }),
      60,
    ],
  ] as const)('gets light on each surface as a plain tracer says: %s', (_, shape, vessel, elevationDeg) => {
    const pot = { radius: vessel.diameter / 2, height: vessel.height };
    const hand = byHand(shape, pot, vessel.offset, elevationDeg, 4.65e-3);
    const rays = trace(perfect(shape, { sun: sunShape('uniform', 0), rays: 131_072 }));
    const solid = placeVessel(vessel, shape.profile.focusHeight, (elevationDeg * Math.PI) / 180);
    const shares = lightOn(rays, solid);
    for (const surface of ['base', 'side', 'lid', 'shade'] as const) {
      const { value, standardError } = estimate(shares[surface]);
      // the plain grid has some 0.1 % of its own
      expect(Math.abs(value - hand[surface])).toBeLessThan(3 * standardError + 0.0015);
    }
  });

  it('gives the values of a disc when the sun is overhead and the vessel is short', () => {
    const at = (height: number) =>
      forecast(
        inputOf({
          sun: { elevationDeg: 90 },
          vessel: { mount: 'level', height },
        }),
        { rays: byDay(8192, 16_384), seed: 1 },
      );
    const disc = forecast(inputOf(), { rays: byDay(8192, 16_384), seed: 1 });
    expect(at(0).power.takenUpW.value).toBeCloseTo(disc.power.takenUpW.value, 2);
    // of a short one the side gets next to nothing
    expect(at(5).power.takenUpW.value / disc.power.takenUpW.value).toBeCloseTo(1, 2);
  });

  it('turns the axis by the angle between dish and sun', () => {
    const rad = Math.PI / 180;
    // in the plane of the sun's height the angles add up
    expect(axisElevation(43 * rad, 4 * rad, 0) / rad).toBeCloseTo(39, 9);
    expect(axisElevation(43 * rad, 4 * rad, Math.PI) / rad).toBeCloseTo(47, 9);
    // to a side: the sun's height is that of the unit vector [up·cos, side·sin] (spherical trigonometry)
    const e = axisElevation(43 * rad, 4 * rad, Math.PI / 2);
    expect(Math.sin(e) * Math.cos(4 * rad)).toBeCloseTo(Math.sin(43 * rad), 12);
  });

  it('loses far more when the dish points too low than too high', () => {
    const result = forecast(inputOf({ vessel: potOf(), sun: { elevationDeg: 43 } }), {
      rays: byDay(16_384, 65_536),
      seed: 1,
    });
    const { low, high, aside } = result.vessel!.aim.toleranceDeg;
    expect(low.value).toBeLessThan(0.5 * aside.value);
    expect(high.value).toBeGreaterThan(low.value);
    const at4 = result.vessel!.aim.curve.reduce((a, b) =>
      Math.abs(b.angleDeg - 4) < Math.abs(a.angleDeg - 4) ? b : a,
    );
    expect(at4.low).toBeLessThan(0.8);
  });

  it('hangs best where a finer search finds it, and keeps 95 % to both ends of the range', () => {
    const input = inputOf({ vessel: potOf(), sun: { elevationDeg: 43 } });
    const set = setUp(input);
    const rays = trace({ ...set.settings, rays: 32_768, seed: 1 });
    const moment = [{ elevation: set.sunElevation, irradianceWPerM2: 800, share: 1 }];
    const best = hangingFor(input, set, rays, moment)!;
    const at = (offset: number): number => {
      const shares = lightOn(rays, placeVessel(potOf({ offset }), 550, set.sunElevation));
      return (['base', 'side', 'lid'] as const).reduce((sum, key) => sum + estimate(shares[key]).value, 0);
    };
    const max = Math.max(...Array.from({ length: 81 }, (_, i) => at(-200 + 5 * i)));
    expect(at(best.bestOffset) / max).toBeGreaterThan(0.998);
    for (const end of [best.from, best.to]) expect(Math.abs(at(end) / at(best.bestOffset) - 0.95)).toBeLessThan(0.01);
  });
});

describe('other vessels', () => {
  it('fixed to the axis get the same at every height of the sun', () => {
    const at = (elevationDeg: number) =>
      forecast(inputOf({ vessel: potOf({ mount: 'axis' }), sun: { elevationDeg } }), { rays: 8192, seed: 1 }).power
        .takenUpW.value;
    expect(at(20)).toBe(at(80));
  });

  it('keep in a cavity what its mouth lets in, by the formula for many reflections', () => {
    // Gouffé's sphere: α/(α + (1 − α)·s/S); a mouth of 0.1 m across in a cylinder 0.2 m wide and high
    const cavity = { ...potOf({ mount: 'axis' }), kind: 'cavity' as const, diameter: 200, height: 200, opening: 100 };
    const result = forecast(inputOf({ vessel: { ...cavity, sideAbsorptance: 0 } }), {
      rays: byDay(8192, 16_384),
      seed: 1,
    });
    const mouth = result.power.surfaces.find(({ surface }) => surface === 'mouth')!;
    const s = Math.PI * 0.05 ** 2;
    const inner = 2 * Math.PI * 0.1 ** 2 + Math.PI * 0.2 * 0.2 - s;
    expect(mouth.takenUpW.value / mouth.arrivingW.value).toBeCloseTo(0.9 / (0.9 + (0.1 * s) / inner), 9);
    const side = result.power.surfaces.find(({ surface }) => surface === 'side');
    expect(side?.takenUpW.value ?? 0).toBe(0);
  });

  it('are shaded by the arms of a holder as wide as they are', () => {
    // four arms from the axis to the rim, less what lies over the hub: the mirror's mean width in plan loses theirs
    const bare = forecast(inputOf(), { rays: byDay(16_384, 65_536), seed: 1 });
    const held = forecast(inputOf({ vessel: { holder: { arms: 4, width: 30 } } }), {
      rays: byDay(16_384, 65_536),
      seed: 1,
    });
    const shade = (result: typeof bare) => result.power.losses.find(({ key }) => key === 'shade')!.watts;
    const more = shade(held).value - shade(bare).value;
    const expected = (4 * 30 * (743 - 130) * 800) / 1e6;
    expect(Math.abs(more / expected - 1)).toBeLessThan(0.05);
  });

  it('strike the mirror where a corner is below it', () => {
    const shape = dishOf();
    const at = (offset: number, diameter: number) =>
      strikes(placeVessel({ ...potOf(), offset, diameter }, 550, Math.PI / 6), shape);
    expect(at(0, 260)).toBe(false);
    // base 500 mm plumb below the focus: x = −500·cos 30°, z = 550 − 500·sin 30° = 300; its edge 350·cos 30° lower
    expect(at(-500, 700)).toBe(true);
  });

  it('are advised on only in sizes that stand clear and hold the load', () => {
    const { vessel } = advise(inputOf({ vessel: potOf(), sun: { elevationDeg: 30 } }), { rays: 2048, seed: 1 })!;
    const volume = 260 ** 2 * 260;
    for (const { diameter } of vessel.alternatives) expect(volume / diameter ** 2 / diameter).toBeLessThanOrEqual(2);
  });
});
