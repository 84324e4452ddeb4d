import { describe, expect, it } from 'vitest';
import { cookingPower } from '../../lib/optics/cooking-power.js';
import { curlSlope } from '../../lib/optics/edge-curl.js';
import { type Body, bodyOf, dryLoss, stagnation, stefanBoltzmann, windCoefficient } from '../../lib/optics/heat.js';
import type { Load } from '../../lib/optics/index.js';
import { type Heated, heatCurve, secondsBetween } from '../../lib/optics/warming.js';
import { discOf } from './dishes.js';

const load: Load = {
  filling: 'water',
  massKg: 5,
  heatCapacityJPerKgK: 4186,
  densityKgPerM3: 1000,
  startC: 20,
  targetC: 90,
  boilingPointC: 100,
  maxFluxWPerM2: null,
};
const bodyWith = (bareArea: number, emittance: number): Body => ({
  bareArea,
  insulatedArea: 0,
  insulationCoefficient: 0,
  openArea: 0,
  emittance,
});
/** A load in a vessel that weighs nothing. */
const heatedWith = (bareArea: number, emittance: number): Heated => ({
  load,
  body: bodyWith(bareArea, emittance),
  wallJPerK: 0,
  damp: { humidity: 0.5, altitudeM: 0 },
});
const air = { ambientC: 20, windMPerS: 2 };

describe('heat losses', () => {
  it('has the constant of CODATA and a black body’s loss', () => {
    // 2π⁵k⁴/(15h³c²) with the exact constants of the SI of 2019
    const [k, h, c] = [1.380649e-23, 6.62607015e-34, 299_792_458];
    expect(stefanBoltzmann / ((2 * Math.PI ** 5 * k ** 4) / (15 * h ** 3 * c ** 2))).toBeCloseTo(1, 9);
    // 1 m² at 100 °C against 20 °C, radiation alone: 5.670374e-8·(373.15⁴ − 293.15⁴) = 680.6 W, and the wind's share
    expect(dryLoss(bodyWith(1, 1), 100, air) - windCoefficient(2) * 80).toBeCloseTo(680.6, 0);
  });

  it('loses what the older formula for wind and radiation together says', () => {
    // 5.7 + 3.8·v W/m²K holds radiation too (McAdams, Heat Transmission, 1954, as in Duffie and Beckman; from memory);
    // a dark surface 20 K above air of 20 °C. In a near calm, where it takes less radiation, the two stand 21 % apart.
    const ratio = (windMPerS: number) =>
      dryLoss(bodyWith(1, 0.9), 40, { ambientC: 20, windMPerS }) / 20 / (5.7 + 3.8 * windMPerS);
    for (const windMPerS of [2, 3, 4, 5]) expect(Math.abs(ratio(windMPerS) - 1)).toBeLessThan(0.1);
    expect(Math.abs(ratio(1) - 1)).toBeLessThan(0.22);
    // Watmuff, Charters and Proctor 1977, as in Duffie and Beckman (from memory): 2.8 W/m²K in still air, 17.8 at 5 m/s
    expect(windCoefficient(0)).toBeCloseTo(2.8, 12);
    expect(windCoefficient(5)).toBeCloseTo(17.8, 12);
  });

  it('takes the surface of a cylinder', () => {
    const pot = { ...discOf(260), height: 271 };
    expect(bodyOf(pot, true).bareArea).toBeCloseTo(2 * Math.PI * 0.13 ** 2 + 2 * Math.PI * 0.13 * 0.271, 12);
    expect(bodyOf(discOf(300), false).bareArea).toBeCloseTo(2 * Math.PI * 0.15 ** 2, 12);
    // without a lid the top is open water
    const open = bodyOf({ ...pot, lid: false }, true);
    expect(open.openArea).toBeCloseTo(Math.PI * 0.13 ** 2, 12);
    expect(open.bareArea + open.openArea).toBeCloseTo(bodyOf(pot, true).bareArea, 12);
  });

  it('stagnates where radiation and wind carry everything away', () => {
    const hot = stagnation(1000, bodyWith(0.2, 0.9), air);
    expect(dryLoss(bodyWith(0.2, 0.9), hot, air)).toBeCloseTo(1000, 1);
    // radiation alone at a great power: T⁴ = P/(εσA) + Ta⁴, the wind is a small correction downward
    const alone = (1e6 / (0.9 * stefanBoltzmann) + 293.15 ** 4) ** 0.25 - 273.15;
    const both = stagnation(1e6, bodyWith(1, 0.9), { ambientC: 20, windMPerS: 0 });
    expect(both).toBeLessThan(alone);
    expect(both).toBeGreaterThan(0.995 * alone);
  });
});

