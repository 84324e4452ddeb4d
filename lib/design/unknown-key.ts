/** A key that no design file has at its place: what was probably meant by it. */
import { type Document, isMap, isNode, isScalar } from 'yaml';
import { type Diagnostic, diagnostic, type KeyPath, pathText } from '../diagnostic/index.js';
import { entryPath } from './entry-at.js';
import { nearestWord } from './nearest.js';
import { lettersOf, meantBy } from './other-words.js';
import { type KeyEntry, keyEntries, plainPath } from './reference.js';

export interface UnknownKey {
  readonly diagnostic: Diagnostic;
  /** The key that was meant, as far as it is clear: that it is missing need not be said too. */
  readonly meant: KeyPath | null;
}

const lastOf = (path: string): string => path.split('.').at(-1) ?? path;
const sectionOf = (path: string): string => path.slice(0, Math.max(0, path.lastIndexOf('.')));

const shown = (key: string): string => JSON.stringify(key.length > 60 ? `${key.slice(0, 59)}…` : key);

/** Keys and values of the section as they stand, in their order. */
function pairsIn(document: Document, section: KeyPath): (readonly [key: string, value: unknown])[] {
  const node = section.length === 0 ? document.contents : document.getIn(section, true);
  if (!isMap(node)) return [];
  return node.items.flatMap(({ key, value }) =>
    isNode(key) ? [[String(key), isScalar(value) ? value.value : value] as const] : [],
  );
}

/** `thickness: 11,6` in braces is a thickness of 11 and a key 6; `kind:plywood` there is a key. */
function slipOfPen(
  key: string,
  section: KeyPath,
  document: Document,
): readonly [message: string, remedy: string] | null {
  const colon = /^([A-Za-z][\w-]*):(.+)$/.exec(key);
  if (colon) {
    const [, name = '', value = ''] = colon;
    return [`there is no space after the colon of ${name}`, `write ${name}: ${value}`];
  }
  const pairs = pairsIn(document, section);
  const at = pairs.findIndex(([name]) => name === key);
  const before = pairs[at - 1];
  const value = pairs[at]?.[1];
  const decimals = /^\d+(?: ?(?:mm|cm|m|in|ft|€|\$|°)?)$/.test(key);
  if (!decimals || !before || value !== null || !/\d$/.test(String(before[1]))) return null;
  const [name, whole] = before;
  return [
    `${name} is ${String(whole)},${key} with a decimal comma`,
    `write ${name}: ${String(whole)}.${key}, with a decimal point`,
  ];
}

/** Where the key belongs instead, as an entry has it. */
function elsewhere(key: string, entries: readonly KeyEntry[]): readonly string[] {
  return entries.filter(({ path }) => lastOf(path) === key).map(({ path }) => path);
}

function remedyFor(key: string, at: string, known: readonly string[]): readonly [remedy: string, meant: string | null] {
  const own = (name: string): string => (at === '' ? name : `${at}.${name}`);
  const word = meantBy(key, at);
  if (word !== null && known.includes(lastOf(word))) return [`did you mean ${lastOf(word)}?`, word];
  const near = nearestWord(key, known);
  const close = known.find((name) => lettersOf(name) === lettersOf(key)) ?? nearestWord(key, known, 2);
  if (close !== null) return [`did you mean ${close}?`, own(close)];
  const others = elsewhere(key, keyEntries());
  const [other] = others;
  if (other !== undefined && others.length <= 3) {
    const section = sectionOf(other);
    const remedy =
      section === ''
        ? `${key} is at the left edge, outside any section`
        : `it belongs in ${plainPath(section)} (${others.map(plainPath).join(' or ')}): write it below ${lastOf(plainPath(section))}, indented by two more spaces`;
    return [remedy, others.length === 1 ? other : null];
  }
  if (near !== null) return [`did you mean ${near}?`, own(near)];
  const called = meantBy(key, null);
  if (called !== null) return [`did you mean ${plainPath(called)}?`, called];
  return [`the keys here are ${known.join(', ')}`, null];
}

/**
 * @param section the path at which the key stands
 * @param known the keys of that section
 * @param under what the paths of this file begin with in a design, for a file of its own
 */
export function unknownKey(
  key: string,
  section: KeyPath,
  known: readonly string[],
  document: Document,
  under: KeyPath,
): UnknownKey {
  const path = [...section, key];
  const slip = slipOfPen(key, section, document);
  if (slip) {
    const name = /colon of (\w+)/.exec(slip[0])?.[1];
    return {
      diagnostic: diagnostic('unknown-key', path, ...slip),
      meant: name === undefined ? null : [...section, name],
    };
  }
  const [remedy, meant] = remedyFor(key, entryPath([...under, ...section]), known);
  const where = section.length === 0 ? '' : ` in ${pathText(section)}`;
  const own = meant !== null && sectionOf(meant) === entryPath([...under, ...section]);
  return {
    diagnostic: diagnostic('unknown-key', path, `unknown key ${shown(key)}${where}`, remedy),
    meant: own ? [...section, lastOf(meant)] : (meant?.split('.') ?? null),
  };
}
