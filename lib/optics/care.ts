/** The same dish built with good, usual and poor care: one number promises too much. */
import type { Estimate, OpticsInput } from './types.js';
import type { Forecast } from './forecast.js';

/** The quantities that care moves. */
export interface CareValues {
  /** Waviness that the care stands for. */
  readonly slopeErrorMrad: number;
  readonly intercept: Estimate;
  readonly radius90: Estimate;
  readonly peakSuns: Estimate;
  readonly takenUpW: Estimate;
  /** Null without a load, and when its target is out of reach. */
  readonly minutesToTarget: Estimate | null;
  readonly stagnationC: Estimate;
  /** Standardised; null when too few intervals fit below boiling. */
  readonly cookingPowerW: number | null;
  readonly toleranceDeg: Estimate;
}

export const careLevels = ['good', 'usual', 'poor'] as const;
export type CareLevel = (typeof careLevels)[number];
export type Care = Readonly<Record<CareLevel, CareValues>>;

/** Waviness at each level, mrad. */
export function slopeErrorAt({ sun }: OpticsInput, level: CareLevel): number {
  return { good: sun.slopeErrorGoodMrad, usual: sun.slopeErrorMrad, poor: sun.slopeErrorPoorMrad }[level];
}

/** What a forecast says of them. */
export function careValues(
  slopeErrorMrad: number,
  { spot, concentration, power, heat, pointing }: Omit<Forecast, 'care'>,
): CareValues {
  return {
    slopeErrorMrad,
    intercept: spot.intercept,
    radius90: spot.radius90,
    peakSuns: concentration.peak,
    takenUpW: power.takenUpW,
    minutesToTarget: heat.warming.kind === 'reached' ? heat.warming.minutes : null,
    stagnationC: heat.stagnationC,
    cookingPowerW: heat.cooking.kind === 'fitted' ? heat.cooking.powerW : null,
    toleranceDeg: pointing.toleranceDeg,
  };
}
