/** What a person wants of a new design, and what follows from it. Lengths in mm. */
import {
  LengthError,
  type LengthUnit,
  materialKinds,
  mmPer,
  parseLength,
  parseUsualSize,
  type ProcessKind,
} from '../../lib/index.js';

export interface Heats {
  readonly litres: number;
  /** Diameter of the vessel's underside. */
  readonly diameter: number;
}

export interface Place {
  /** Degrees, north and east positive. */
  readonly latitude: number;
  readonly longitude: number;
}

export interface Answers {
  readonly units: LengthUnit;
  readonly aperture: number;
  readonly focalLength: number;
  readonly heats: Heats | null;
  readonly kind: (typeof materialKinds)[number];
  readonly thickness: number;
  readonly machine: ProcessKind;
  readonly ribs: number;
  /** Size of the sheets that are bought. */
  readonly sheet: { readonly width: number; readonly height: number };
  /** Of one sheet; 0 where none is stated. */
  readonly price: number;
  /** Of one sheet of what the panels are cut from. */
  readonly panelPrice: number;
  /** Of a metre of the reflector's roll. */
  readonly reflectorPrice: number;
  readonly place: Place | null;
  /** Diameter of the router bit; null for the usual one. */
  readonly bit: number | null;
  /** Diameters of drill bits; null for a usual set. */
  readonly drillBits: readonly number[] | null;
}

/** A small set of twist drills, as it is sold: pilots and clearance holes of the screws that a cleat usually gets. */
export const drillSet = {
  mm: '[1.5 mm, 2 mm, 2.5 mm, 3 mm, 3.5 mm, 4 mm, 4.5 mm]',
  in: '[1/16, 5/64, 7/64, 1/8, 9/64, 11/64]',
} as const;

/** Fewer ribs than that make no dish, and more are not counted in a question. */
export const ribRange = { min: 6, max: 240 };

