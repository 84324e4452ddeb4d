import { describe, expect, it } from 'vitest';
import { burnMaps, burnRows, burnNotes, type OpticsInput } from '../../../lib/optics/index.js';
import { beamMap, farIntensity } from '../../../lib/optics/burn/beam-map.js';
import { burnSuns, dazzleSuns, secondsToSkinHurt, SKIN_LIMIT } from '../../../lib/optics/burn/limits.js';
import { setUp } from '../../../lib/optics/set-up.js';
import { trace } from '../../../lib/optics/trace.js';
import { burnPlots } from '../../../lib/output/plots/index.js';
import { inputOf, smoothDish } from '../dishes.js';

const [R, f] = [750, 550];
/** As good as a true paraboloid, its mirror reflecting all. */
const smooth = inputOf({
  dish: smoothDish(),
  reflector: { reflectance: 1 },
  sun: { slopeErrorMrad: 0, specularityMrad: 0, edgeCurlMrad: 0 },
});

function mapOf(
  input: OpticsInput,
  angleDeg = 1e-9,
  vessel: { readonly radius: number; readonly height: number } | null = null,
) {
  const set = setUp(input);
  const rays = trace({ ...set.settings, pointing: (angleDeg * Math.PI) / 180, rays: 400_000, seed: 5 });
  const options = {
    given: set.areas.mirror * input.reflector.reflectance,
    rim: { radius: R, height: R ** 2 / (4 * f) },
    vessel,
  };
  return { map: beamMap(rays, { cell: 30, across: 60, up: 70 }, options), far: farIntensity(rays, options) };
}

describe('the light round a true paraboloid', () => {
  const { map, far } = mapOf(smooth);

  // light that meets the mirror at radius r runs through the focus and spreads: at distance d beyond it, at the angle φ
  // from the axis, there are (p/d)² suns, with p = 2f/(1 + cos φ) the way from mirror to focus (law of reflection, conic)
  it.each([
    [25, 700],
    [40, 600],
    [40, 900],
    [55, 700],
    [60, 1000],
  ])('thins out beyond the focus at %d° and %d mm as the square of the distance', (degrees, distance) => {
    const phi = (degrees * Math.PI) / 180;
    const p = (2 * f) / (1 + Math.cos(phi));
    let sum = 0;
    const turns = 24;
    // the mean round the axis: single cells scatter
    for (let k = 0; k < turns; k++) {
      const turn = (2 * Math.PI * (k + 0.5)) / turns;
      const across = distance * Math.sin(phi);
      sum += map.at(across * Math.cos(turn), across * Math.sin(turn), f + distance * Math.cos(phi)) / turns;
    }
    expect(Math.abs(sum / (p / distance) ** 2 - 1)).toBeLessThan(0.05);
  });

  it('leaves the cone within the hub dark, and everything outside the rim’s', () => {
    expect(map.at(0, 0, f + 800)).toBe(0);
    // the rim’s ray leaves the focus at 68.6° from the axis
    expect(map.at(1000, 0, f + 200)).toBe(0);
    expect(map.at(-1000, 0, f + 200)).toBe(0);
  });

  it('is (p/d)² times d² in every direction far away, most at the rim', () => {
    const rim = f + R ** 2 / (4 * f);
    expect(far / rim ** 2).toBeGreaterThan(0.9);
    expect(far / rim ** 2).toBeLessThan(1.25);
  });

  it('ends on a vessel that takes it all', () => {
    const { map: shut, far: none } = mapOf(smooth, 1e-9, { radius: 130, height: f });
    expect(none).toBe(0);
    expect(Math.max(...shut.side.slice(Math.ceil(f / 30) * 120))).toBe(0);
  });

  it('gathers on the other side of the axis from the sun when the dish is off it', () => {
    // the image of a far source moves by f·tan of the angle (any textbook of optics): 10°: 97 mm, towards −x
    const { map: off } = mapOf(smooth, 10);
    let [best, place] = [0, 0];
    const row = Math.floor(f / 30);
    for (let column = 0; column < 120; column++) {
      const suns = off.side[row * 120 + column] ?? 0;
      if (suns > best) [best, place] = [suns, (column + 0.5 - 60) * 30];
    }
    expect(Math.abs(place + f * Math.tan(Math.PI / 18))).toBeLessThan(45);
  });

  it('is all there: the light that crosses a level between dish and focus is what the mirror gives back', () => {
    const set = setUp(smooth);
    // of a ray at the angle φ from the axis a cell counts 1/cos φ; every ray of the ring at r rises at cos φ = (f − z)/p
    const rays = trace({ ...set.settings, pointing: 1e-9, rays: 100_000, seed: 2 });
    const whole = beamMap(
      rays,
      { cell: 30, across: 60, up: 30 },
      { given: set.areas.mirror, rim: { radius: R, height: R ** 2 / (4 * f) }, vessel: null },
    );
    let sum = 0;
    for (let x = -1785; x < 1800; x += 30) for (let y = 15; y < 1800; y += 30) sum += 2 * 900 * whole.at(x, y, 400);
    let expected = 0;
    for (let r = 51 + 0.5; r < R; r++) {
      const z = r ** 2 / (4 * f);
      expected += (2 * Math.PI * r * (f + z)) / (f - z);
    }
    expect(Math.abs(sum / expected - 1)).toBeLessThan(0.01);
  });
});

