/**
 * Checked reading of arrays of numbers. One short reader for each kind, so that it is compiled into its caller, where
 * the check costs nothing beside the check of bounds that is there anyway.
 */

/** The number at an index. @throws RangeError outside the array */
export function f64(array: Float64Array, index: number): number {
  const value = array[index];
  return value === undefined ? outside(index) : value;
}

/** The number at an index. @throws RangeError outside the array */
export function f32(array: Float32Array, index: number): number {
  const value = array[index];
  return value === undefined ? outside(index) : value;
}

/** The value between two entries of a table at a fractional index, 0 to the last. */
export function interpolated(table: Float64Array, index: number): number {
  const cell = Math.min(table.length - 2, index | 0);
  const low = f64(table, cell);
  return low + (index - cell) * (f64(table, cell + 1) - low);
}

function outside(index: number): never {
  throw new RangeError(`no element ${index}`);
}
