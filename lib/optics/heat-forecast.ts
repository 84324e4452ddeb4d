/** The thermal half of the forecast: from watts to minutes and degrees. */
import { standardPressure, waterBoilingC } from './atmosphere.js';
import { type CookingPower, cookingPower } from './cooking-power.js';
import { scaled } from './estimate.js';
import { usualMaxFlux, wallTemperature } from './filling.js';
import { type Defocus, defocus } from './hanging.js';
import { type Body, bodyOf, heatLoss, isWet, stagnation } from './heat.js';
import type { SetUp } from './set-up.js';
import type { Rays } from './trace.js';
import type { Air, Estimate, Load, OpticsInput, Vessel } from './types.js';
import { endOf, heatCurve, type Heated, type HeatPoint, secondsBetween, steamRate, wallHeat } from './warming.js';

/** How the load warms. */
export type Warming =
  | { readonly kind: 'no-load' }
  | {
      readonly kind: 'reached';
      readonly minutes: Estimate;
      readonly endC: number;
      /** Whether the end is the boil; then the steam that follows, kg/h. */
      readonly boils: boolean;
      readonly steamKgPerHour: Estimate;
      readonly lossAtEndW: number;
      readonly curve: readonly HeatPoint[];
    }
  | {
      readonly kind: 'out-of-reach';
      /** Highest temperature that the load comes to, without boiling. */
      readonly reachableC: Estimate;
      readonly curve: readonly HeatPoint[];
    };

/** The hottest place of the wall. */
export interface HotSpot {
  /** Heat that it takes up, W/m², when the dish is aimed true. */
  readonly fluxWPerM2: Estimate;
  readonly limitWPerM2: number | null;
  /** Temperature of the wall there at the end of the warming: inside and outside; null with a solid or no load. */
  readonly insideC: number | null;
  readonly outsideC: number | null;
  /** How to hang it so that the limit is kept, and what that costs; null where it is kept or nothing does. */
  readonly defocus: (Defocus & { readonly costW: number }) | null;
}

export interface Heat {
  readonly body: Body;
  readonly warming: Warming;
  /** Temperature of the closed and empty vessel when nothing takes its heat away. */
  readonly stagnationC: Estimate;
  /** The hottest that a small dark plate, insulated behind, gets in the brightest spot. */
  readonly brightSpotC: Estimate;
  readonly hotSpot: HotSpot;
  readonly cooking: CookingPower;
}

/** Stops this far below what is reachable: the last kelvin takes for ever. */
const SHORT_OF_REACH = 1;

/** A value that follows from a power, with the error that the power's gives it. */
function following(of: (powerW: number) => number, power: Estimate): Estimate {
  const value = of(power.value);
  const step = Math.max(1e-6 * Math.abs(power.value), power.standardError);
  if (step === 0 || !Number.isFinite(value)) return { value, standardError: 0 };
  const rise = (of(power.value + step) - of(power.value - step)) / (2 * step);
  return { value, standardError: Number.isFinite(rise) ? Math.abs(rise) * power.standardError : 0 };
}

/** The vessel with its load, or null without one. */
export function heatedOf({ vessel, load, day, site }: OpticsInput): Heated | null {
  if (vessel === null || load === null) return null;
  return {
    load,
    body: bodyOf(vessel, isWet(load)),
    wallJPerK: wallHeat(vessel),
    damp: { humidity: day.humidity, altitudeM: site?.altitudeM ?? 0 },
  };
}

