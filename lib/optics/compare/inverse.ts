/** From a measured quantity back to the waviness that gives it, with what its uncertainty makes of that. */
import type { Estimate } from '../types.js';

/** Waviness beyond this is no mirror any more, mrad. */
export const MAX_SLOPE_MRAD = 60;
const PRECISION_MRAD = 0.02;

/** The waviness that explains a measurement, or why none does. */
export type SlopeFinding =
  | {
      readonly kind: 'found';
      readonly slopeErrorMrad: number;
      /** One standard error to either side; a bound of the search where the measurement leaves it open. */
      readonly fromMrad: number;
      readonly toMrad: number;
    }
  /** Better than with no waviness at all: something else is off. */
  | { readonly kind: 'too-good' }
  /** Worse than with the greatest waviness looked at. */
  | { readonly kind: 'too-poor' };

/**
 * @param quantity by waviness in mrad; steady, rising or falling
 * @param measured with its standard error
 */
export function slopeThatGives(quantity: (slopeErrorMrad: number) => number, measured: Estimate): SlopeFinding {
  const [atNone, atMost] = [quantity(0), quantity(MAX_SLOPE_MRAD)];
  const sign = atMost > atNone ? 1 : -1;
  const reach = (value: number): number => {
    if (sign * value <= sign * atNone) return 0;
    if (sign * value >= sign * atMost) return MAX_SLOPE_MRAD;
    let [low, high] = [0, MAX_SLOPE_MRAD];
    while (high - low > PRECISION_MRAD) {
      const middle = (low + high) / 2;
      if (sign * quantity(middle) < sign * value) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  };
  const { value, standardError } = measured;
  const fromMrad = reach(value - sign * standardError);
  const toMrad = reach(value + sign * standardError);
  if (toMrad === 0) return { kind: 'too-good' };
  if (fromMrad === MAX_SLOPE_MRAD) return { kind: 'too-poor' };
  return { kind: 'found', slopeErrorMrad: reach(value), fromMrad, toMrad };
}
