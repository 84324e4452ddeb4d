/** Typed arrays that grow. */

/** The array, or one of at least twice the length with the same start where it is too short. */
export function withCapacity<T extends Float64Array | Int32Array>(array: T, length: number): T {
  if (array.length >= length) return array;
  const made = (array instanceof Float64Array ? new Float64Array(2 * length) : new Int32Array(2 * length)) as T;
  made.set(array);
  return made;
}