describe('limits', () => {
  it('are the published ones for skin', () => {
    // 20 000·t^¼ J/m² in t seconds (ICNIRP 2013, from memory): in 1 s 20 kW/m², in 10 s 3557 W/m²
    expect(secondsToSkinHurt(20_000)).toBeCloseTo(1, 9);
    expect(SKIN_LIMIT).toBeCloseTo(3556.6, 1);
    expect(secondsToSkinHurt(3500)).toBe(Infinity);
  });

  it('are the published ones for eyes, with the sun as the narrowest source', () => {
    // by hand: retina/eye = (2/(17·ω))²/2. At 2.5 suns ω = 9.3·√2.5 = 14.7 mrad: 2500 W/m² give 0.25·0.5·(0.1176/0.0147)² =
    // 8.0 W/cm², and 0.118/0.0147 = 8.0 W/cm² burns
    expect(burnSuns).toBeGreaterThan(2.45);
    expect(burnSuns).toBeLessThan(2.58);
    // at 0.0105 suns ω = 0.953 mrad: 10.5 W/m² give 0.00105·0.5·(0.1176/0.000953)² = 8.0 W/cm²; 3.59e-5/ω^1.77 = 7.9
    expect(dazzleSuns).toBeGreaterThan(0.01);
    expect(dazzleSuns).toBeLessThan(0.0108);
  });
});

describe('where a dish burns', () => {
  const result = burnMaps({ ...inputOf(), sun: { ...inputOf().sun, parkedAngleDeg: 100 } }, 1, 32_768);
  const state = (kind: string, angleDeg: number, vessel: boolean) =>
    result.burn.states.find((one) => one.kind === kind && one.angleDeg === angleDeg && one.vessel === vessel)!;

  it('is stated for every stand, with the vessel and without', () => {
    expect(result.burn.states.map(({ kind, angleDeg, vessel }) => `${kind} ${angleDeg} ${vessel}`)).toEqual(
      [0, 5, 10, 20, 30, 45, 60, 100].flatMap((angle) =>
        [true, false].map((vessel) => `${angle === 0 ? 'aimed' : angle === 100 ? 'parked' : 'off'} ${angle} ${vessel}`),
      ),
    );
  });

  it('reaches less far the more suns are asked for, and farther without the vessel', () => {
    for (const { reach } of result.burn.states)
      for (let i = 1; i < reach.length; i++) expect(reach[i]!.fromFocus).toBeLessThanOrEqual(reach[i - 1]!.fromFocus);
    expect(state('aimed', 0, false).harmless.eyes).toBeGreaterThan(2 * state('aimed', 0, true).harmless.eyes);
  });

  it('is nowhere with the sun behind the dish', () => {
    const { reach, harmless } = state('parked', 100, false);
    expect(reach.map(({ fromFocus }) => fromFocus)).toEqual([0, 0, 0, 0]);
    expect(harmless).toEqual({ skin: 0, glance: 0, eyes: 0 });
  });

  it('follows the sun’s height at noon for a dish that lies on its back', () => {
    const site = { latitudeDeg: 45, longitudeDeg: 0, date: '2026-06-21', altitudeM: 0, minElevationDeg: 15 };
    const parked = burnMaps(inputOf({ site }), 1, 4096).burn.states.find(({ kind }) => kind === 'parked');
    // latitude less the declination of the solstice, 23.44° (any almanac)
    expect(Math.abs(parked!.angleDeg - (45 - 23.44))).toBeLessThan(0.05);
    expect(burnMaps(inputOf(), 1, 4096).burn.states.some(({ kind }) => kind === 'parked')).toBe(false);
  });

  it('is said in rows and drawn from the side and from above', () => {
    const rows = burnRows(result.burn, (mm) => `${mm.toFixed(0)} mm`);
    expect(rows).toHaveLength(16);
    expect(rows.at(-1)).toEqual(['parked, 100° off, bare', '-', '-', '-', '-', '-', '-', '-']);
    expect(burnNotes(result.burn).join(' ')).toContain('5 suns: 6.3 s');
    const [side, plan] = burnPlots(result, 'mm');
    for (const plot of [side, plan]) expect(plot?.svg.match(/<rect /g)).toHaveLength(16);
  });
});
