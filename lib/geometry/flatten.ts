/** Arcs as runs of short straight edges. */
import { type ArcEdge, type Edge, pointOnEdge, tangentOnEdge } from './arc.js';
import { edgesOf, edgesOfPath } from './contour.js';
import { add } from './point.js';
import type { Contour, Path, Point, Polygon } from './types.js';

/**
 * On which side of the true edge the straight runs lie. The material lies to the left of every ring (outer contours
 * run anticlockwise, openings clockwise). `on`: corners on the edge. `outside`: the polygon's material covers the
 * true material. `inside`: it is covered by it.
 */
export type FlattenSide = 'on' | 'outside' | 'inside';

/** Number of equal pieces of a sweep so that chord or tangent stays within `tolerance` of the arc. */
function pieces(arc: ArcEdge, tolerance: number, byTangents: boolean): number {
  const ratio = tolerance / arc.radius;
  // chord: r(1 - cos(δ/2)) <= tolerance; tangents: r(1/cos(δ/2) - 1) <= tolerance
  const half = byTangents ? Math.acos(1 / (1 + ratio)) : Math.acos(Math.max(0, 1 - ratio));
  // pieces of at most a quarter turn keep tangents from running away at coarse tolerances
  return Math.max(1, Math.ceil(Math.abs(arc.sweep) / Math.min(2 * half, Math.PI / 2)));
}

/** The points of one edge, its start included and its end left to the next edge. */
function flattenEdge(edge: Edge, tolerance: number, side: FlattenSide): Point[] {
  const points: Point[] = [{ x: edge.from.x, y: edge.from.y }];
  if (edge.kind === 'straight') return points;
  // material is on the left, inside the circle of an anticlockwise arc: there, tangents cover it and chords do not
  const byTangents = side !== 'on' && (side === 'outside') === edge.sweep > 0;
  const count = pieces(edge, tolerance, byTangents);
  if (byTangents) {
    // the tangents' intersection stands off the middle of each piece, on the convex side
    const rise = edge.radius * (1 / Math.cos(edge.sweep / count / 2) - 1);
    for (let k = 0; k < count; k++) {
      const t = (k + 0.5) / count;
      const { x, y } = tangentOnEdge(edge, t);
      const out = Math.sign(edge.sweep) * rise;
      points.push(add(pointOnEdge(edge, t), { x: y * out, y: -x * out }));
    }
  } else {
    for (let k = 1; k < count; k++) points.push(pointOnEdge(edge, k / count));
  }
  return points;
}

function checkTolerance(tolerance: number): void {
  if (!(tolerance > 0)) throw new RangeError(`flattening needs a tolerance above 0 mm, not ${tolerance}`);
}

/**
 * The ring as a polygon that stays within `tolerance` (mm, above 0) of it, on the stated side. Corners of the ring
 * are corners of the polygon. Throws RangeError for a tolerance of 0 or less.
 */
export function flatten(contour: Contour, tolerance: number, side: FlattenSide): Polygon {
  checkTolerance(tolerance);
  return edgesOf(contour).flatMap((edge) => flattenEdge(edge, tolerance, side));
}

/** The open path as a run of points on it, chords within `tolerance` (mm, above 0). Throws RangeError as `flatten` does. */
export function flattenPath(path: Path, tolerance: number): Point[] {
  checkTolerance(tolerance);
  const last = path.at(-1);
  const points = edgesOfPath(path).flatMap((edge) => flattenEdge(edge, tolerance, 'on'));
  return last === undefined ? points : [...points, { x: last.x, y: last.y }];
}
