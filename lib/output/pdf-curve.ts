/** What a PDF is drawn in: points and cubic curves. */
import { type ArcEdge, type Point, polar } from '../geometry/index.js';

export const POINTS_PER_MM = 72 / 25.4;

/** Sweep of arcs that are near enough to one curve, radians: an eighth of a turn. */
export const CURVE_SWEEP = Math.PI / 4;

/**
 * Control points of the cubic Bezier curve for an arc of at most an eighth of a turn: handles of (4/3)·tan(sweep/4)·radius
 * along the tangents (from memory: the usual approximation of a circle) leave the arc by 4 parts in a million of its
 * radius.
 */
export function curveHandles({ from, to, radius, startAngle, sweep }: ArcEdge): readonly [Point, Point] {
  const handle = (4 / 3) * Math.tan(sweep / 4) * radius;
  return [polar(handle, startAngle + Math.PI / 2, from), polar(-handle, startAngle + sweep + Math.PI / 2, to)];
}
