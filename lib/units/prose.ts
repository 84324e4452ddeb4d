/** Sentences that state metric values, in the units of an inch workshop. */
import { formatLength } from './format.js';
import { inInches, type LengthUnit } from './length.js';

// exact by definition: the pound is 0.45359237 kg, the foot 304.8 mm, the mile 1609.344 m
const POUND_KG = 0.45359237;
const SQUARE_FOOT_M2 = 0.3048 ** 2;
const MPH_M_PER_S = 1609.344 / 3600;

const decimals = (value: number, digits: number): string => String(Number(value.toFixed(digits)));

/** A mass in the unit of a workshop: `12 kg`, `26.5 lb`. */
export function formatMass(kg: number, unit: LengthUnit, digits = 1): string {
  return inInches(unit) ? `${decimals(kg / POUND_KG, digits)} lb` : `${decimals(kg, digits)} kg`;
}

/** An area in the unit of a workshop, from mm². */
export function formatArea(mm2: number, unit: LengthUnit, digits = 2): string {
  return inInches(unit)
    ? `${decimals(mm2 / 1e6 / SQUARE_FOOT_M2, Math.max(1, digits - 1))} sq ft`
    : `${decimals(mm2 / 1e6, digits)} m²`;
}

/** A long run, such as a bead of glue or the way of a beam: metres, or whole feet. */
export const formatRun = (mm: number, unit: LengthUnit): string =>
  inInches(unit) ? formatLength(mm, 'ft', 0) : formatLength(mm, 'm', 1);

/** Writes distances that are known no better than to a decimetre, rounded up: millimetres, or whole inches. */
export const reachIn =
  (unit: LengthUnit) =>
  (mm: number): string =>
    formatLength(inInches(unit) ? Math.ceil(mm / 25.4 - 1e-9) * 25.4 : mm, unit);

/** A length, or several that state their unit once: `2.5 mm`, `5, 10 and 20 mm`, `3 to 4 mm`. */
const listed = /(?<![\w./])(?:-?\d+(?:\.\d+)?(?:, | and | or | to ))*-?\d+(?:\.\d+)? mm\b/g;

/**
 * A sentence with its millimetres, kilograms, square metres and metres a second in the units of an inch workshop; as it is
 * for a metric one. What is measured in no workshop stays: watts, watts per square metre, degrees Celsius, milliradians.
 */
export function proseIn(text: string, unit: LengthUnit): string {
  if (!inInches(unit)) return text;
  return text
    .replace(listed, (list) =>
      list.slice(0, -' mm'.length).replace(/-?\d+(?:\.\d+)?/g, (value) => formatLength(Number(value), unit)),
    )
    .replace(/(?<![\w./])(\d+(?:\.\d+)?) kg\b/g, (_, value: string) => formatMass(Number(value), unit))
    .replace(/(?<![\w./])(\d+(?:\.\d+)?) m²(?!K)/g, (_, value: string) => formatArea(Number(value) * 1e6, unit))
    .replace(/each m²/g, `each ${decimals(1 / SQUARE_FOOT_M2, 1)} sq ft`)
    .replace(
      /(?<![\w./])(\d+(?:\.\d+)?) m\/s\b/g,
      (_, value: string) => `${decimals(Number(value) / MPH_M_PER_S, 1)} mph`,
    );
}