/** Temperature at which the load loses what it takes up: the most that it comes to. */
function balance(heated: Heated, air: Air, powerW: number): number {
  const { body, damp, load } = heated;
  let low = air.ambientC;
  let high = load.boilingPointC ?? stagnation(Math.max(powerW, 0), { ...body, openArea: 0 }, air) + 1;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (heatLoss(body, middle, air, damp) < powerW) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function warm(heated: Heated | null, air: Air, takenUpW: Estimate): Warming {
  if (heated === null) return { kind: 'no-load' };
  const { load } = heated;
  const endC = endOf(load);
  const seconds = (power: number) => secondsBetween(heated, air, power, load.startC, endC);
  if (Number.isFinite(seconds(takenUpW.value)))
    return {
      kind: 'reached',
      minutes: following((power) => seconds(power) / 60, takenUpW),
      endC,
      boils: endC === load.boilingPointC,
      steamKgPerHour: following((power) => steamRate(heated, air, power), takenUpW),
      lossAtEndW: heatLoss(heated.body, endC, air, heated.damp),
      curve: heatCurve(heated, air, takenUpW.value, endC),
    };
  const reachableC = following((power) => balance(heated, air, power), takenUpW);
  const top = reachableC.value - SHORT_OF_REACH;
  return {
    kind: 'out-of-reach',
    reachableC,
    curve: top > load.startC ? heatCurve(heated, air, takenUpW.value, top) : [],
  };
}

/** Highest flux that a load stands in one place, W/m². */
const fluxLimit = (load: Load | null): number | null =>
  load === null ? null : (load.maxFluxWPerM2 ?? usualMaxFlux(load.filling));

function hotSpotOf(
  input: OpticsInput,
  vessel: Vessel,
  set: SetUp,
  rays: Rays,
  hottestSuns: Estimate,
  takenUpW: number,
): HotSpot {
  const { load } = input;
  const fluxWPerM2 = scaled(hottestSuns, set.irradianceWPerM2);
  const limitWPerM2 = fluxLimit(load);
  const insideC = load && wallTemperature(load, endOf(load), fluxWPerM2.value);
  const over = limitWPerM2 !== null && fluxWPerM2.value > limitWPerM2;
  const dimmed = over ? defocus(input, set, rays, limitWPerM2) : null;
  return {
    fluxWPerM2,
    limitWPerM2,
    insideC,
    outsideC:
      insideC === null
        ? null
        : insideC + (fluxWPerM2.value * vessel.wall.thickness) / 1000 / vessel.wall.conductivityWPerMK,
    defocus: dimmed && { ...dimmed, costW: takenUpW - dimmed.takenUpW },
  };
}

/** What follows from the power alone: warming, stagnation and cooking power. */
export function balanceOf(
  input: OpticsInput,
  vessel: Vessel,
  set: SetUp,
  takenUpW: Estimate,
): Pick<Heat, 'body' | 'warming' | 'stagnationC' | 'cooking'> {
  const { load, site } = input;
  const { air } = set;
  const waterBoils = waterBoilingC(standardPressure(site?.altitudeM ?? 0));
  const closed = bodyOf(vessel, false);
  return {
    body: bodyOf(vessel, isWet(load)),
    warming: warm(heatedOf(input), air, takenUpW),
    stagnationC: following((power) => stagnation(power, closed, air), takenUpW),
    cooking: cookingPower(
      closed,
      air,
      takenUpW.value,
      set.irradianceWPerM2,
      set.areas.aperture / 1e6,
      Math.min(load?.boilingPointC ?? waterBoils, waterBoils),
    ),
  };
}

/**
 * @param takenUpW what the vessel takes up
 * @param peakSuns brightness of the brightest spot, times the direct irradiance
 * @param hottestSuns the same times the absorptance of the surface there
 * @param rays to look for a dimmer place with
 */
export function heatForecast(
  input: OpticsInput,
  vessel: Vessel,
  set: SetUp,
  takenUpW: Estimate,
  peakSuns: Estimate,
  hottestSuns: Estimate,
  rays: Rays,
): Heat {
  const plate: Body = {
    bareArea: 1,
    insulatedArea: 0,
    insulationCoefficient: 0,
    openArea: 0,
    emittance: vessel.emittance,
  };
  const peakW = scaled(peakSuns, set.irradianceWPerM2 * vessel.baseAbsorptance);
  return {
    ...balanceOf(input, vessel, set, takenUpW),
    brightSpotC: following((power) => stagnation(power, plate, set.air), peakW),
    hotSpot: hotSpotOf(input, vessel, set, rays, hottestSuns, takenUpW.value),
  };
}