describe('warming', () => {
  it('takes m·c·ΔT/P without losses', () => {
    expect(secondsBetween(heatedWith(0, 0.9), air, 500, 20, 90)).toBeCloseTo((5 * 4186 * 70) / 500, 6);
  });

  it('takes the logarithm with losses in proportion', () => {
    // no radiation: m·c/(UA)·ln((P − UA·ΔT1)/(P − UA·ΔT2))
    const ua = 0.3 * windCoefficient(2);
    const expected = ((5 * 4186) / ua) * Math.log(500 / (500 - ua * 70));
    expect(secondsBetween(heatedWith(0.3, 0), air, 500, 20, 90)).toBeCloseTo(expected, 4);
  });

  it('never gets there when the losses are greater', () => {
    expect(secondsBetween(heatedWith(2, 0.9), air, 500, 20, 90)).toBe(Infinity);
  });

  it('draws a curve that ends at the target after that time', () => {
    const curve = heatCurve(heatedWith(0.3, 0.9), air, 500, 90);
    expect(curve[0]).toEqual({ minutes: 0, temperatureC: 20 });
    expect(curve.at(-1)!.temperatureC).toBeCloseTo(90, 9);
    expect(curve.at(-1)!.minutes * 60).toBeCloseTo(secondsBetween(heatedWith(0.3, 0.9), air, 500, 20, 90), 4);
    for (let i = 1; i < curve.length; i++) expect(curve[i]!.minutes).toBeGreaterThan(curve[i - 1]!.minutes);
  });
});

describe('standardised cooking power', () => {
  it('is (P − UA·50)·700/I when losses are in proportion', () => {
    // ASAE S580.1 fits a line over the readings; without radiation the physics is that line, but for the ten-minute steps
    const bare = bodyWith(0.35, 0);
    const loadKg = 7 * 1.5;
    const ua = 0.35 * windCoefficient(2);
    const result = cookingPower(bare, air, 600, 850, 1.5, 100);
    if (result.kind !== 'fitted') throw new Error(result.kind);
    expect(result.loadKg).toBeCloseTo(loadKg, 12);
    const scale = 700 / 850;
    expect(Math.abs(result.powerW / ((600 - ua * 50) * scale) - 1)).toBeLessThan(0.005);
    expect(Math.abs(result.interceptW / (600 * scale) - 1)).toBeLessThan(0.005);
    expect(Math.abs(-result.slopeWPerK / (ua * scale) - 1)).toBeLessThan(0.01);
  });

  it('gives no value from fewer than three readings', () => {
    expect(cookingPower(bodyWith(0.3, 0.9), air, 60_000, 800, 1.5, 100).kind).toBe('too-few-intervals');
    expect(cookingPower(bodyWith(0.3, 0.9), air, 1, 800, 1.5, 100).kind).toBe('too-few-intervals');
  });
});

