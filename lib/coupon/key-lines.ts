/** Files of keys as text, of which single values are written anew and all else stays to the letter. */
import { isScalar, type Pair, type YAMLMap } from 'yaml';

/** What came of writing into the text of a file. */
export type Written =
  | { readonly kind: 'text'; readonly text: string }
  /** The file has its keys in a form into which nothing can be put. */
  | { readonly kind: 'refused'; readonly message: string; readonly remedy: string };

export const notInLines: Written = {
  kind: 'refused',
  message: 'the file is not written in lines of keys',
  remedy: 'write one key a line',
};

/** The key of this name with its value. */
export const pairNamed = (map: YAMLMap, name: string): Pair | undefined =>
  (map.items as readonly Pair[]).find(({ key }) => isScalar(key) && String(key.value) === name);

/** Offset of the start of the line on which a place is. */
export const lineStart = (text: string, offset: number): number => text.lastIndexOf('\n', offset - 1) + 1;
