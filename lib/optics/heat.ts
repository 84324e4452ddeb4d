/** What the vessel loses, how it heats up, and how hot it gets. Temperatures in °C. */
import type { Air, Load, Vessel } from './types.js';

/** Stefan-Boltzmann constant, W/(m² K⁴), exact since 2019 (CODATA). */
export const stefanBoltzmann = 5.670374419e-8;
const ZERO_C = 273.15;
/** A vessel stands this much higher than its content. */
const HEADROOM = 1.2;
/** Points of the heat-up curve. */
const CURVE_POINTS = 120;

/**
 * Heat transfer by wind, W/(m² K): 2.8 + 3.0·v (Watmuff, Charters and Proctor, 1977, in Duffie and Beckman, Solar
 * Engineering of Thermal Processes, chapter on heat transfer; from memory). Holds for 0 to 7 m/s.
 */
export function windCoefficient(windMPerS: number): number {
  return 2.8 + 3 * windMPerS;
}

/**
 * Surface that loses heat, m²: a closed upright cylinder as wide as the vessel and a fifth higher than its content;
 * without a load both faces of a disc.
 */
export function lossArea(vessel: Vessel, massKg: number, densityKgPerM3: number): number {
  const radius = vessel.diameter / 2000;
  const face = Math.PI * radius * radius;
  if (massKg <= 0) return 2 * face;
  const height = (HEADROOM * massKg) / densityKgPerM3 / face;
  return 2 * face + 2 * Math.PI * radius * height;
}

/** Heat lost by a surface at one temperature to wind and surroundings at the air's temperature, W. */
export function heatLoss(areaM2: number, emittance: number, temperatureC: number, air: Air): number {
  const [hot, cold] = [temperatureC + ZERO_C, air.ambientC + ZERO_C];
  return (
    areaM2 * (windCoefficient(air.windMPerS) * (hot - cold) + emittance * stefanBoltzmann * (hot ** 4 - cold ** 4))
  );
}

/** Temperature at which a surface loses what it takes up, to 0.001 K. */
export function stagnation(powerW: number, areaM2: number, emittance: number, air: Air): number {
  let low = air.ambientC;
  let high = air.ambientC + 10;
  while (heatLoss(areaM2, emittance, high, air) < powerW) high = air.ambientC + 2 * (high - air.ambientC);
  while (high - low > 1e-3) {
    const middle = (low + high) / 2;
    if (heatLoss(areaM2, emittance, middle, air) < powerW) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * Seconds to bring a load from one temperature to another: ∫ m·c/(P − loss(T)) dT by Simpson's rule; infinite when the
 * power cannot hold the target.
 */
export function secondsBetween(
  load: Load,
  areaM2: number,
  emittance: number,
  air: Air,
  powerW: number,
  fromC: number,
  toC: number,
): number {
  const gain = (temperature: number) => powerW - heatLoss(areaM2, emittance, temperature, air);
  if (gain(Math.max(fromC, toC)) <= 0) return Infinity;
  const intervals = 200;
  const step = (toC - fromC) / intervals;
  let sum = 0;
  for (let i = 0; i <= intervals; i++)
    sum += (i === 0 || i === intervals ? 1 : i % 2 === 0 ? 2 : 4) / gain(fromC + i * step);
  return (load.massKg * load.heatCapacityJPerKgK * sum * step) / 3;
}

export interface HeatPoint {
  readonly minutes: number;
  readonly temperatureC: number;
}

/** The heat-up from start to `toC`, evenly spaced in temperature. */
export function heatCurve(
  load: Load,
  areaM2: number,
  emittance: number,
  air: Air,
  powerW: number,
  toC: number,
): HeatPoint[] {
  let seconds = 0;
  const step = (toC - load.startC) / CURVE_POINTS;
  return Array.from({ length: CURVE_POINTS + 1 }, (_, i) => {
    const temperatureC = load.startC + i * step;
    if (i > 0) seconds += secondsBetween(load, areaM2, emittance, air, powerW, temperatureC - step, temperatureC);
    return { minutes: seconds / 60, temperatureC };
  });
}
