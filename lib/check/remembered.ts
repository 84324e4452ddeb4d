/** What is worked out once for each thing that it is asked of, as long as that thing is there. */
export function remembered<K extends object, V>(make: (key: K) => V): (key: K) => V {
  const known = new WeakMap<K, { readonly value: V }>();
  return (key) => {
    const before = known.get(key);
    if (before !== undefined) return before.value;
    const value = make(key);
    known.set(key, { value });
    return value;
  };
}
