/** Files of keys as text, of which single values are written anew and all else stays to the letter. */
import { isScalar, type Pair, type YAMLMap } from 'yaml';

/** The key of this name with its value. */
export const pairNamed = (map: YAMLMap, name: string): Pair | undefined =>
  (map.items as readonly Pair[]).find(({ key }) => isScalar(key) && String(key.value) === name);

/** Offset of the start of the line on which a place is. */
export const lineStart = (text: string, offset: number): number => text.lastIndexOf('\n', offset - 1) + 1;
