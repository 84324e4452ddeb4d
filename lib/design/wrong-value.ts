/** A value of another kind than its key needs: what it is, and how it would be written. */
import { commaSlip, unitNamed } from '../units/index.js';
import { slippedFrom } from './nearest.js';
import { choiceMeant } from './other-words.js';
import type { KeyEntry } from './reference.js';

/** What stands at the key, and how it is to be written. */
export interface Wrong {
  readonly message: string;
  readonly remedy: string;
}

/** A value as a person sees it in the file. */
export function shown(value: unknown): string {
  const written = JSON.stringify(value) as string | undefined;
  const text = written ?? typeof value;
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

/** What a value is, where it is not plain. */
function kindOf(value: unknown): string {
  if (value === null) return 'is empty';
  if (Array.isArray(value)) return 'is a list';
  if (typeof value === 'object') return 'is a section of keys';
  return `is ${shown(value)}`;
}

/** What a key of a kind takes. */
const needs: Readonly<Record<KeyEntry['quantity'], string>> = {
  length: 'one length, such as 450, 450 mm or 3/4 in',
  size: 'width x height, such as 2440x1220 or 8 ft x 4 ft',
  angle: 'one angle, such as 30 or 5 mrad',
  number: 'one number',
  integer: 'one whole number',
  choice: 'one word',
  text: 'a text',
  'yes-no': 'true or false',
  group: 'a section of keys',
  list: 'a list',
  point: 'a point: [x, y]',
};

/** What a key needs that is left out or empty. */
export function needed(entry: KeyEntry | undefined, entries: readonly KeyEntry[]): string {
  if (!entry) return 'a value';
  if (entry.choices) return `one of ${entry.choices.join(', ')}`;
  const { quantity, path } = entry;
  if (quantity === 'group') {
    const inner = entries.filter(({ path: other, required }) => required && other.startsWith(`${path}.`));
    const keys = inner.map(({ path: other }) => `${other.slice(path.length + 1)}: …`);
    return keys.length > 0 ? `a section of keys, such as ${path}: { ${keys.join(', ')} }` : 'a section of keys';
  }
  return needs[quantity];
}

/** A number that a text holds, as degrees and minutes, with a currency or with a word. */
function numberIn(text: string): string | null {
  const angle = /^(-?\d+)\s*°\s*(\d+(?:\.\d+)?)\s*['′’]?\s*([NSEWO])?/i.exec(text.trim());
  if (angle) {
    const [, degrees = '0', minutes = '0', side = ''] = angle;
    const sign = /[SW]/i.test(side) || degrees.startsWith('-') ? -1 : 1;
    return String(Number((sign * (Math.abs(Number(degrees)) + Number(minutes) / 60)).toFixed(4)));
  }
  const comma = /\d,\d/.test(text) ? (commaSlip(text)?.remedy ?? null) : null;
  const pointed = comma === null ? text : text.replace(/(\d),(?=\d)/g, '$1.');
  return /-?\d+(?:\.\d+)?/.exec(pointed)?.[0] ?? null;
}

/** What stands in place of a list, as one. */
function asList(key: string, value: unknown): string | null {
  if (typeof value === 'number' || typeof value === 'string') return `write it as a list: ${key}: [${value}]`;
  if (typeof value !== 'object' || value === null) return null;
  const [first, second] = Object.keys(value);
  const keys = [first, second].flatMap((name) => (name === undefined ? [] : [`${name}: …`]));
  return `put a dash before each item, and its keys in braces: - { ${keys.join(', ')} }`;
}

/** A word in place of a section, as one. */
function asSection(key: string, value: unknown, { keyFor }: SectionKeys): string | null {
  if (typeof value !== 'string') return null;
  if (/^[\w-]+:\S/.test(value)) return `put a space after the colon: ${value.replace(':', ': ')}`;
  const inner = keyFor(value);
  return inner === null ? null : `write ${key}: { ${inner}: ${value} }`;
}

function asSize(value: unknown): string | null {
  if (Array.isArray(value) && value.length === 2) return `write ${value.join(' x ')}`;
  return typeof value === 'number' ? `write both sides: ${value} x …` : null;
}

function asNumber(key: string, value: unknown): string | null {
  const found = typeof value === 'string' ? numberIn(value) : null;
  return found === null ? null : `write ${key}: ${found}, just a number`;
}

/** The plain way to write what stands there, by what the key takes. */
function asWanted(name: string, value: unknown, { quantity }: KeyEntry, sections: SectionKeys): string | null {
  const key = name.split('.').at(-1) ?? name;
  switch (quantity) {
    case 'list':
      return asList(key, value);
    case 'group':
      return asSection(key, value, sections);
    case 'size':
      return asSize(value);
    case 'number':
    case 'integer':
      return asNumber(key, value);
    default:
      return null;
  }
}

/** What is known of the sections, for a plain word in place of one. */
export interface SectionKeys {
  /** The key of the section that takes this word, or null. */
  readonly keyFor: (word: string) => string | null;
}

/** A value of another kind than the key takes. */
export function wrongKind(name: string, value: unknown, entry: KeyEntry | undefined, sections: SectionKeys): Wrong {
  const wanted = entry ? asWanted(name, value, entry, sections) : null;
  return {
    message: `${name} ${kindOf(value)}`,
    remedy: wanted ?? `it must be ${entry ? needs[entry.quantity] : 'another value'}`,
  };
}

/** A word that is none of the choices. */
export function wrongChoice(name: string, value: unknown, choices: readonly string[]): Wrong {
  const remedy = `it must be one of ${choices.join(', ')}`;
  const word = typeof value === 'string' ? value : null;
  const unit = word === null ? null : unitNamed(word);
  const near =
    word === null
      ? null
      : unit !== null && choices.includes(unit)
        ? unit
        : (choiceMeant(word, choices) ?? slippedFrom(word, choices));
  return { message: `${name} ${kindOf(value)}`, remedy: near === null ? remedy : `did you mean ${near}? ${remedy}` };
}

/** A date as it is written elsewhere, year first; null for anything else. */
export function dateMeant(value: unknown): string | null {
  const found = typeof value === 'string' ? /^(\d{1,2})[./](\d{1,2})[./](\d{4})$/.exec(value.trim()) : null;
  if (!found) return null;
  const [, day = '', month = '', year = ''] = found;
  return Number(month) > 12 ? null : `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
}

/** A name of a material in the letters that file names can have. */
export function plainName(name: string): string {
  return name
    .replace(/ß/g, 'ss')
    .replace(/[øØ]/g, 'o')
    .replace(/æ/gi, 'ae')
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[^A-Za-z0-9_-]+/g, '-')
    .replace(/^[-_]+|-+$/g, '')
    .slice(0, 40);
}
