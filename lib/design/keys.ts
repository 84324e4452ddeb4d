/**
 * The kinds of keys a design file is made of. What a key means, its default with the reason, and its limits are
 * declared once, here through `meta`, and feed validation, the JSON Schema, the help text and the reference page.
 */
import { hasHidden } from '../diagnostic/index.js';
import * as z from 'zod';
import {
  formatLength,
  LengthError,
  type LengthUnit,
  parseLength,
  parseUsualSize,
  refuseOtherUnit,
  type Size,
  type UsualRange,
} from '../units/index.js';

/** A design is read once: code that is compiled for its schema alone takes longer than it saves. */
export const readOnce: z.core.ParseContext<z.core.$ZodIssue> = { jitless: true };

/** What a person wants to know of a key. */
export interface About {
  /** What the key means, in one or two sentences. */
  readonly about: string;
  /** Why the default is what it is. */
  readonly why?: string;
  /** Printed unit of bare numbers when it is not the file's unit of length. */
  readonly unit?: string;
  /** Default as a person would write it, when it is worked out from other keys. */
  readonly auto?: string;
}

export interface Range {
  /** Smallest value allowed, mm (or in the key's own unit); `above` excludes the bound itself. */
  readonly min?: number;
  readonly above?: number;
  readonly max?: number;
  /** Smallest value other than 0 that makes sense. */
  readonly finest?: number;
  /** What is usual, mm: a bare number beyond it that another unit would make usual is refused. */
  readonly usual?: UsualRange;
}

/** How a key's value was written, for the JSON Schema and the help text. */
export interface KeyMeta extends About, Range {
  readonly quantity:
    'length' | 'size' | 'angle' | 'number' | 'integer' | 'choice' | 'text' | 'yes-no' | 'group' | 'list' | 'point';
  /** Default in the words of a design file. */
  readonly shown?: string;
  readonly [key: string]: unknown;
}

/** What a check of a single key finds, its message apart. */
export interface KeyFault {
  readonly code?: 'wrong-value' | 'wrong-unit';
  /** How to fix it. */
  readonly remedy?: string;
}

function outside(value: number, range: Range, show: (value: number) => string): Wrong | null {
  const remedy =
    range.above !== undefined && !(value > range.above)
      ? `it must be above ${show(range.above)}`
      : range.min !== undefined && !(value >= range.min)
        ? `it must be at least ${show(range.min)}`
        : range.max !== undefined && !(value <= range.max)
          ? `it must be at most ${show(range.max)}`
          : range.finest !== undefined && value > 0 && value < range.finest
            ? `it must be 0 or at least ${show(range.finest)}`
            : null;
  return remedy === null ? null : { message: `is ${show(value)}`, remedy };
}

type Raw = number | string;

interface Wrong {
  readonly message: string;
  readonly remedy?: string;
  readonly kind?: 'wrong-value' | 'wrong-unit';
}

/** A fault of a key as the schema keeps it: `readDesign` turns it into a diagnostic. */
function issueOf({ message, remedy, kind = 'wrong-value' }: Wrong, input: unknown) {
  const params: KeyFault = { code: kind, ...(remedy === undefined ? {} : { remedy }) };
  return { code: 'custom' as const, message, params, input };
}

function measured(read: (raw: Raw) => number, range: Range, show: (value: number) => string) {
  return z.union([z.number(), z.string()]).transform((raw: Raw, context): number => {
    try {
      const value = read(raw);
      const wrong = outside(value, range, show);
      if (wrong === null) return value;
      context.issues.push(issueOf(wrong, raw));
    } catch (error) {
      if (!(error instanceof LengthError)) throw error;
      context.issues.push(issueOf(error, raw));
    }
    return z.NEVER;
  });
}

const plain = (value: number): string => String(Number(value.toFixed(4)));

/** No single length in a workshop is longer than this (mm); a larger one is a slip of the unit. */
const longest = 100_000;

/** The kinds of keys, for a file whose bare numbers are in `unit`. */
export function keysIn(unit: LengthUnit) {
  const show = (mm: number): string =>
    unit === 'mm' ? `${plain(mm)} mm` : `${formatLength(mm, unit, 4)} (${plain(mm)} mm)`;
  const lengthKey = (about: About & Range) => {
    const range: Range = { ...(about.min === undefined ? { min: 0 } : {}), max: longest, ...about };
    const read = (raw: Raw): number => {
      if (about.usual) refuseOtherUnit(raw, (other) => [parseLength(raw, other)], unit, about.usual);
      return parseLength(raw, unit);
    };
    return measured(read, range, show);
  };
  return {
    /** A length the user must give. */
    length: (about: About & Range) => lengthKey(about).meta({ quantity: 'length', ...about } satisfies KeyMeta),
    /** A length with a default in mm. */
    lengthOr: (mm: number, about: About & Range) =>
      lengthKey(about)
        .default(mm)
        .meta({ quantity: 'length', shown: `${mm} mm`, ...about } satisfies KeyMeta),
    /** A length that is worked out from others when it is left out. */
    lengthAuto: (about: About & Range & { readonly auto: string }) =>
      lengthKey(about)
        .optional()
        .meta({ quantity: 'length', ...about } satisfies KeyMeta),
    /** A length as measured at one place, or a list of several: always given as a list, mm. */
    lengthPlaces: (about: About & Range, { max, apart }: { readonly max: number; readonly apart: number }) => {
      const one = z.union([z.number(), z.string()]);
      const key = lengthKey(about);
      return z
        .union([z.number(), z.string(), z.array(one)])
        .transform((raw, context): readonly number[] => {
          const places = Array.isArray(raw) ? raw : [raw];
          const refuse = (message: string, remedy: string): typeof z.NEVER => {
            context.issues.push(issueOf({ message, remedy }, raw));
            return z.NEVER;
          };
          if (places.length === 0 || places.length > max)
            return refuse(`is a list of ${places.length} readings`, `give 1 to ${max}`);
          const read = places.map((place) => key.safeParse(place));
          const wrong = read.flatMap(({ error }) => error?.issues ?? []);
          for (const issue of wrong) context.issues.push({ ...issue, input: raw } as never);
          if (wrong.length > 0) return z.NEVER;
          const lengths = read.flatMap(({ data }) => data ?? []);
          const [low, high] = [Math.min(...lengths), Math.max(...lengths)];
          if (high - low > apart * high)
            return refuse(`is ${show(low)} to ${show(high)}`, 'measure again: no sheet varies that much');
          return lengths;
        })
        .meta({ quantity: 'length', ...about } satisfies KeyMeta);
    },
    /** Width by height. */
    size: (about: About) =>
      z
        .string()
        .transform((raw, context): Size => {
          try {
            return parseUsualSize(raw, unit);
          } catch (error) {
            if (!(error instanceof LengthError)) throw error;
            context.issues.push(issueOf(error, raw));
            return z.NEVER;
          }
        })
        .meta({ quantity: 'size', ...about } satisfies KeyMeta),
    /** A point or corner in the file's unit: [x, y]. */
    point: () => {
      const side = measured((raw) => parseLength(raw, unit), { min: -longest, max: longest }, show);
      return z
        .tuple([side, side])
        .transform(([x, y]) => ({ x, y }))
        .meta({ quantity: 'point', about: 'A point: [x, y].' } satisfies KeyMeta);
    },
  };
}

