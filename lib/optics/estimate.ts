/** Values with their standard errors, from independent batches. */
import type { Estimate } from './types.js';

/** Mean of the batches and its standard error; a mean that is infinite is not known to any error. */
export function estimate(batches: Float64Array | readonly number[]): Estimate {
  const n = batches.length;
  let sum = 0;
  for (const one of batches) sum += one;
  const value = sum / n;
  if (!Number.isFinite(value)) return { value, standardError: Infinity };
  let squares = 0;
  for (const one of batches) squares += (one - value) ** 2;
  return { value, standardError: n > 1 ? Math.sqrt(squares / (n - 1) / n) : 0 };
}

export function scaled(estimate: Estimate, factor: number): Estimate {
  return { value: estimate.value * factor, standardError: estimate.standardError * Math.abs(factor) };
}

/** A value that is known, not sampled. */
export function exact(value: number): Estimate {
  return { value, standardError: 0 };
}
