import { type Vertex, bulgeOfSweep, edgeArc, pointOnEdge } from '../geometry/index.js';

/**
 * The same ring or path with every arc that sweeps more than `max` (radians, above 0) divided into equal arcs that
 * do not. The last vertex of an open path starts no edge.
 */
export function splitArcs(vertices: readonly Vertex[], closed: boolean, max: number): Vertex[] {
  return vertices.flatMap((vertex, i) => {
    const next = vertices[i + 1] ?? (closed ? vertices[0] : undefined);
    if (next === undefined) return [{ ...vertex, bulge: 0 }];
    const sweep = 4 * Math.atan(vertex.bulge);
    // a billionth over is rounding of the sweep itself, not a wider arc
    const pieces = Math.ceil(Math.abs(sweep) / max - 1e-9);
    if (pieces <= 1) return [vertex];
    const edge = edgeArc(vertex, next);
    const bulge = bulgeOfSweep(sweep / pieces);
    return Array.from({ length: pieces }, (_, k) => {
      const { x, y } = k === 0 ? vertex : pointOnEdge(edge, k / pieces);
      return { x, y, bulge };
    });
  });
}
