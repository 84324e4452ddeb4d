import type { Point } from './types.js';

/**
 * Corners of the convex hull, anticlockwise (Andrew's chain, Information Processing Letters 9, 1979, from memory).
 * @param slack corners by which the ring turns less are left out: cross product of the two edges, mm²
 */
export function convexHull(points: readonly Point[], slack = 0): Point[] {
  const sorted = [...points].sort((p, q) => p.x - q.x || p.y - q.y);
  const half = (run: readonly Point[]): Point[] => {
    const chain: Point[] = [];
    for (const p of run) {
      for (;;) {
        const [a, b] = [chain.at(-2), chain.at(-1)];
        if (!a || !b || (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x) > slack) break;
        chain.pop();
      }
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.toReversed())];
}
