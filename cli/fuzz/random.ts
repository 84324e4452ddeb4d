/** Random numbers from 0 up to 1 (Marsaglia, Xorshift RNGs, 2003: the 32-bit generator 13, 17, 5), seeded by any number. */
export function randomOf(seed: number): () => number {
  // neighbouring seeds are driven apart by the golden ratio's bits
  let state = Math.imul(seed + 1, 0x9e3779b1) >>> 0 || 1;
  const next = (): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
  for (let i = 0; i < 8; i += 1) next();
  return next;
}
