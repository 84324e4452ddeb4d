/**
 * What every key of a design file means, read off the schema itself: the source of `explain`, of the reference page,
 * of the commented file that `new` writes, and of the descriptions in the JSON Schema.
 */
import * as z from 'zod';
import { diagnosticCodes } from '../diagnostic/index.js';
import type { KeyMeta } from './keys.js';
import { nearestWord } from './nearest.js';
import { meantBy } from './other-words.js';
import { designSchema } from './schema.js';
import type { UsualRange } from '../units/index.js';

export interface KeyEntry {
  /** `dish.aperture`, `stock[].size`, `materials.<name>.thickness`. */
  readonly path: string;
  readonly quantity: KeyMeta['quantity'];
  readonly about: string;
  /** Why the default is what it is. */
  readonly why?: string;
  /** Unit of a bare number, when it is not the file's unit of length. */
  readonly unit?: string;
  /** Default as written in a design file, or in words when it follows from other keys. */
  readonly shown?: string;
  readonly auto?: string;
  /** Limits, mm for lengths, rad for angles, else in the key's own unit. */
  readonly min?: number;
  readonly above?: number;
  readonly max?: number;
  /** Smallest value other than 0 that makes sense. */
  readonly finest?: number;
  /** Beyond it a bare number is refused that another unit would make usual. */
  readonly usual?: UsualRange;
  readonly choices?: readonly string[];
  /** Must be written where its section is. */
  readonly required: boolean;
}

/** The part of a JSON Schema that the design's schema gives; meta keys stand among the standard ones. */
interface Node extends Partial<KeyMeta> {
  readonly type?: string | readonly string[];
  readonly properties?: Readonly<Record<string, Node>>;
  readonly additionalProperties?: Node | boolean;
  readonly items?: Node;
  readonly enum?: readonly string[];
  readonly required?: readonly string[];
  readonly default?: unknown;
}

/** A value as a design file would hold it on one line. */
function written(value: unknown): string | undefined {
  return typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean'
    ? String(value)
    : undefined;
}

function entryOf(path: string, node: Node, required: boolean): KeyEntry {
  const { quantity = 'text', about = '', why, unit, auto, min, above, max, finest, usual } = node;
  const shown = node.shown ?? (quantity === 'group' ? undefined : written(node.default));
  return {
    path,
    quantity,
    about,
    required,
    ...(why === undefined ? {} : { why }),
    ...(unit === undefined ? {} : { unit }),
    ...(shown === undefined ? {} : { shown }),
    ...(auto === undefined ? {} : { auto }),
    ...(min === undefined ? {} : { min }),
    ...(above === undefined ? {} : { above }),
    ...(finest === undefined ? {} : { finest }),
    ...(max === undefined ? {} : { max }),
    ...(usual === undefined ? {} : { usual }),
    ...(node.enum === undefined ? {} : { choices: node.enum }),
  };
}

function walk(node: Node, path: string, out: KeyEntry[]): void {
  for (const [key, child] of Object.entries(node.properties ?? {})) {
    const at = path === '' ? key : `${path}.${key}`;
    out.push(entryOf(at, child, node.required?.includes(key) ?? false));
    walk(child, at, out);
  }
  if (typeof node.additionalProperties === 'object') walk(node.additionalProperties, `${path}.<name>`, out);
  if (node.items && !Array.isArray(node.items)) walk(node.items, `${path}[]`, out);
}

let known: readonly KeyEntry[] | null = null;

/** Every key in the order of the file, sections before their keys. Read off the schema once. */
export function keyEntries(): readonly KeyEntry[] {
  if (known !== null) return known;
  const out: KeyEntry[] = [];
  walk(z.toJSONSchema(designSchema('mm'), { io: 'input', unrepresentable: 'any' }) as Node, '', out);
  return (known = out);
}

/** A path as an entry has it: `stock[2].size` is `stock[].size`, `materials.birch12.kind` is `materials.<name>.kind`. */
function general(path: string): string {
  return path.replace(/\[\d*\]/g, '[]').replace(/^((?:machine\.)?materials)\.[^.<>]+(?=\.|$)/, '$1.<name>');
}

/** `stock.size` for `stock[].size`: what people type and read. */
export const plainPath = (path: string): string => path.replace(/\[\]/g, '').replace(/\.<name>/g, '');

export type KeyAnswer =
  | { readonly kind: 'found'; readonly entries: readonly KeyEntry[] }
  | { readonly kind: 'unknown'; readonly near: string | null };

/**
 * The entries that a person means by `asked`: the key of that path, or every key of that last name.
 * A section brings its keys along.
 */
export function explainKey(asked: string, entries: readonly KeyEntry[] = keyEntries()): KeyAnswer {
  const wanted = asked.trim();
  const exact = entries.find(({ path }) => path === general(wanted) || plainPath(path) === plainPath(wanted));
  if (exact) {
    const below = entries.filter(
      ({ path }) => path !== exact.path && plainPath(path).startsWith(`${plainPath(exact.path)}.`),
    );
    return { kind: 'found', entries: [exact, ...below] };
  }
  const named = entries.filter(({ path }) => path.split('.').at(-1) === wanted);
  if (named.length > 0) return { kind: 'found', entries: named };
  const called = meantBy(wanted, null);
  if (called !== null) return { kind: 'unknown', near: plainPath(called) };
  const names = entries.flatMap(({ path }) => [plainPath(path), path.split('.').at(-1) ?? path]);
  return { kind: 'unknown', near: nearestWord(wanted, names) };
}

