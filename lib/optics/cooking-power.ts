/**
 * Standardised cooking power after ASAE S580.1 (Testing and reporting solar cooker performance; from memory): the
 * water's gain over ten minutes, scaled to 700 W/m², fitted by a straight line against the difference to the air, and
 * read at 50 K.
 */
import { element } from '../geometry/index.js';
import { type Body, dryLoss } from './heat.js';
import type { Air } from './types.js';

const STANDARD_IRRADIANCE = 700;
const STANDARD_DIFFERENCE = 50;
const INTERVAL_SECONDS = 600;
/** The standard's load: 7 kg of water for each square metre that takes in the sun. */
const LOAD_KG_PER_M2 = 7;
const WATER_J_PER_KG_K = 4186;
/** Readings run from 5 K above the air to 5 K below boiling. */
const MARGIN = 5;

export type CookingPower =
  | {
      readonly kind: 'fitted';
      readonly powerW: number;
      readonly loadKg: number;
      /** Fitted line: watts at no difference, and watts lost for each kelvin. */
      readonly interceptW: number;
      readonly slopeWPerK: number;
      readonly intervals: number;
    }
  | { readonly kind: 'too-few-intervals' };

/** Temperature after some seconds, by the classical fourth-order rule. */
function heated(body: Body, air: Air, powerW: number, loadKg: number, from: number, seconds: number): number {
  const steps = 60;
  const h = seconds / steps;
  const rate = (t: number) => (powerW - dryLoss(body, t, air)) / (loadKg * WATER_J_PER_KG_K);
  let t = from;
  for (let i = 0; i < steps; i++) {
    const a = rate(t);
    const b = rate(t + (h / 2) * a);
    const c = rate(t + (h / 2) * b);
    const d = rate(t + h * c);
    t += (h / 6) * (a + 2 * b + 2 * c + d);
  }
  return t;
}

/**
 * @param powerW taken up at `irradianceWPerM2`
 * @param apertureM2 area that takes in the sun
 * @param boilingPointC of water at the place
 */
export function cookingPower(
  body: Body,
  air: Air,
  powerW: number,
  irradianceWPerM2: number,
  apertureM2: number,
  boilingPointC: number,
): CookingPower {
  const loadKg = LOAD_KG_PER_M2 * apertureM2;
  const differences: number[] = [];
  const powers: number[] = [];
  let t = air.ambientC + MARGIN;
  while (t < boilingPointC - MARGIN && differences.length < 500) {
    const next = heated(body, air, powerW, loadKg, t, INTERVAL_SECONDS);
    // a reading that boils, or no longer rises, is none
    if (next > boilingPointC || next - t < 0.01) break;
    differences.push((t + next) / 2 - air.ambientC);
    powers.push(
      ((loadKg * WATER_J_PER_KG_K * (next - t)) / INTERVAL_SECONDS) * (STANDARD_IRRADIANCE / irradianceWPerM2),
    );
    t = next;
  }
  const n = differences.length;
  if (n < 3) return { kind: 'too-few-intervals' };
  const meanX = differences.reduce((sum, x) => sum + x, 0) / n;
  const meanY = powers.reduce((sum, y) => sum + y, 0) / n;
  const slope =
    differences.reduce((sum, x, i) => sum + (x - meanX) * (element(powers, i) - meanY), 0) /
    differences.reduce((sum, x) => sum + (x - meanX) ** 2, 0);
  const interceptW = meanY - slope * meanX;
  return {
    kind: 'fitted',
    powerW: interceptW + slope * STANDARD_DIFFERENCE,
    loadKg,
    interceptW,
    slopeWPerK: slope,
    intervals: n,
  };
}
