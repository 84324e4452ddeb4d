/** Tables of numbers that are read between their entries. */
import { f64 } from '../geometry/typed-arrays.js';

/** The value between two entries of a table at a fractional index, 0 to the last. */
export function interpolated(table: Float64Array, index: number): number {
  const cell = Math.min(table.length - 2, index | 0);
  const low = f64(table, cell);
  return low + (index - cell) * (f64(table, cell + 1) - low);
}