function numberKey(about: About & Range) {
  return z.number().superRefine((value, context) => {
    const tail = about.unit === undefined ? '' : ` ${about.unit}`;
    const wrong = outside(value, about, (shown) => `${plain(shown)}${tail}`);
    if (wrong !== null) context.addIssue(issueOf(wrong, value));
  });
}

/** A plain number the user must give; the unit, if any, is the key's own. */
export function number(about: About & Range) {
  return numberKey(about).meta({ quantity: 'number', ...about } satisfies KeyMeta);
}

export function numberOr(value: number, about: About & Range) {
  return numberKey(about)
    .default(value)
    .meta({ quantity: 'number', shown: String(value), ...about } satisfies KeyMeta);
}

export function numberAuto(about: About & Range & { readonly auto: string }) {
  return numberKey(about)
    .optional()
    .meta({ quantity: 'number', ...about } satisfies KeyMeta);
}

function integerKey(about: About & Range) {
  return numberKey(about).refine((value) => Number.isInteger(value), 'must be a whole number');
}

export function integer(about: About & Range) {
  return integerKey(about).meta({ quantity: 'integer', ...about } satisfies KeyMeta);
}

export function integerOr(value: number, about: About & Range) {
  return integerKey(about)
    .default(value)
    .meta({ quantity: 'integer', shown: String(value), ...about } satisfies KeyMeta);
}

export function integerAuto(about: About & Range & { readonly auto: string }) {
  return integerKey(about)
    .optional()
    .meta({ quantity: 'integer', ...about } satisfies KeyMeta);
}

/** One of a few words. */
export function choice<const Words extends readonly [string, ...string[]]>(
  words: Words,
  fallback: Words[number],
  about: About,
) {
  return z
    .enum(words)
    .default(fallback as never)
    .meta({ quantity: 'choice', shown: fallback, ...about } satisfies KeyMeta);
}

/** One of a few words, worked out from other keys when it is left out. */
export function choiceAuto<const Words extends readonly [string, ...string[]]>(
  words: Words,
  about: About & { readonly auto: string },
) {
  return z
    .enum(words)
    .optional()
    .meta({ quantity: 'choice', ...about } satisfies KeyMeta);
}

/** A colour, as `#RRGGBB`. */
export function colour(about: string) {
  return z
    .string()
    .regex(/^#[0-9a-fA-F]{6}$/, 'must be a colour such as #009E73')
    .meta({ quantity: 'text', about } satisfies KeyMeta);
}

export function yesNo(fallback: boolean, about: About) {
  return z
    .boolean()
    .default(fallback)
    .meta({ quantity: 'yes-no', shown: String(fallback), ...about } satisfies KeyMeta);
}

/** Text on one line, of a length that fits a label. */
function textKey() {
  return z
    .string()
    .min(1, 'must not be empty')
    .max(120, 'must not be longer than 120 characters')
    .refine(
      (text) => !hasHidden(text),
      'must be plain text on one line, without control characters and direction marks',
    );
}

export function textOr(fallback: string, about: About) {
  return textKey()
    .default(fallback)
    .meta({ quantity: 'text', shown: fallback, ...about } satisfies KeyMeta);
}

export function textAuto(about: About & { readonly auto: string }) {
  return textKey()
    .optional()
    .meta({ quantity: 'text', ...about } satisfies KeyMeta);
}

/** A section of keys; when it is left out every key takes its default. Unknown keys are errors. */
export function group<Shape extends z.ZodRawShape>(about: About, shape: Shape) {
  return z.strictObject(shape).meta({ quantity: 'group', ...about } satisfies KeyMeta);
}

/** A size from a table of what is sold; a bare number is taken as text. */
export function sizeAuto(sizes: readonly string[], about: string, auto: string) {
  return z
    .union([z.string(), z.number().transform(String)])
    .refine((size) => sizes.includes(size), `is none of the sizes sold: ${sizes.join(', ')}`)
    .optional()
    .meta({ quantity: 'text', about, auto } satisfies KeyMeta);
}
