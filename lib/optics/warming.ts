/** The thermal half of the forecast: from watts to minutes and degrees. */
import { standardPressure, waterBoilingC } from './atmosphere.js';
import { type CookingPower, cookingPower } from './cooking-power.js';
import { scaled } from './estimate.js';
import { heatCurve, heatLoss, type HeatPoint, lossArea, secondsBetween, stagnation } from './heat.js';
import type { SetUp } from './set-up.js';
import type { Estimate, OpticsInput } from './types.js';

/** How the load warms. */
export type Warming =
  | { readonly kind: 'no-load' }
  | {
      readonly kind: 'reached';
      readonly minutes: Estimate;
      readonly lossAtTargetW: number;
      readonly curve: readonly HeatPoint[];
    }
  | {
      readonly kind: 'out-of-reach';
      /** Highest temperature that the load comes to, without boiling. */
      readonly reachableC: Estimate;
      readonly curve: readonly HeatPoint[];
    };

export interface Heat {
  readonly lossAreaM2: number;
  readonly warming: Warming;
  /** Temperature of the closed vessel, or of a bare disc without a load, when nothing takes its heat away. */
  readonly stagnationC: Estimate;
  /** The hottest that a small dark plate, insulated behind, gets in the brightest spot. */
  readonly brightSpotC: Estimate;
  readonly cooking: CookingPower;
}

/** Stops this far below what is reachable: the last kelvin takes for ever. */
const SHORT_OF_REACH = 1;

/** A value that follows from a power, with the error that the power's gives it. */
function following(of: (powerW: number) => number, power: Estimate): Estimate {
  const value = of(power.value);
  const step = Math.max(1e-6 * Math.abs(power.value), power.standardError);
  if (step === 0) return { value, standardError: 0 };
  const rise = (of(power.value + step) - of(power.value - step)) / (2 * step);
  return { value, standardError: Math.abs(rise) * power.standardError };
}

/**
 * @param takenUpW what the vessel takes up
 * @param peakSuns brightness of the brightest spot, times the direct irradiance
 */
export function heatForecast(input: OpticsInput, set: SetUp, takenUpW: Estimate, peakSuns: Estimate): Heat {
  const { vessel, air, load, site } = input;
  const waterBoils = waterBoilingC(standardPressure(site?.altitudeM ?? 0));
  const { emittance } = vessel;
  const area = lossArea(vessel, load?.massKg ?? 0, load?.densityKgPerM3 ?? 1000);
  const peakW = scaled(peakSuns, set.irradianceWPerM2 * vessel.absorptance);
  return {
    lossAreaM2: area,
    warming: warm(input, takenUpW, area),
    stagnationC: following((power) => stagnation(power, area, emittance, air), takenUpW),
    brightSpotC: following((power) => stagnation(power, 1, emittance, air), peakW),
    cooking: cookingPower(
      vessel,
      air,
      takenUpW.value,
      set.irradianceWPerM2,
      set.areas.aperture / 1e6,
      Math.min(load?.boilingPointC ?? waterBoils, waterBoils),
    ),
  };
}

function warm({ vessel: { emittance }, air, load }: OpticsInput, takenUpW: Estimate, area: number): Warming {
  if (load === null) return { kind: 'no-load' };
  const seconds = (power: number) => secondsBetween(load, area, emittance, air, power, load.startC, load.targetC);
  if (Number.isFinite(seconds(takenUpW.value)))
    return {
      kind: 'reached',
      minutes: following((power) => seconds(power) / 60, takenUpW),
      lossAtTargetW: heatLoss(area, emittance, load.targetC, air),
      curve: heatCurve(load, area, emittance, air, takenUpW.value, load.targetC),
    };
  const reachableC = following((power) => stagnation(power, area, emittance, air), takenUpW);
  const top = reachableC.value - SHORT_OF_REACH;
  return {
    kind: 'out-of-reach',
    reachableC,
    curve: top > load.startC ? heatCurve(load, area, emittance, air, takenUpW.value, top) : [],
  };
}
