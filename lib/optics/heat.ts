/** What the vessel loses, and how hot it gets. Temperatures in °C. */
import { vapourPressure, standardPressure } from './atmosphere.js';
import { evaporationHeat } from './water.js';
import type { Air, Load, Vessel } from './types.js';

/** Stefan-Boltzmann constant, W/(m² K⁴), exact since 2019 (CODATA). */
export const stefanBoltzmann = 5.670374419e-8;
const ZERO_C = 273.15;
/** The wind's formula is measured up to here, m/s. */
export const maxWind = 7;

/**
 * Heat transfer by wind, W/(m² K): 2.8 + 3.0·v (Watmuff, Charters and Proctor, 1977, in Duffie and Beckman, Solar
 * Engineering of Thermal Processes, chapter on heat transfer; from memory). Holds for 0 to 7 m/s.
 */
export function windCoefficient(windMPerS: number): number {
  return 2.8 + 3 * windMPerS;
}

/** What of a vessel loses heat. Areas in m². */
export interface Body {
  readonly bareArea: number;
  readonly insulatedArea: number;
  /** Conductivity over thickness of the insulation, W/(m² K). */
  readonly insulationCoefficient: number;
  /** Surface of an uncovered liquid. */
  readonly openArea: number;
  readonly emittance: number;
}

/** Emittance of open water (handbooks, from memory). */
const WATER_EMITTANCE = 0.96;

/** The body of a vessel; a load that cannot evaporate has no open surface. */
export function bodyOf(vessel: Vessel, wet: boolean): Body {
  const { kind, diameter, height, opening, insulation, emittance } = vessel;
  const face = (Math.PI * diameter * diameter) / 4e6;
  const side = (Math.PI * diameter * height) / 1e6;
  const insulated = insulation.thickness > 0;
  const insulationCoefficient = insulated ? (1000 * insulation.conductivityWPerMK) / insulation.thickness : 0;
  if (kind === 'cavity') {
    const mouth = (Math.PI * opening * opening) / 4e6;
    const rest = 2 * face + side - mouth;
    // the mouth is as good as black, whatever the walls are
    return insulated
      ? { bareArea: mouth, insulatedArea: rest, insulationCoefficient, openArea: 0, emittance: 1 }
      : { bareArea: mouth + rest, insulatedArea: 0, insulationCoefficient, openArea: 0, emittance };
  }
  const open = wet && !vessel.lid && kind === 'pot';
  const lid = open ? 0 : face;
  return {
    bareArea: insulated ? face : face + side + lid,
    insulatedArea: insulated ? side + lid : 0,
    insulationCoefficient,
    openArea: open ? face : 0,
    emittance,
  };
}

/** Heat lost by a bare surface to wind and surroundings at the air's temperature, W/m². */
export function bareLoss(emittance: number, temperatureC: number, air: Air): number {
  const [hot, cold] = [temperatureC + ZERO_C, air.ambientC + ZERO_C];
  return windCoefficient(air.windMPerS) * (hot - cold) + emittance * stefanBoltzmann * (hot ** 4 - cold ** 4);
}

/** The same through insulation, W/m²: the outside's temperature is that at which as much leaves it as comes through. */
function insulatedLoss(coefficient: number, emittance: number, temperatureC: number, air: Air): number {
  let [low, high] = [Math.min(air.ambientC, temperatureC), Math.max(air.ambientC, temperatureC)];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (bareLoss(emittance, middle, air) < coefficient * (temperatureC - middle)) low = middle;
    else high = middle;
  }
  return coefficient * (temperatureC - (low + high) / 2);
}

/** Heat lost without what evaporates, W. */
export function dryLoss(body: Body, temperatureC: number, air: Air): number {
  const { bareArea, insulatedArea, insulationCoefficient, openArea, emittance } = body;
  return (
    bareArea * bareLoss(emittance, temperatureC, air) +
    (insulatedArea > 0 ? insulatedArea * insulatedLoss(insulationCoefficient, emittance, temperatureC, air) : 0) +
    (openArea > 0 ? openArea * bareLoss(WATER_EMITTANCE, temperatureC, air) : 0)
  );
}

/** What an open surface needs to know of the place. */
export interface Damp {
  readonly humidity: number;
  readonly altitudeM: number;
}

/**
 * Water that leaves an open surface, kg/s: the analogy of heat and mass transfer, h/(ρ·c·Le^(2/3)) with Le = 0.85 for
 * water in air (Lewis; Chilton and Colburn 1934), with Stefan's correction for what flows away with it, p/pm (both in
 * Incropera and DeWitt, Fundamentals of Heat and Mass Transfer; from memory). The surface lies below the rim, out of
 * the wind.
 */
export function evaporation(areaM2: number, temperatureC: number, air: Air, damp: Damp): number {
  if (areaM2 <= 0) return 0;
  const pressure = standardPressure(damp.altitudeM);
  // at the boil the film's logarithm grows beyond bounds; there steam is what the power makes
  const above = Math.min(vapourPressure(Math.max(0.01, temperatureC)), 0.97 * pressure);
  const around = damp.humidity * vapourPressure(Math.max(0.01, air.ambientC));
  if (above <= around) return 0;
  const filmK = (temperatureC + air.ambientC) / 2 + ZERO_C;
  const density = (pressure * 100) / (287 * filmK);
  const transfer = windCoefficient(0) / (density * 1007 * 0.85 ** (2 / 3));
  // Stefan: p·ln((p − p∞)/(p − p₀)) in place of p₀ − p∞
  const drive = pressure * Math.log((pressure - around) / (pressure - above));
  return (areaM2 * transfer * drive * 100) / (461.5 * filmK);
}

/** Heat lost in all, W. */
export function heatLoss(body: Body, temperatureC: number, air: Air, damp: Damp): number {
  const dry = dryLoss(body, temperatureC, air);
  if (body.openArea === 0) return dry;
  return dry + evaporation(body.openArea, temperatureC, air, damp) * evaporationHeat(Math.max(1, temperatureC));
}

/** Temperature at which a body loses what it takes up with nothing in it that boils, to 0.001 K. */
export function stagnation(powerW: number, body: Body, air: Air): number {
  const dry: Body = { ...body, bareArea: body.bareArea + body.openArea, openArea: 0 };
  let low = air.ambientC;
  let high = air.ambientC + 10;
  while (dryLoss(dry, high, air) < powerW) high = air.ambientC + 2 * (high - air.ambientC);
  while (high - low > 1e-3) {
    const middle = (low + high) / 2;
    if (dryLoss(dry, middle, air) < powerW) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Whether water can leave the load. */
export const isWet = (load: Load | null): boolean => load !== null && load.boilingPointC !== null;
