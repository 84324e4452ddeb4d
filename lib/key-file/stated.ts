/** What a file of keys states, key by key, as it stands in the text. */
import { isCollection, isMap, isScalar, isSeq, parseDocument } from 'yaml';

/** From the top of the file to a key: names, and places in lists from 0. */
export type KeySteps = readonly (string | number)[];

export interface StatedKey {
  readonly path: KeySteps;
  /** Texts without their quotes, all else as written. */
  readonly shown: string;
}

/** How a file is read here: as a design file, without the notions of YAML that design files do without. */
export const readOptions = {
  merge: false,
  uniqueKeys: true,
  strict: true,
  prettyErrors: false,
  logLevel: 'error',
} as const;

/** Whether a list holds keys of its own, such as stock, and is not one value. */
const holdsKeys = (items: readonly unknown[]): boolean => items.length > 0 && items.every(isMap);

function walk(text: string, node: unknown, path: KeySteps, out: StatedKey[]): void {
  if (isMap(node)) {
    for (const { key, value } of node.items) if (isScalar(key)) walk(text, value, [...path, String(key.value)], out);
  } else if (isSeq(node) && holdsKeys(node.items)) {
    for (const [i, item] of node.items.entries()) walk(text, item, [...path, i], out);
  } else if (isScalar(node)) {
    const { value, range } = node;
    const source = range ? text.slice(range[0], range[1]) : '';
    out.push({ path, shown: typeof value === 'string' ? value : source });
  } else if (isCollection(node) && node.range) out.push({ path, shown: text.slice(node.range[0], node.range[1]) });
}

/** Every value of a file; null where the text is not one of keys. */
export function statedKeys(text: string): StatedKey[] | null {
  const document = parseDocument(text, readOptions);
  if (document.errors.length > 0 || (document.contents !== null && !isMap(document.contents))) return null;
  const out: StatedKey[] = [];
  walk(text, document.contents, [], out);
  return out;
}
