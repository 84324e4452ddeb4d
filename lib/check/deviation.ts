/**
 * How far the points of some edges lie from a set of edges, at most: the directed Hausdorff distance, bounded from
 * above. Distance changes no faster than the point moves, and along a straight piece the distance from a straight edge
 * is convex; from these two facts an interval is either settled or halved.
 */
import type { EdgeSet } from './edge-set.js';
import { type Edge, distanceFrom, pointAt } from './edge.js';
import { measureSlack } from './limits.js';
import type { Place } from './types.js';

/** A piece of an edge with the greatest distance that any of its points can have. */
export interface Farther {
  readonly edge: Edge;
  readonly from: number;
  readonly to: number;
  readonly most: number;
  readonly place: Place;
}

interface Sample extends Place {
  readonly t: number;
  readonly distance: number;
  readonly nearest: Edge;
}

/** How far the distance from `other` can rise between two samples, above the greater of both, by curvature alone. */
function rise(length: number, edge: Edge, other: Edge, nearer: number): number {
  const square = (length * length) / 8;
  const own = edge.sweep === 0 ? 0 : square / edge.radius;
  if (other.sweep === 0) return own;
  // inside a circle the distance from it is concave, most so near its centre
  const fromCentre = other.radius - nearer - length;
  return fromCentre <= 0 ? Infinity : own + square / fromCentre;
}

/** Upper bound of the distance from the set between two samples, by either edge that is nearest at an end. */
function bound(edge: Edge, a: Sample, b: Sample): number {
  const length = (b.t - a.t) * edge.length;
  const most = (other: Edge): number => {
    const far = Math.max(
      other === a.nearest ? a.distance : distanceFrom(other, a.x, a.y),
      other === b.nearest ? b.distance : distanceFrom(other, b.x, b.y),
    );
    return far + rise(length, edge, other, far);
  };
  const settled = a.nearest === b.nearest ? most(a.nearest) : Math.min(most(a.nearest), most(b.nearest));
  return Math.min(settled, (a.distance + b.distance + length) / 2);
}

/**
 * Goes over all points of `edges` and tells each piece that may lie farther than `limit` from the set, and the
 * greatest distance met. The result stands at most half a micrometre above the true greatest distance.
 */
export function farthestFrom(
  edges: readonly Edge[],
  set: EdgeSet,
  limit: number,
): { readonly most: number; readonly place: Place; readonly beyond: readonly Farther[] } {
  const beyond: Farther[] = [];
  let most = 0;
  let place: Place = { x: edges[0]?.ax ?? 0, y: edges[0]?.ay ?? 0 };
  let guess = set.edges[0]!;
  const sample = (edge: Edge, t: number): Sample => {
    const { x, y } = pointAt(edge, t);
    const found = set.nearestTo(x, y, guess);
    guess = found.edge;
    return { t, x, y, distance: found.distance, nearest: found.edge };
  };
  const settle = (edge: Edge, a: Sample, b: Sample): void => {
    const higher = a.distance >= b.distance ? a : b;
    const upper = bound(edge, a, b);
    if (upper > higher.distance + measureSlack) {
      const middle = sample(edge, (a.t + b.t) / 2);
      settle(edge, a, middle);
      settle(edge, middle, b);
      return;
    }
    if (upper > most) {
      most = upper;
      place = { x: higher.x, y: higher.y };
    }
    if (upper > limit) beyond.push({ edge, from: a.t, to: b.t, most: upper, place: { x: higher.x, y: higher.y } });
  };
  for (const edge of edges) settle(edge, sample(edge, 0), sample(edge, 1));
  return { most, place, beyond };
}
