/** Typed arrays: growth, and reading that is checked. */

/** The array, or one of at least twice the length with the same start where it is too short. */
export function withCapacity<T extends Float64Array | Int32Array>(array: T, length: number): T {
  if (array.length >= length) return array;
  const made = (array instanceof Float64Array ? new Float64Array(2 * length) : new Int32Array(2 * length)) as T;
  made.set(array);
  return made;
}

// One reader for each kind of array: a reader that meets several kinds is compiled for none of them. Short, so that
// it is always compiled into its caller, where the check costs nothing beside the check of bounds that is there anyway.

/** The number at an index. @throws RangeError outside the array */
export function f64(array: Float64Array, index: number): number {
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