/** The unit that a person measures in, from how they wrote a length. */
export function unitOfText(text: string): LengthUnit {
  return /in|["”″]|ft|f(?:oo|ee)t|['’′]/i.test(text) ? 'in' : 'mm';
}

/** Rounded to 10 mm, or to half an inch. */
function round(mm: number, units: LengthUnit): number {
  const step = units === 'in' ? mmPer.in / 2 : 10;
  return Math.max(step, Math.round(mm / step) * step);
}

/**
 * A focal length that suits an aperture when nobody asks for another: 0.37 of it, a rim angle near 68°,
 * at which the vessel's underside still faces the whole dish (common practice, no source).
 */
export function usualFocalLength(aperture: number, units: LengthUnit): number {
  return round(0.37 * aperture, units);
}

export function usualThickness(aperture: number, units: LengthUnit): number {
  if (units === 'in') return aperture >= 900 ? mmPer.in / 2 : mmPer.in / 4;
  return aperture >= 900 ? 12 : 6;
}

/**
 * Number of ribs: panels about as wide as 8 % of the aperture, and no wider than the vessel, since a panel does not
 * focus across its width (N ≥ π / asin(a/R)). Even, 12 to 48.
 */
export function usualRibs(aperture: number, heats: Heats | null): number {
  const byWidth = (Math.PI * aperture) / Math.max(90, 0.13 * aperture);
  const ratio = heats === null ? 1 : Math.min(1, heats.diameter / aperture);
  const byVessel = (1.25 * Math.PI) / Math.asin(ratio);
  return Math.min(48, Math.max(12, 2 * Math.ceil(Math.max(byWidth, byVessel) / 2)));
}

/** Aperture for an amount: some 0.15 m² of mirror a litre, within what one person turns. Common practice, no source. */
export function usualAperture(heats: Heats | null, units: LengthUnit): number {
  if (heats === null) return 1200;
  const wide = Math.sqrt((4 * 0.15e6 * heats.litres) / Math.PI);
  return round(Math.min(2000, Math.max(600, 2.5 * heats.diameter, wide)), units);
}

/** Sheets as timber yards sell them. */
export function usualSheet(units: LengthUnit): Answers['sheet'] {
  return units === 'in' ? { width: 96 * mmPer.in, height: 48 * mmPer.in } : { width: 2440, height: 1220 };
}

/** The answers when nobody is asked. */
export function usualAnswers(): Answers {
  const aperture = 1200;
  return {
    units: 'mm',
    aperture,
    focalLength: usualFocalLength(aperture, 'mm'),
    heats: null,
    kind: 'plywood',
    thickness: usualThickness(aperture, 'mm'),
    machine: 'router',
    ribs: usualRibs(aperture, null),
    sheet: usualSheet('mm'),
    price: 0,
    panelPrice: 0,
    reflectorPrice: 0,
    place: null,
    bit: null,
    drillBits: null,
  };
}

const heatsPattern =
  /^(\d+(?:[.,]\d+)?)\s*(l|litres?|liters?|kg|qt|quarts?|gal|gallons?)\s*(?:in(?:\s+an?)?|,)?\s+(.+)$/i;

/** The unit in which the vessel of an amount is measured; null where the text is of another kind. */
export function heatsUnit(text: string): LengthUnit | null {
  const vessel = heatsPattern.exec(text.trim())?.[3];
  return vessel === undefined ? null : unitOfText(vessel);
}

/**
 * `47.1 15.4`, `-16.5, -68.1`: latitude and longitude; `nowhere` for none.
 * @throws LengthError
 */
export function parsePlace(text: string): Place | null {
  if (/^(?:nowhere|none|no)$/i.test(text)) return null;
  const remedy = 'write latitude and longitude with decimal points, such as 47.1 15.4, or nowhere';
  const [latitude, longitude, ...more] = text.split(/\s*[,;]\s+|\s+/).map((one) => Number(one.replace(/°$/, '')));
  if (latitude === undefined || longitude === undefined || more.length > 0)
    throw new LengthError(`"${text}" is not a place`, remedy);
  if (!(Math.abs(latitude) <= 90) || !(Math.abs(longitude) <= 180))
    throw new LengthError(`"${text}" is not a place`, remedy);
  return { latitude, longitude };
}

/**
 * `2440 x 1220 for 54`: size of the sheets, and the price of one where it is stated.
 * @throws LengthError
 */
export function parseSheet(text: string, units: LengthUnit): Pick<Answers, 'sheet' | 'price'> {
  const found = /^(.*?)\s+(?:for|at)\s+[^\d-]*(\d+(?:\.\d+)?)\D*$/i.exec(text);
  return { sheet: parseUsualSize(found?.[1] ?? text, units), price: Number(found?.[2] ?? 0) };
}

/**
 * `12.50`, `none`: a price in the builder's own currency; 0 for none.
 * @throws LengthError
 */
export function parsePrice(text: string): number {
  if (/^(?:none|no|nothing|unknown)$/i.test(text)) return 0;
  const found = /^[^\d-]*(\d+(?:\.\d+)?)\D*$/.exec(text);
  if (!found)
    throw new LengthError(`"${text}" is not a price`, 'write a number with a decimal point, such as 12.50, or none');
  return Number(found[1]);
}

/**
 * `2, 3, 4.5`, `none`: diameters of drill bits.
 * @throws LengthError
 */
export function parseBits(text: string, units: LengthUnit): readonly number[] {
  if (/^(?:none|no|nothing)$/i.test(text)) return [];
  const bits = text
    .replace(/^\[|\]$/g, '')
    .split(/[,;]\s+|\s*;\s*/)
    .map((one) => parseLength(one, units));
  const odd = bits.find((mm) => !(mm > 0 && mm <= 50));
  if (odd !== undefined || bits.length > 30)
    throw new LengthError(`"${text}" is not a list of drill bits`, 'write their diameters, such as 2, 3, 4.5');
  return bits;
}

/**
 * `5 l in 220 mm`, `2 gal in 10 in`: how much is heated, in a vessel of which diameter.
 * @returns null when the text is not of this kind
 * @throws LengthError when the diameter cannot be read
 */
export function parseHeats(text: string, units: LengthUnit): Heats | null {
  const found = heatsPattern.exec(text.trim());
  const [, amount, unit, rest] = found ?? [];
  if (amount === undefined || unit === undefined || rest === undefined) return null;
  // US liquid gallon: 231 cubic inches (NIST Handbook 44, appendix C)
  const gallon = (231 * mmPer.in ** 3) / 1e6;
  const perUnit = /^q/i.test(unit) ? gallon / 4 : /^g/i.test(unit) ? gallon : 1;
  const litres = Number((Number(amount.replace(',', '.')) * perUnit).toPrecision(3));
  const diameter = parseLength(rest, units);
  if (!(litres > 0) || !(diameter > 0))
    throw new LengthError(`"${text}" is not an amount in a vessel`, 'both must be above 0');
  return { litres, diameter };
}

/**
 * `plywood 12`, `1/2 in`, `mdf 6 mm`: material and thickness of the ribs.
 * @throws LengthError
 */
export function parseMaterial(text: string, units: LengthUnit): Pick<Answers, 'kind' | 'thickness'> {
  const found = /^([a-z]+)\s+(.*)$/i.exec(text.trim());
  const named = materialKinds.find((kind) => kind === found?.[1]?.toLowerCase());
  const thickness = parseLength(named && found?.[2] !== undefined ? found[2] : text, units);
  if (!(thickness > 0 && thickness <= 100))
    throw new LengthError(
      `a thickness of ${Number(thickness.toFixed(3))} mm is not possible`,
      'it must be above 0 and at most 100 mm',
    );
  return { kind: named ?? 'plywood', thickness };
}
