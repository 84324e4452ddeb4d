/** Seeded random numbers: the 32-bit generator of Marsaglia (xorshift, Journal of Statistical Software 8, 2003), from memory. */
export interface Random {
  /** From 0 up to, not including, 1. */
  readonly real: () => number;
  /** An integer from 0 up to, not including, `below`. */
  readonly integer: (below: number) => number;
}

/** A generator for a seed; any finite number will do, its whole part counts. */
export function randomFrom(seed: number): Random {
  let state = (Math.imul(Math.trunc(seed) | 0, 0x9e3779b1) ^ 0x5bd1e995) | 0;
  if (state === 0) state = 1;
  const real = (): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 4294967296;
  };
  for (let i = 0; i < 8; i++) real();
  return { real, integer: (below) => Math.floor(real() * below) };
}
