import { type LengthUnit, mmPer } from './length.js';

/** An inch measure as a person reads it off a rule. */
export interface Fraction {
  readonly negative: boolean;
  readonly integer: number;
  readonly over: number;
  readonly under: number;
  /** What rounding has added, mm: shown value less true value. */
  readonly error: number;
}

/** The nearest inch fraction with a denominator of at most `under` (a power of two), in lowest terms. */
export function nearestFraction(mm: number, under: number): Fraction {
  const inches = Math.abs(mm) / 25.4;
  const parts = Math.round(inches * under);
  const integer = Math.floor(parts / under);
  let over = parts - integer * under;
  let denominator = under;
  while (over > 0 && over % 2 === 0) {
    over /= 2;
    denominator /= 2;
  }
  const negative = mm < 0 && parts > 0;
  return { negative, integer, over, under: over === 0 ? 1 : denominator, error: (parts / under) * 25.4 - Math.abs(mm) };
}

/** `12-3/8"`, `3/4"`, `7"`: inches to 1/`under`. */
export function formatFraction(mm: number, under: number): string {
  const { negative, integer, over, under: denominator } = nearestFraction(mm, under);
  const fraction = over === 0 ? '' : `${over}/${denominator}`;
  const body = fraction === '' ? `${integer}` : integer === 0 ? fraction : `${integer}-${fraction}`;
  return `${negative ? '-' : ''}${body}"`;
}

const digitsOf: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 2, m: 3, in: 2, ft: 3 };

/** A film of 0.05 mm is not one of 0.1 mm: below half a millimetre a hundredth counts. */
const usualDigits = (mm: number, unit: LengthUnit): number => digitsOf[unit] + (Math.abs(mm) < 0.5 ? 1 : 0);

/**
 * A length in the user's unit, with its unit: `450 mm`, `17.72 in`.
 * @param digits decimals at most, a tenth of a millimetre when left out, finer for what is thin; trailing zeros are dropped
 */
export function formatLength(mm: number, unit: LengthUnit, digits: number = usualDigits(mm, unit)): string {
  const value = Number((mm / mmPer[unit]).toFixed(digits));
  return `${Object.is(value, -0) ? 0 : value} ${unit}`;
}
