import { element } from './element.js';

/** Values at rising places. */
export type Table = readonly (readonly [at: number, value: number])[];

/** The value at a place: straight between two entries, level before the first and after the last. */
export function tableAt(table: Table, at: number): number {
  const later = table.findIndex(([place]) => place > at);
  if (later === 0) return element(table, 0)[1];
  if (later === -1) return element(table, table.length - 1)[1];
  const [from, first] = element(table, later - 1);
  const [to, second] = element(table, later);
  return first + ((second - first) * (at - from)) / (to - from);
}