const kindWords: Readonly<Record<KeyMeta['quantity'], string>> = {
  length: 'a length: a number in the file’s unit, or text such as 450 mm, 1.2 m, 3/4 in, 2 ft 6 in',
  size: 'length x width: 2440x1220, 8 ft x 4 ft',
  angle: 'an angle: degrees, or text such as 5 mrad',
  number: 'a number',
  integer: 'a whole number',
  choice: 'one of',
  text: 'text on one line',
  'yes-no': 'true or false',
  group: 'a section of keys',
  list: 'a list',
  point: 'a point: [x, y]',
};

/** What may be written: the kind of value, its unit, its words. */
export function valueText(entry: KeyEntry): string {
  if (entry.choices) return entry.choices.join(', ').replace(/, ([^,]*)$/, ' or $1');
  const kind = entry.path.endsWith('materials') ? 'sections, each under a name of your own' : kindWords[entry.quantity];
  return entry.unit === undefined ? kind : `${kind} (${entry.unit})`;
}

/** `above 0, at most 2000 mm`, or null when nothing is barred. */
export function limitsText(entry: KeyEntry): string | null {
  // a length cannot be negative unless its key says so
  const min = entry.min ?? (entry.quantity === 'length' && entry.above === undefined ? 0 : undefined);
  const parts = [
    ...(entry.above === undefined ? [] : [`above ${entry.above}`]),
    ...(min === undefined ? [] : [entry.finest === undefined ? `at least ${min}` : `0 or at least ${entry.finest}`]),
    ...(entry.max === undefined ? [] : [`at most ${entry.max}`]),
    ...(entry.usual === undefined ? [] : [`usually ${entry.usual[0]} to ${entry.usual[1]}`]),
  ];
  if (parts.length === 0) return null;
  const unit = entry.quantity === 'length' ? 'mm' : entry.quantity === 'angle' ? 'rad' : (entry.unit ?? '');
  return `${parts.join(', ')}${unit === '' ? '' : ` ${unit}`}`;
}

/** The default with its reason, or that there is none. */
export function defaultText(entry: KeyEntry): string {
  const unit = entry.unit === undefined || entry.shown === undefined ? '' : ` ${entry.unit}`;
  const value = entry.auto ?? (entry.shown === undefined ? undefined : `${entry.shown}${unit}`);
  if (value === undefined) return entry.required ? 'none (required)' : 'none (optional)';
  return entry.why === undefined ? value : `${value} (${entry.why})`;
}

const cell = (text: string): string => text.replace(/\|/g, '\\|').replace(/</g, '&lt;');

/** The reference page of all keys, Markdown. */
export function referencePage(entries: readonly KeyEntry[] = keyEntries()): string {
  const lines = [
    '# The design file',
    '',
    'A design file is YAML. Bare lengths are in the file’s `units`; text with a unit of its own (`3/4 in`, `1-1/2"`, `2 ft 6 in`, `450 mm`, `1.2 m`) is accepted anywhere. A bare length that is far outside the usual range, but usual in another unit, is refused, and the message gives both readings; write its unit then. `dishwright explain <key>` prints the same text as this page; `dishwright new` writes a file with every key in it.',
  ];
  const heads = ['| key | value | default | limits | meaning |', '| --- | --- | --- | --- | --- |'];
  const row = (entry: KeyEntry): string => {
    const limits = limitsText(entry) ?? '';
    // the table's head states once what a length may look like
    const value = entry.quantity === 'length' ? 'length' : valueText(entry);
    return `| \`${entry.path}\` | ${cell(value)} | ${cell(defaultText(entry))} | ${cell(limits)} | ${cell(entry.about)} |`;
  };
  const isSection = ({ path, quantity }: KeyEntry) =>
    !path.includes('.') && (quantity === 'group' || quantity === 'list');
  lines.push('', ...heads, ...entries.filter((e) => !e.path.includes('.') && !isSection(e)).map(row));
  for (const section of entries.filter(isSection)) {
    const below = entries.filter(({ path }) => path !== section.path && new RegExp(`^${section.path}[.[]`).test(path));
    lines.push('', `## ${section.path}`, '', section.about);
    lines.push('', ...heads, ...below.map(row));
  }
  lines.push(
    '',
    '## Diagnostics',
    '',
    'Every message carries one of these codes, in brackets on the terminal and as `code` in `--json`. An error stops the job, a warning does not.',
    '',
    '| code | meaning |',
    '| --- | --- |',
    ...Object.entries(diagnosticCodes).map(([code, meaning]) => `| \`${code}\` | ${cell(meaning)} |`),
  );
  return `${lines.join('\n')}\n`;
}
