import { edgesOf, type Point, pointOnEdge, type Vertex } from '../geometry/index.js';

/** Where a ring crosses an upright line: the edge, the fraction of it, and the place. */
export interface Crossing {
  readonly edge: number;
  readonly fraction: number;
  readonly at: Point;
}

/** Where a ring crosses the upright line at `x`, from below to above; null unless it does so just twice. */
export function crossings(ring: readonly Vertex[], x: number): readonly [Crossing, Crossing] | null {
  const found = edgesOf(ring).flatMap((edge, i): Crossing[] => {
    if (edge.from.x < x === edge.to.x < x) return [];
    let [low, high] = [0, 1];
    const rising = edge.to.x > edge.from.x;
    for (let k = 0; k < 60; k++) {
      const middle = (low + high) / 2;
      if (pointOnEdge(edge, middle).x < x === rising) low = middle;
      else high = middle;
    }
    const fraction = (low + high) / 2;
    return [{ edge: i, fraction, at: { x, y: pointOnEdge(edge, fraction).y } }];
  });
  const [first, second] = found.sort((a, b) => a.at.y - b.at.y);
  return found.length === 2 && first && second ? [first, second] : null;
}
