/** Edges cut where they intersect each other. */
import { type Edge, edgeLength, pointOnEdge } from './arc.js';
import { indexBoxes } from './box-index.js';
import { edgeBounds } from './contour.js';
import { element } from './element.js';
import { intersectEdges } from './intersect.js';
import { SAME_CORNER, TOUCH } from './precision.js';
import type { Point } from './types.js';

/** The run of an edge between two fractions (0 to 1, ascending), with its exact ends. */
export interface Piece {
  /** Index of the edge it is a run of. */
  readonly source: number;
  readonly edge: Edge;
  readonly t0: number;
  readonly t1: number;
  readonly from: Point;
  readonly to: Point;
}

/** Fractions at which each edge intersects another, by pairs whose boxes overlap. */
function cuts(edges: readonly Edge[]): number[][] {
  const boxed = edges.map((edge) => ({ edge, box: edgeBounds(edge), at: [] as number[] }));
  const index = indexBoxes(boxed.map(({ box }) => box));
  boxed.forEach(({ edge, box, at }, i) => {
    for (const j of index.overlapping(box, TOUCH)) {
      if (j <= i) continue;
      const other = element(boxed, j);
      const contact = intersectEdges(edge, other.edge);
      if (contact.kind === 'none') continue;
      for (const { onA, onB } of contact.points) {
        at.push(onA);
        other.at.push(onB);
      }
    }
  });
  return boxed.map(({ at }) => at);
}

/**
 * Every edge in runs from cut to cut, along its direction. Runs shorter than a corner are left out.
 * @param fractions for each edge, where it is cut (0 to 1), in any order
 */
export function cutEdges(edges: readonly Edge[], fractions: readonly (readonly number[])[]): Piece[] {
  return edges.flatMap((edge, source) => {
    const length = edgeLength(edge);
    const pieces: Piece[] = [];
    let t0 = 0;
    let from: Point = edge.from;
    for (const t1 of [...element(fractions, source), 1].sort((a, b) => a - b)) {
      // a cut next to the end is the end: the run before it goes on to there
      if ((t1 - t0) * length <= SAME_CORNER || (t1 < 1 && (1 - t1) * length <= SAME_CORNER)) continue;
      const to = t1 === 1 ? edge.to : pointOnEdge(edge, t1);
      pieces.push({ source, edge, t0, t1, from, to });
      t0 = t1;
      from = to;
    }
    return pieces;
  });
}

/** Every edge in runs from intersection to intersection. */
export function cutAtIntersections(edges: readonly Edge[]): Piece[] {
  return cutEdges(edges, cuts(edges));
}
