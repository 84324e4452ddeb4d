/** Checked reading of lists: an index that is wrong is an error at the place, not `undefined` further on. */

/** The element at an index. @throws RangeError where there is none */
export function element<T>(list: readonly T[], index: number): T {
  const found = list[index];
  if (found === undefined) throw new RangeError(`no element ${index} in a list of ${list.length}`);
  return found;
}

/** The element of a ring at an index that may run past either end. @throws RangeError for an empty ring */
export function cyclic<T>(ring: readonly T[], index: number): T {
  const n = ring.length;
  return element(ring, ((index % n) + n) % n);
}
