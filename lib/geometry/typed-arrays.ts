/**
 * Checked reading of arrays of numbers. One short reader for each kind of array: a reader that meets several kinds is
 * compiled for none of them, and a short one is compiled into its caller, where the check costs nothing next to the
 * check of bounds that is there anyway.
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

/** The integer at an index. @throws RangeError outside the array */
export function i32(array: Int32Array, index: number): number {
  const value = array[index];
  return value === undefined ? outside(index) : value;
}

function outside(index: number): never {
  throw new RangeError(`no element ${index}`);
}
