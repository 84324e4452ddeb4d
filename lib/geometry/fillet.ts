import { bulgeOfSweep, edgeArc, pointOnEdge, tangentOnEdge, type Edge } from './arc.js';
import { intersectEdges, type Intersection } from './intersect.js';
import { parallelEdge, turnBetween } from './parallel.js';
import { cross, distance, dot } from './point.js';
import type { Contour, Vertex } from './types.js';

/** A turn below this (radians) is no corner. */
const MIN_TURN = 1e-9;

/** Bulge of the part of an edge between two fractions. */
function bulgeOfPart(edge: Edge, t0: number, t1: number): number {
  return edge.kind === 'arc' ? bulgeOfSweep(edge.sweep * (t1 - t0)) : 0;
}

/**
 * The ring with the corner at vertex `index` rounded by an arc of `radius` (mm, above 0) that is tangent to both of
 * its edges, straight or not. The vertex is replaced by two, so later indices move up by one; a corner without a
 * turn stays as it is. Throws RangeError for an unknown vertex, or when the edges are too short for the radius.
 */
export function fillet(contour: Contour, index: number, radius: number): Contour {
  const n = contour.length;
  const corner = contour[index];
  const first = contour[(index + n - 1) % n];
  const next = contour[(index + 1) % n];
  if (corner === undefined || first === undefined || next === undefined) {
    throw new RangeError(`a ring of ${n} vertices has no vertex ${index}`);
  }
  if (!(radius > 0)) throw new RangeError(`a corner is rounded by a radius above 0 mm, not ${radius}`);
  const before = edgeArc(first, corner);
  const after = edgeArc(corner, next);
  const turn = turnBetween(before, after);
  if (Math.abs(turn) < MIN_TURN) return contour;

  // the arc's centre is as far from both edges as its radius, on the side to which the corner turns
  const off = turn > 0 ? -radius : radius;
  const parallels = [parallelEdge(before, off), parallelEdge(after, off)] as const;
  const contact = parallels[0] === null || parallels[1] === null ? null : intersectEdges(parallels[0], parallels[1]);
  const centre = (contact === null || contact.kind === 'none' ? [] : contact.points).reduce<Intersection | null>(
    (a, b) => (a === null || distance(b, corner) < distance(a, corner) ? b : a),
    null,
  );
  if (centre === null) {
    throw new RangeError(`the edges at vertex ${index} are too short for a corner of ${radius} mm radius`);
  }
  const enter = tangentOnEdge(before, centre.onA);
  const leave = tangentOnEdge(after, centre.onB);
  const sweep = Math.atan2(cross(enter, leave), dot(enter, leave));
  const cut: Vertex = { x: first.x, y: first.y, bulge: bulgeOfPart(before, 0, centre.onA) };
  const start: Vertex = { ...pointOnEdge(before, centre.onA), bulge: bulgeOfSweep(sweep) };
  const end: Vertex = { ...pointOnEdge(after, centre.onB), bulge: bulgeOfPart(after, centre.onB, 1) };
  const rounded = contour.map((v) => v);
  rounded[(index + n - 1) % n] = cut;
  rounded.splice(index, 1, start, end);
  return rounded;
}
