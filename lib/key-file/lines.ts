/** Files of keys as text, of which single values are written anew and all else stays to the letter. */
import { isNode, isScalar, type Pair, type YAMLMap } from 'yaml';

/** The key of this name with its value. */
export const pairNamed = (map: YAMLMap, name: string): Pair | undefined =>
  (map.items as readonly Pair[]).find(({ key }) => isScalar(key) && String(key.value) === name);

/** Offset of the start of the line on which a place is. */
const lineStart = (text: string, offset: number): number => text.lastIndexOf('\n', offset - 1) + 1;

/** Offset at which the key of a pair begins. */
export const keyStart = ({ key }: Pair): number => (isNode(key) ? (key.range?.[0] ?? 0) : 0);

export interface Lines {
  readonly from: number;
  readonly to: number;
  readonly indent: number;
}

/** The lines of what begins at `start` in block form: to the line of the next thing that is not deeper. */
export function linesFrom(text: string, start: number): Lines {
  const from = lineStart(text, start);
  const indent = start - from;
  let to = text.indexOf('\n', start) + 1;
  if (to === 0) return { from, to: text.length, indent };
  let end = to;
  while (to < text.length) {
    const next = text.indexOf('\n', to) + 1 || text.length;
    const line = text.slice(to, next);
    const depth = line.length - line.trimStart().length;
    const empty = line.trim() === '';
    if (!empty && depth <= indent) break;
    if (!empty) end = next;
    to = next;
  }
  return { from, to: end, indent };
}

/** The lines of a pair in block form. */
export const linesOf = (text: string, pair: Pair): Lines => linesFrom(text, keyStart(pair));
