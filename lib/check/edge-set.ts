/** Many edges, asked for the nearest to a point or to another edge. */
import Flatbush from 'flatbush';
import { boundsDistance, closest, type ClosestPoint } from './edge-distance.js';
import { type ProofEdge, distanceFrom } from './edge.js';

export interface Found {
  readonly distance: number;
  readonly edge: ProofEdge;
}

/** A set of edges with an index of their boxes. It must hold one edge at least. */
export class EdgeSet {
  readonly edges: readonly ProofEdge[];
  readonly #index: Flatbush;

  constructor(edges: readonly ProofEdge[]) {
    this.edges = edges;
    this.#index = new Flatbush(edges.length, 8);
    for (const edge of edges) this.#index.add(edge.minX, edge.minY, edge.maxX, edge.maxY);
    this.#index.finish();
  }

  /** The edge nearest to a point; `guess` is an edge that is likely near, which only saves time. */
  nearestTo(x: number, y: number, guess?: ProofEdge): Found {
    let edge = guess ?? this.edges[this.#index.neighbors(x, y, 1)[0] ?? 0]!;
    let distance = distanceFrom(edge, x, y);
    // the box of the search does not shrink, so what it yields is held against the best so far
    this.#index.search(x - distance, y - distance, x + distance, y + distance, (i) => {
      const other = this.edges[i]!;
      const away = distanceFrom(other, x, y);
      if (away < distance) {
        distance = away;
        edge = other;
      }
      return false;
    });
    return { distance, edge };
  }

  /** Where `edge` comes nearest to the set, if that is nearer than `within`. `skip` leaves out edges of the set. */
  nearestWithin(edge: ProofEdge, within: number, skip?: (other: ProofEdge) => boolean): ClosestPoint | null {
    let best: ClosestPoint | null = null;
    let min = within;
    const { minX, minY, maxX, maxY } = edge;
    this.#index.search(minX - within, minY - within, maxX + within, maxY + within, (i) => {
      const other = this.edges[i]!;
      if (boundsDistance(edge, other) >= min || skip?.(other) === true) return false;
      const found = closest(edge, other);
      if (found.distance < min) {
        min = found.distance;
        best = found;
      }
      return false;
    });
    return best;
  }
}
