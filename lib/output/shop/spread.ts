/** Places in a row, kept apart. */

/**
 * Places in order, moved as little as can be (by least squares) so that neighbours keep `gap` between them. Runs that
 * are too close are pooled and centred (the pooling of adjacent violators).
 */
export function spreadOut(wanted: readonly number[], gap: number): number[] {
  const pools: { sum: number; count: number }[] = [];
  // less its own share of the gaps, each place must only not fall below the one before it
  wanted.forEach((place, i) => {
    pools.push({ sum: place - i * gap, count: 1 });
    for (;;) {
      const [before, last] = [pools.at(-2), pools.at(-1)];
      if (before === undefined || last === undefined || before.sum / before.count <= last.sum / last.count) break;
      pools.splice(-2, 2, { sum: before.sum + last.sum, count: before.count + last.count });
    }
  });
  return pools
    .flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count))
    .map((at, i) => at + i * gap);
}
