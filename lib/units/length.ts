/** Text to millimetres: `450`, `450 mm`, `1.2 m`, `3/4 in`, `1-1/2"`, `1 1/2 in`, `2 ft 6 in`, `2' 6"`. */

import { lengthSlip } from './slips.js';

export const lengthUnits = ['mm', 'cm', 'm', 'in', 'ft'] as const;
export type LengthUnit = (typeof lengthUnits)[number];

/** The inch is exactly 25.4 mm by international agreement of 1959. */
export const mmPer: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 10, m: 1000, in: 25.4, ft: 304.8 };

/** Whether a person who measures in that unit buys by the inch and reads an inch rule. */
export const inInches = (unit: LengthUnit): boolean => unit === 'in' || unit === 'ft';

const spellings: Readonly<Record<string, LengthUnit>> = {
  mm: 'mm',
  millimetre: 'mm',
  millimetres: 'mm',
  millimeter: 'mm',
  millimeters: 'mm',
  cm: 'cm',
  centimetre: 'cm',
  centimetres: 'cm',
  centimeter: 'cm',
  centimeters: 'cm',
  m: 'm',
  metre: 'm',
  metres: 'm',
  meter: 'm',
  meters: 'm',
  in: 'in',
  inch: 'in',
  inches: 'in',
  '"': 'in',
  '″': 'in',
  '”': 'in',
  ft: 'ft',
  foot: 'ft',
  feet: 'ft',
  "'": 'ft',
  '′': 'ft',
  '’': 'ft',
};

/** A length, size or angle that cannot be read. */
export class LengthError extends Error {
  override readonly name = 'LengthError';

  constructor(
    message: string,
    /** How to fix it. */
    readonly remedy: string,
    /** `wrong-unit` for a length that can be read, but is implausible unless its unit is another. */
    readonly kind: 'wrong-value' | 'wrong-unit' = 'wrong-value',
  ) {
    super(message);
  }
}

const hint = 'write a length such as 450, 450 mm, 1.2 m, 3/4 in, 1-1/2" or 2 ft 6 in';

// number = decimal, fraction, or whole part joined to a fraction by a space or a hyphen
const numberPattern = /^(?:(\d+)(?:\s+|-)(\d+)\/(\d+)|(\d+)\/(\d+)|(\d+(?:\.\d*)?|\.\d+)(?:[eE]([+-]?\d{1,2}))?)\s*/;
const unitPattern = /^([a-zA-Z]+|["″”'′’])\s*/;

/** The unit that a word names, such as `inches`; null for any other word. */
export const unitNamed = (word: string): LengthUnit | null => spellings[word.trim().toLowerCase()] ?? null;

/** Longest text that a message shows as it stands. */
const longestShown = 40;

const shown = (source: string): string =>
  source.length > longestShown ? `"${source.slice(0, longestShown)}…"` : `"${source}"`;

/** Why a text is no length. */
function noLength(source: string): LengthError {
  const slip = source.length > longestShown ? null : lengthSlip(source.trim());
  return slip ? new LengthError(slip.message, slip.remedy) : new LengthError(`${shown(source)} is not a length`, hint);
}

function takeNumber(text: string): { value: number; rest: string } | null {
  const found = numberPattern.exec(text);
  if (!found) return null;
  const [all, integer, over, under, over2, under2, decimal, power] = found;
  const rest = text.slice(all.length);
  if (decimal !== undefined) return { value: Number(power === undefined ? decimal : `${decimal}e${power}`), rest };
  const denominator = Number(under ?? under2);
  if (denominator === 0) throw new LengthError('a fraction cannot have 0 as its denominator', hint);
  return { value: Number(integer ?? 0) + Number(over ?? over2) / denominator, rest };
}

/**
 * Reads a length.
 * @param source a number in `unit`, or text with units of its own; a bare number in text is in `unit` too
 * @param unit the unit of bare numbers
 * @returns millimetres, with its sign
 * @throws LengthError when it is not a length, or not finite
 */
export function parseLength(source: number | string, unit: LengthUnit): number {
  if (typeof source === 'number') {
    if (!Number.isFinite(source)) throw new LengthError(`${source} is not a length`, hint);
    return source * mmPer[unit];
  }
  let rest = source.trim();
  if (source.length > 200 || rest === '') throw new LengthError(`${shown(source)} is not a length`, hint);
  let sign = 1;
  if (/^[-−]/.test(rest)) {
    sign = -1;
    rest = rest.slice(1).trimStart();
  }
  let total = 0;
  let lastScale = Infinity;
  let terms = 0;
  while (rest !== '') {
    const number = takeNumber(rest);
    if (!number) throw noLength(source);
    const written = unitPattern.exec(number.rest);
    if (!written && (terms > 0 || number.rest !== '')) throw noLength(source);
    const name = written?.[1] ?? unit;
    const known = spellings[name.toLowerCase()];
    if (known === undefined)
      throw new LengthError(`"${name}" is not a known unit of length`, 'use mm, cm, m, in or ft');
    const scale = mmPer[known];
    // "6 in 2 ft" or "2 in 3 in" is a slip of the pen rather than a sum
    if (rest.includes("''")) throw noLength(source);
    if (scale >= lastScale) throw new LengthError(`${shown(source)} has its units in the wrong order`, hint);
    total += number.value * scale;
    lastScale = scale;
    terms += 1;
    rest = written ? number.rest.slice(written[0].length) : '';
  }
  return sign * total;
}
