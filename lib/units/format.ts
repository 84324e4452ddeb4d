import { type LengthUnit, mmPer } from './length.js';

/** An inch measure as a person reads it off a rule. */
export interface Fraction {
  readonly negative: boolean;
  readonly integer: number;
  readonly numerator: number;
  readonly denominator: number;
  /** What rounding has added, mm: shown value less true value. */
  readonly error: number;
}

/** The nearest inch fraction with a denominator of at most `finest` (a power of two), in lowest terms. */
export function nearestFraction(mm: number, finest: number): Fraction {
  const size = Math.abs(mm);
  const steps = Math.round((size / mmPer.in) * finest);
  const integer = Math.floor(steps / finest);
  let numerator = steps % finest;
  let denominator = finest;
  while (denominator > 1 && numerator % 2 === 0) {
    numerator /= 2;
    denominator /= 2;
  }
  return {
    negative: Math.sign(mm) * steps < 0,
    integer,
    numerator,
    denominator,
    error: (steps / finest) * mmPer.in - size,
  };
}

/** `12-3/8"`, `3/4"`, `7"`: inches to 1/`finest`. */
export function formatFraction(mm: number, finest: number): string {
  const { negative, integer, numerator, denominator } = nearestFraction(mm, finest);
  const terms = [integer > 0 || numerator === 0 ? [integer] : [], numerator > 0 ? [`${numerator}/${denominator}`] : []];
  return `${negative ? '-' : ''}${terms.flat().join('-')}"`;
}

const digitsOf: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 2, m: 3, in: 2, ft: 3 };

/**
 * A length in the user's unit, with its unit: `450 mm`, `17.72 in`.
 * @param digits decimals at most; trailing zeros are dropped
 */
export function formatLength(mm: number, unit: LengthUnit, digits: number = digitsOf[unit]): string {
  return `${Number((mm / mmPer[unit]).toFixed(digits))} ${unit}`;
}
