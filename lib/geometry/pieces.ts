/** Edges cut where they meet each other. */
import { element } from './element.js';
import { type Edge, edgeLength, pointOnEdge } from './arc.js';
import { indexBoxes } from './box-index.js';
import { edgeBounds } from './contour.js';
import { intersectEdges } from './intersect.js';
import { SAME_CORNER, TOUCH } from './precision.js';
import type { Point } from './types.js';

/** The run of an edge between two fractions (0 to 1, ascending), with its exact ends. */
export interface EdgePiece {
  /** Index of the edge it is a run of. */
  readonly source: number;
  readonly edge: Edge;
  readonly t0: number;
  readonly t1: number;
  readonly from: Point;
  readonly to: Point;
}

/** Fractions at which each edge meets another, by pairs whose boxes meet. */
function cuts(edges: readonly Edge[]): number[][] {
  const boxes = edges.map(edgeBounds);
  const index = indexBoxes(boxes);
  const at: number[][] = edges.map(() => []);
  edges.forEach((edge, i) => {
    for (const j of index.touching(element(boxes, i), TOUCH)) {
      if (j <= i) continue;
      const contact = intersectEdges(edge, element(edges, j));
      if (contact.kind === 'none') continue;
      for (const { onA, onB } of contact.points) {
        element(at, i).push(onA);
        element(at, j).push(onB);
      }
    }
  });
  return at;
}

/**
 * Every edge in runs from cut to cut, along its direction. Runs shorter than a corner are left out.
 * @param fractions for each edge, where it is cut (0 to 1), in any order
 */
export function cutEdges(edges: readonly Edge[], fractions: readonly (readonly number[])[]): EdgePiece[] {
  return edges.flatMap((edge, source) => {
    const length = edgeLength(edge);
    const pieces: EdgePiece[] = [];
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
export function cutAtIntersections(edges: readonly Edge[]): EdgePiece[] {
  return cutEdges(edges, cuts(edges));
}
