import { inInches, type LengthUnit, mmPer } from './length.js';

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

/** `12-3/8`, `3/4`, `7`. */
function fractionText({ integer, over, under }: Fraction): string {
  const fraction = over === 0 ? '' : `${over}/${under}`;
  return fraction === '' ? `${integer}` : integer === 0 ? fraction : `${integer}-${fraction}`;
}

/** `12-3/8"`, `3/4"`, `7"`: inches to 1/`under`. */
export function formatFraction(mm: number, under: number): string {
  const found = nearestFraction(mm, under);
  return `${found.negative ? '-' : ''}${fractionText(found)}"`;
}

/** A rule of inches has no finer lines. */
const RULE = 64;
/** Below this no rule is read, inches: what is thinner is told in thousandths, where its fraction is off. */
const THIN = 1 / 32;
/** By more than this share of it. */
const THIN_SHARE = 0.02;
/** From here on feet are told, inches. */
const FEET_FROM = 24;

/** Inches as a workshop has them: `3/4 in`, `17-23/64 in`, `4 ft 4 in`; sheet metal and gaps in thousandths, `0.021 in`. */
function formatInches(mm: number): string {
  const { error } = nearestFraction(mm, RULE);
  if (Math.abs(mm) < THIN * mmPer.in && Math.abs(error) > THIN_SHARE * Math.abs(mm))
    return `${Number((mm / mmPer.in).toFixed(3))} in`;
  const found = nearestFraction(mm, RULE);
  const feet = found.integer >= FEET_FROM ? Math.floor(found.integer / 12) : 0;
  const rest = { ...found, integer: found.integer - 12 * feet };
  const inches = feet > 0 && rest.integer === 0 && rest.over === 0 ? '' : `${fractionText(rest)} in`;
  const text = feet > 0 ? `${feet} ft ${inches}`.trimEnd() : inches;
  return `${found.negative ? '-' : ''}${text}`;
}

const digitsOf: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 2, m: 3, in: 2, ft: 3 };

/** A film of 0.05 mm is not one of 0.1 mm: below half a millimetre a hundredth counts. */
const usualDigits = (mm: number, unit: LengthUnit): number => digitsOf[unit] + (Math.abs(mm) < 0.5 ? 1 : 0);

/**
 * A length in the user's unit, with its unit: `450 mm`, `17-23/32 in`.
 * @param digits decimals at most; left out: a tenth of a millimetre, finer for what is thin, inches in fractions and feet
 */
export function formatLength(mm: number, unit: LengthUnit, digits?: number): string {
  if (digits === undefined && inInches(unit)) return formatInches(mm);
  const value = Number((mm / mmPer[unit]).toFixed(digits ?? usualDigits(mm, unit)));
  return `${value} ${unit}`;
}
