/**
 * How far the points of some edges lie from a set of edges, at most: the directed Hausdorff distance, bounded from
 * above. Distance changes no faster than the point moves, and along a straight piece the distance from a straight edge
 * is convex; from these two facts an interval is either settled or halved.
 */
import type { EdgeSet } from './edge-set.js';
import {
  type ProofEdge,
  distanceFrom,
  isFacedBy,
  lengthOf,
  outsideCircle,
  pastEnd,
  pastStart,
  pointAlong,
} from './edge.js';
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
 * Upper bound of the distance from the edge `other` between two samples, by their chord. Distance from a straight edge,
 * from a point, and from outside of a circle is convex; inside a circle it is greatest where the chord comes nearest to
 * the centre.
 * The circle counts only where the whole chord faces the arc, elsewhere it is an end of the arc that is near. An arc
 * leaves its own chord by no more than its rise.
 */
function boundByChord(other: ProofEdge, edge: ProofEdge, a: Sample, b: Sample, length: number): number {
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

const distanceOf = (x: number, y: number, place: ProofPoint): number => lengthOf(place.x - x, place.y - y);

/**
 * The place on a piece of an arc at which its radius points along a direction: there, or at an end of the piece, is the
 * greatest value of what changes with the angle as a cosine does. Null where that place is not on the piece.
 */
function placeTowards(arc: ProofEdge, a: Sample, b: Sample, ux: number, uy: number): ProofPoint | null {
  const { mx, my, sweep } = arc;
  const t = 0.5 + Math.atan2(mx * uy - my * ux, mx * ux + my * uy) / sweep;
  return t > a.t && t < b.t ? pointAlong(arc, t) : null;
}

/** Greatest distance of a piece of an arc from a point. */
function farthestFromPoint(x: number, y: number, arc: ProofEdge, a: Sample, b: Sample): number {
  const ends = Math.max(distanceOf(x, y, a), distanceOf(x, y, b));
  const far = placeTowards(arc, a, b, arc.cx - x, arc.cy - y);
  return far === null ? ends : Math.max(ends, distanceOf(x, y, far));
}

/** How far a piece of an arc reaches past the ends of another edge at most, along the tangents there. */
function reachPast(other: ProofEdge, arc: ProofEdge, a: Sample, b: Sample): number {
  const first = placeTowards(arc, a, b, -other.tax, -other.tay) ?? a;
  const before = -Math.min(pastStart(other, a.x, a.y), pastStart(other, b.x, b.y), pastStart(other, first.x, first.y));
  const last = placeTowards(arc, a, b, other.tbx, other.tby) ?? b;
  const after = Math.max(pastEnd(other, a.x, a.y), pastEnd(other, b.x, b.y), pastEnd(other, last.x, last.y));
  // of more than half a turn only what is past both ends is past it
  return Math.max(0, Math.abs(other.sweep) <= Math.PI ? Math.max(before, after) : Math.min(before, after));
}

/** Greatest distance of a piece of an arc from the line or the circle on which another edge lies. */
function farthestAside(other: ProofEdge, arc: ProofEdge, a: Sample, b: Sample): number {
  const { ax, ay, tax, tay } = other;
  const straight = other.sweep === 0;
  const aside = (x: number, y: number): number =>
    Math.abs(straight ? (y - ay) * tax - (x - ax) * tay : outsideCircle(other, x, y));
  const dx = straight ? -tay : arc.cx - other.cx;
  const dy = straight ? tax : arc.cy - other.cy;
  const one = placeTowards(arc, a, b, dx, dy) ?? a;
  const another = placeTowards(arc, a, b, -dx, -dy) ?? b;
  return Math.max(aside(a.x, a.y), aside(b.x, b.y), aside(one.x, one.y), aside(another.x, another.y));
}

/** So much of its radius off a circle, and past the end of its arc, the bound by two arcs holds. */
const nearCircle = 0.1;
const nearEnd = 0.5;
/** From a place that is `d` past the end of an arc its projection to the circle is at most this much of `d` from the end. */
const pastToEnd = 1.2;

/**
 * Upper bound of the distance of a piece of an arc from another edge: by what it is aside of the edge's line or circle,
 * and a little more than what it reaches past the edge's end; or by one of the edge's ends.
 * @param enough a bound that settles the piece
 */
function boundAlongArc(other: ProofEdge, arc: ProofEdge, a: Sample, b: Sample, enough: number): number {
  const aside = farthestAside(other, arc, a, b);
  const past = reachPast(other, arc, a, b);
  const holds = other.sweep === 0 || (aside <= nearCircle * other.radius && past <= nearEnd * other.radius);
  const along = holds ? aside + pastToEnd * past : Infinity;
  if (along <= enough) return along;
  const fromStart = farthestFromPoint(other.ax, other.ay, arc, a, b);
  return Math.min(along, fromStart, farthestFromPoint(other.bx, other.by, arc, a, b));
}

/** Upper bound of the distance from the edge `other` between two samples. */
function bound(other: ProofEdge, edge: ProofEdge, a: Sample, b: Sample): number {
  const byChord = boundByChord(other, edge, a, b, (b.t - a.t) * edge.length);
  const enough = Math.max(a.distance, b.distance) + measureSlack;
  return edge.sweep === 0 || byChord <= enough ? byChord : Math.min(byChord, boundAlongArc(other, edge, a, b, enough));
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
    let higher = a.distance >= b.distance ? a : b;
    let upper = (a.distance + b.distance + (b.t - a.t) * edge.length) / 2;
    const isSettled = (by: ProofEdge): boolean => {
      upper = Math.min(upper, bound(by, edge, a, b));
      return upper <= higher.distance + measureSlack + coarse * Math.max(0, higher.distance - limit);
    };
    if (!isSettled(a.nearest) && (a.nearest === b.nearest || !isSettled(b.nearest))) {
      const middle = sample(edge, (a.t + b.t) / 2);
      if (middle.distance > higher.distance) higher = middle;
      // where edges meet, those that are nearest to the ends may be the neighbours of the one that runs along
      if (!isSettled(middle.nearest)) {
        settle(edge, a, middle);
        settle(edge, middle, b);
        return;
      }
    }
    if (upper > max) {
      max = upper;
      place = { x: higher.x, y: higher.y };
    }
    if (upper > limit) beyond.push({ edge, from: a.t, to: b.t, max: upper, place: { x: higher.x, y: higher.y } });
  };
  let end: Sample | undefined;
  for (const edge of edges) {
    // along a ring an edge starts where the one before it ends
    const start = end?.x === edge.ax && end.y === edge.ay ? { ...end, t: 0 } : sample(edge, 0);
    end = sample(edge, 1);
    settle(edge, start, end);
  }
  return { max, place, beyond };
}