describe('curl of a bent panel’s edges', () => {
  /** w'''' + 4β⁴w = 0, w(h) = 0, w''(h) = −νκ, even: by differences, solved as a dense system. */
  function byDifferences(kappa: number, t: number, h: number, nu: number, cells: number): number[] {
    const beta4 = (3 * (1 - nu * nu) * kappa * kappa) / (t * t);
    const d = h / cells;
    // unknowns: w at −d…−2d by evenness folded in, one ghost point beyond the edge
    const n = cells + 2;
    const rows: number[][] = [];
    const right: number[] = [];
    const put = (row: number[], k: number, v: number) => {
      row[Math.abs(k)]! += v;
    };
    for (let i = 0; i < cells; i++) {
      const row = new Array<number>(n).fill(0);
      for (const [k, v] of [
        [-2, 1],
        [-1, -4],
        [0, 6],
        [1, -4],
        [2, 1],
      ] as const)
        put(row, i + k, v / d ** 4);
      row[i]! += 4 * beta4;
      rows.push(row);
      right.push(0);
    }
    const edge = new Array<number>(n).fill(0);
    edge[cells] = 1;
    rows.push(edge);
    right.push(0);
    const bend = new Array<number>(n).fill(0);
    [bend[cells - 1], bend[cells], bend[cells + 1]] = [1 / d ** 2, -2 / d ** 2, 1 / d ** 2];
    rows.push(bend);
    right.push(-nu * kappa);
    for (let c = 0; c < n; c++) {
      let p = c;
      for (let r = c + 1; r < n; r++) if (Math.abs(rows[r]![c]!) > Math.abs(rows[p]![c]!)) p = r;
      [rows[c], rows[p]] = [rows[p]!, rows[c]!];
      [right[c], right[p]] = [right[p]!, right[c]!];
      for (let r = c + 1; r < n; r++) {
        const f = rows[r]![c]! / rows[c]![c]!;
        if (f === 0) continue;
        for (let k = c; k < n; k++) rows[r]![k]! -= f * rows[c]![k]!;
        right[r]! -= f * right[c]!;
      }
    }
    const w = new Array<number>(n).fill(0);
    for (let r = n - 1; r >= 0; r--)
      w[r] = (right[r]! - rows[r]!.reduce((sum, v, k) => (k > r ? sum + v * w[k]! : sum), 0)) / rows[r]![r]!;
    return Array.from({ length: cells }, (_, i) => (-(w[i + 1]! - w[Math.abs(i - 1)]!) / (2 * d)) * (i === 0 ? 0 : 1));
  }

  it('is what the plate’s equation gives by differences', () => {
    for (const [kappa, t, h] of [
      [1 / 1300, 3, 98],
      [1 / 1300, 3, 25],
      [1 / 600, 1, 50],
    ] as const) {
      const cells = 160;
      const slopes = byDifferences(kappa, t, h, 0.3, cells);
      const max = curlSlope(kappa, t, h, h);
      for (const i of [40, 80, 120, 150])
        expect(Math.abs(curlSlope(kappa, t, h, (i * h) / cells) - slopes[i]!)).toBeLessThan(0.01 * max);
    }
  });

  it('is the free anticlastic bend in a narrow strip, and half a free edge’s turn in a wide one', () => {
    // narrow: slope νκ·w; wide: νκ/2β at held edges, half of the νκ/β of Ashwell's free ones
    const [kappa, t, nu] = [1 / 1500, 3, 0.3];
    expect(curlSlope(kappa, t, 5, 5, nu) / (nu * kappa * 5)).toBeCloseTo(1, 3);
    const beta = Math.sqrt((Math.sqrt(3 * (1 - nu * nu)) * kappa) / t);
    expect(curlSlope(kappa, t, 2000, 2000, nu) / ((nu * kappa) / (2 * beta))).toBeCloseTo(1, 6);
    expect(curlSlope(kappa, 1e-4, 20_000, 20_000, nu)).toBeGreaterThan(0);
  });

  it('is nothing on the mid-line and for an unbent panel', () => {
    expect(curlSlope(1 / 1500, 3, 90, 0)).toBeCloseTo(0, 12);
    expect(curlSlope(0, 3, 90, 90)).toBe(0);
  });
});
