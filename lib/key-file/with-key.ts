/**
 * One key of a file set, added or taken out, and every other byte left as it is: comments, order, line ends. What was
 * made is read again and held against what was asked, so that an odd file is refused and not damaged.
 */
import {
  type Document,
  isCollection,
  isMap,
  isNode,
  isScalar,
  isSeq,
  type Node,
  type Pair,
  parse,
  parseDocument,
} from 'yaml';
import { keyStart, linesFrom, pairNamed } from './lines.js';
import { expectedOf } from './expected.js';
import { type KeySteps, readOptions } from './stated.js';
import type { Written } from './written.js';

/** A value as YAML on one line, or a text that is quoted where it must be. */
export type NewValue = { readonly source: string } | { readonly text: string };

/** A replacement of the text from one offset to another. */
interface Change {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

const refused = (message: string, remedy: string): Written => ({ kind: 'refused', message, remedy });
const byHand = 'write it in the file by hand';

/** The pair or the item of a list at the last step; undefined where there is none. */
function childOf(parent: unknown, step: string | number): Pair | Node | undefined {
  if (isMap(parent)) return pairNamed(parent, String(step));
  const item: unknown = isSeq(parent) ? parent.items[Number(step)] : undefined;
  return isNode(item) ? item : undefined;
}

const valueOf = (child: Pair | Node): unknown => (isNode(child) ? child : child.value);
const startOf = (child: Pair | Node): number => (isNode(child) ? (child.range?.[0] ?? 0) : keyStart(child));

function endOf(child: Pair | Node): number {
  const value = valueOf(child);
  if (isNode(value) && value.range) return value.range[1];
  const key: unknown = isNode(child) ? null : child.key;
  return isNode(key) ? (key.range?.[1] ?? 0) : 0;
}

/** Whether the value stands on lines of its own, of which none is replaced by one line. */
function onLines(value: unknown): boolean {
  if (isCollection(value)) return value.flow !== true && value.items.length > 0;
  return isScalar(value) && (value.type === 'BLOCK_LITERAL' || value.type === 'BLOCK_FOLDED');
}

const isEmpty = (value: unknown): boolean => value === null || (isScalar(value) && value.value === null);

function replaced(text: string, child: Pair | Node, source: string): Change | null {
  const value = valueOf(child);
  if (onLines(value)) return null;
  const range = isNode(value) ? value.range : null;
  if (range && range[1] > range[0]) return { from: range[0], to: range[1], text: source };
  if (isNode(child)) return null;
  const key: unknown = child.key;
  const colon = text.indexOf(':', isNode(key) ? (key.range?.[1] ?? 0) : 0) + 1;
  return colon === 0 ? null : { from: colon, to: colon, text: ` ${source}` };
}

/** The dash of an item of a list in block form. */
const dashOf = (text: string, item: number): number => text.lastIndexOf('-', item - 1);

/** Adds an entry, as it stands in braces or on a line, behind the last one of a section or list. */
function appended(text: string, parent: Node, entry: string): Change | null {
  if (!isCollection(parent) || !parent.range) return null;
  const last = parent.items.at(-1) as Pair | Node | undefined;
  if (parent.flow === true) {
    if (last) return { from: endOf(last), to: endOf(last), text: `, ${entry}` };
    const [open, end] = parent.range;
    return { from: open + 1, to: end - 1, text: isMap(parent) ? ` ${entry} ` : entry };
  }
  if (!last) return null;
  const start = isMap(parent) ? startOf(last) : dashOf(text, startOf(last));
  const { to, indent } = linesFrom(text, start);
  const eol = text.includes('\r\n') ? '\r\n' : '\n';
  const gap = to > 0 && text[to - 1] !== '\n' ? eol : '';
  const line = `${gap}${' '.repeat(indent)}${isMap(parent) ? '' : '- '}${entry}${eol}`;
  return { from: to, to, text: line };
}

/** A value with the sections above it that the file does not have yet, in braces. */
const nested = (path: KeySteps, source: string): string =>
  path.reduceRight<string>(
    (inner, step) => (typeof step === 'number' ? `[${inner}]` : `{ ${step}: ${inner} }`),
    source,
  );

function setChange(text: string, document: Document, path: KeySteps, source: string): Change | null {
  for (let depth = path.length; depth >= 1; depth -= 1) {
    const above = path.slice(0, depth - 1);
    const parent = above.length === 0 ? document.contents : document.getIn(above, true);
    const step = path[depth - 1] ?? '';
    const child = childOf(parent, step);
    const rest = nested(path.slice(depth), source);
    if (child) return depth === path.length || isEmpty(valueOf(child)) ? replaced(text, child, rest) : null;
    if (isNode(parent) && isCollection(parent)) {
      const bare = parent.items.length === 0 && depth > 1;
      if (bare && parent.flow !== true) return null;
      return appended(text, parent, isMap(parent) ? `${step}: ${rest}` : rest);
    }
  }
  const eol = text === '' || text.endsWith('\n') ? '' : '\n';
  return document.contents === null
    ? { from: text.length, to: text.length, text: `${eol}${path[0] ?? ''}: ${nested(path.slice(1), source)}\n` }
    : null;
}

/** Takes an entry out of braces with its comma. */
function outOfBraces(items: readonly (Pair | Node)[], at: number): Change {
  const own = items[at]!;
  const [next, before] = [items[at + 1], items[at - 1]];
  if (next) return { from: startOf(own), to: startOf(next), text: '' };
  return { from: before ? endOf(before) : startOf(own), to: endOf(own), text: '' };
}

/** Takes an entry out of lines; a comment behind it stays on a line of its own. */
function outOfLines(text: string, own: Pair | Node, next: Pair | Node | undefined): Change | null {
  const isItem = isNode(own);
  const start = isItem ? dashOf(text, startOf(own)) : startOf(own);
  const { from, to, indent } = linesFrom(text, start);
  if (text.slice(from, start).trim() !== '') {
    // the first key behind the dash of a list
    if (!next || text.slice(start, startOf(next)).includes('#')) return null;
    return { from: start, to: startOf(next), text: '' };
  }
  const comment = onLines(valueOf(own)) ? null : /^[ \t,]*(#.*)$/m.exec(text.slice(endOf(own), to));
  const eol = text.slice(from, to).endsWith('\r\n') ? '\r\n' : '\n';
  return { from, to, text: comment ? `${' '.repeat(indent)}${(comment[1] ?? '').trimEnd()}${eol}` : '' };
}

function removeChange(text: string, document: Document, path: KeySteps): Change | null {
  const above = path.slice(0, -1);
  const parent = above.length === 0 ? document.contents : document.getIn(above, true);
  if (!isCollection(parent)) return null;
  const items = parent.items as readonly (Pair | Node)[];
  const own = childOf(parent, path.at(-1) ?? '');
  if (!own) return null;
  // a section of which nothing is left goes too
  if (items.length === 1) return above.length === 0 ? null : removeChange(text, document, above);
  const at = items.indexOf(own);
  return parent.flow === true ? outOfBraces(items, at) : outOfLines(text, own, items[at + 1]);
}

const apply = (text: string, { from, to, text: put }: Change): string => text.slice(0, from) + put + text.slice(to);

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** The texts that may stand for a value, the plainest first, and what is read of each. */
function candidates(value: NewValue): { readonly sources: readonly string[]; readonly means: unknown } | null {
  if ('text' in value) return { sources: [value.text, JSON.stringify(value.text)], means: value.text };
  const document = parseDocument(value.source, readOptions);
  const commented = document.comment ?? document.commentBefore ?? document.contents?.comment ?? null;
  if (document.errors.length > 0 || commented !== null) return null;
  return { sources: [value.source], means: document.toJS({ maxAliasCount: 0 }) };
}

function read(text: string): unknown {
  try {
    return parse(text, { ...readOptions, maxAliasCount: 0 });
  } catch {
    return undefined;
  }
}

/**
 * The text with one key changed.
 * @param text of a file of keys
 * @param path of the key; sections above it are made where they are missing
 * @param value null takes the key out, and a section of which nothing is left
 */
export function withKey(text: string, path: KeySteps, value: NewValue | null): Written {
  const document = parseDocument(text, readOptions);
  const name = path.join('.');
  const unreadable = document.errors.length > 0 || text.includes('\ufffd');
  if (unreadable || path.length === 0) return refused('the file cannot be read as it is', 'fix it first');
  const before: unknown = document.toJS({ maxAliasCount: 0 });
  const asked = value === null ? { sources: [''], means: undefined } : candidates(value);
  if (asked === null)
    return refused(`${name} is not a single-line value`, 'write a number, a word or a list in brackets');
  const expected = expectedOf(before, path, asked.means);
  for (const source of asked.sources) {
    if (/[\r\n]/.test(source)) continue;
    const change = value === null ? removeChange(text, document, path) : setChange(text, document, path, source);
    if (change === null) break;
    const made = apply(text, change);
    if (same(read(made), expected)) return { kind: 'text', text: made };
  }
  return refused(`${name} is written in a form that cannot be edited from here`, byHand);
}
