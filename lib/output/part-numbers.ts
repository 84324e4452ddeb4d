/** Numbers of the part list: what is cut of the dish, in its order; balloons of drawings and pictures bear them. */
import type { Part, PartKind } from '../part/index.js';

/** The number of the first part of a kind; null where there is none. */
export function numberOf(parts: readonly Part[], kind: PartKind): string | null {
  const index = parts.findIndex((part) => part.kind === kind);
  return index < 0 ? null : String(index + 1);
}
