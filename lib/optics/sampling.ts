/**
 * Seeded, evenly spread sample points: an additive recurrence on the generalised golden ratio (M. Roberts, The
 * unreasonable effectiveness of quasirandom sequences, 2018, from memory), shifted at random for each batch
 * (Cranley and Patterson, SIAM Journal on Numerical Analysis 13, 1976, from memory). The batches are independent, so
 * their spread is an honest standard error.
 */

/** Steps of the recurrence in each of `dimensions` directions: powers of 1/φ, where φ^(d+1) = φ + 1. */
export function recurrenceSteps(dimensions: number): Float64Array {
  let ratio = 1.5;
  for (let i = 0; i < 60; i++) ratio = (1 + ratio) ** (1 / (dimensions + 1));
  return Float64Array.from({ length: dimensions }, (_, j) => ratio ** -(j + 1));
}
