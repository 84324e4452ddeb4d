/**
 * How far the points of some edges lie from a set of edges, at most: the directed Hausdorff distance, bounded from
 * above. Distance changes no faster than the point moves, and along a straight piece the distance from a straight edge
 * is convex; from these two facts an interval is either settled or halved.
 */
import type { EdgeSet } from './edge-set.js';
import { type ProofEdge, distanceFrom, isFacedBy, outsideCircle, pointAlong } from './edge.js';
import { measureSlack } from './limits.js';
import type { ProofPoint } from './types.js';

/** A piece of an edge with the greatest distance that any of its points can have. */
export interface Farther {
  readonly edge: ProofEdge;
  readonly from: number;
  readonly to: number;
  readonly max: number;
  readonly place: ProofPoint;
}

interface Sample extends ProofPoint {
  readonly t: number;
  readonly distance: number;
  readonly nearest: ProofEdge;
}

/**
 * Upper bound of the distance from the edge `other` between two samples. Distance from a straight edge, from a point,
 * and from outside of a circle is convex; inside a circle it is greatest where the chord comes nearest to the centre.
 * The circle counts only where the whole chord faces the arc, elsewhere it is an end of the arc that is near. An arc
 * leaves its own chord by no more than its rise.
 */
function boundBy(other: ProofEdge, edge: ProofEdge, a: Sample, b: Sample, length: number): number {
  const rise = edge.sweep === 0 ? 0 : (length * length) / (8 * edge.radius);
  if (other.sweep !== 0 && !isFacedBy(other, a, b)) {
    const fromStart = Math.max(distanceOf(other.ax, other.ay, a), distanceOf(other.ax, other.ay, b));
    return Math.min(fromStart, Math.max(distanceOf(other.bx, other.by, a), distanceOf(other.bx, other.by, b))) + rise;
  }
  const ends = Math.max(
    other === a.nearest ? a.distance : distanceFrom(other, a.x, a.y),
    other === b.nearest ? b.distance : distanceFrom(other, b.x, b.y),
  );
  if (other.sweep === 0) return ends + rise;
  // radius less the distance of the chord from the centre, as a quotient: of a far centre the difference is rounding
  const inner = Math.min(outsideCircle(other, a.x, a.y), outsideCircle(other, b.x, b.y));
  const { radius } = other;
  const less = Math.min(radius * radius, (length * length) / 4 - inner * (2 * radius + inner));
  const fromCentre = Math.sqrt(radius * radius - less);
  return Math.max(ends, less / (radius + fromCentre)) + rise;
}

function distanceOf(x: number, y: number, place: ProofPoint): number {
  const dx = place.x - x;
  const dy = place.y - y;
  return Math.sqrt(dx * dx + dy * dy);
}

/** Upper bound of the distance from the set between two samples, by either edge that is nearest at an end. */
function bound(edge: ProofEdge, a: Sample, b: Sample): number {
  const length = (b.t - a.t) * edge.length;
  const by = (other: ProofEdge): number => boundBy(other, edge, a, b, length);
  const settled = a.nearest === b.nearest ? by(a.nearest) : Math.min(by(a.nearest), by(b.nearest));
  return Math.min(settled, (a.distance + b.distance + length) / 2);
}

/** Of a distance that is far too large, so much may be wrong: a fault has to be found, not measured. */
const coarse = 0.02;

/**
 * Goes over all points of `edges` and gives each piece that may lie farther than `limit` from the set, and the
 * greatest distance met. The result stands at most half a micrometre above the true greatest distance, or by a
 * fiftieth of what that distance has over the limit.
 */
export function farthestFrom(
  edges: readonly ProofEdge[],
  set: EdgeSet,
  limit: number,
): { readonly max: number; readonly place: ProofPoint; readonly beyond: readonly Farther[] } {
  const beyond: Farther[] = [];
  let max = 0;
  let place: ProofPoint = { x: edges[0]?.ax ?? 0, y: edges[0]?.ay ?? 0 };
  let guess: ProofEdge | undefined;
  const sample = (edge: ProofEdge, t: number): Sample => {
    const { x, y } = pointAlong(edge, t);
    const found = set.nearestTo(x, y, guess);
    guess = found.edge;
    return { t, x, y, distance: found.distance, nearest: found.edge };
  };
  const settle = (edge: ProofEdge, a: Sample, b: Sample): void => {
    const higher = a.distance >= b.distance ? a : b;
    const upper = bound(edge, a, b);
    const slack = measureSlack + coarse * Math.max(0, higher.distance - limit);
    if (upper > higher.distance + slack) {
      const middle = sample(edge, (a.t + b.t) / 2);
      settle(edge, a, middle);
      settle(edge, middle, b);
      return;
    }
    if (upper > max) {
      max = upper;
      place = { x: higher.x, y: higher.y };
    }
    if (upper > limit) beyond.push({ edge, from: a.t, to: b.t, max: upper, place: { x: higher.x, y: higher.y } });
  };
  for (const edge of edges) settle(edge, sample(edge, 0), sample(edge, 1));
  return { max, place, beyond };
}
