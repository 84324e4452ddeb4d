/**
 * How far the points of some edges lie from a set of edges, at most: the directed Hausdorff distance, bounded from
 * above. Distance changes no faster than the point moves, and along a straight piece the distance from a straight edge
 * is convex; from these two facts an interval is either settled or halved.
 */
import type { EdgeSet } from './edge-set.js';
import { type ProofEdge, distanceFrom, isFacedBy, outsideCircle, pastEnd, pastStart, pointAlong } from './edge.js';
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
 * Upper bound of the distance from the edge `other` between two samples, by their chord. Distance from a straight edge, from a point,
 * and from outside of a circle is convex; inside a circle it is greatest where the chord comes nearest to the centre.
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

function distanceOf(x: number, y: number, place: ProofPoint): number {
  const dx = place.x - x;
  const dy = place.y - y;
  return Math.sqrt(dx * dx + dy * dy);
}

/**
 * Greatest value along a piece of an arc of what changes with the angle as a cosine does, its greatest where the radius
 * points along a direction: at one of its ends, or there.
 */
function maxAlong(
  arc: ProofEdge,
  a: Sample,
  b: Sample,
  ux: number,
  uy: number,
  valueAt: (x: number, y: number) => number,
): number {
  const { mx, my, sweep } = arc;
  const t = 0.5 + Math.atan2(mx * uy - my * ux, mx * ux + my * uy) / sweep;
  const max = Math.max(valueAt(a.x, a.y), valueAt(b.x, b.y));
  if (t <= a.t || t >= b.t) return max;
  const { x, y } = pointAlong(arc, t);
  return Math.max(max, valueAt(x, y));
}

/** So much of its radius off a circle, and past the end of its arc, the bound by two arcs holds. */
const nearCircle = 0.1;
const nearEnd = 0.5;
/** From a place that is `d` past the end of an arc its projection to the circle is at most this much of `d` from the end. */
const pastToEnd = 1.2;

/** How far a piece of an arc reaches past the ends of another edge at most, along the tangents there. */
function reachPast(other: ProofEdge, arc: ProofEdge, a: Sample, b: Sample): number {
  const before = maxAlong(arc, a, b, -other.tax, -other.tay, (x, y) => -pastStart(other, x, y));
  const after = maxAlong(arc, a, b, other.tbx, other.tby, (x, y) => pastEnd(other, x, y));
  // of more than half a turn only what is past both ends is past it
  return Math.max(0, Math.abs(other.sweep) <= Math.PI ? Math.max(before, after) : Math.min(before, after));
}

/**
 * Upper bound of the distance of a piece of an arc from another edge. The distance of its points from a line, and from
 * any centre, is greatest and least at its ends or at one place between. What reaches past the other's end is farther
 * by little more than it reaches.
 */
function boundAlongArc(other: ProofEdge, arc: ProofEdge, a: Sample, b: Sample): number {
  const fromPoint = (x: number, y: number): number =>
    maxAlong(arc, a, b, arc.cx - x, arc.cy - y, (px, py) => Math.sqrt((px - x) ** 2 + (py - y) ** 2));
  const fromEnd = Math.min(fromPoint(other.ax, other.ay), fromPoint(other.bx, other.by));
  const past = reachPast(other, arc, a, b);
  const { tax, tay } = other;
  if (other.sweep === 0) {
    const aside = (x: number, y: number): number => (y - other.ay) * tax - (x - other.ax) * tay;
    const left = maxAlong(arc, a, b, -tay, tax, aside);
    const right = maxAlong(arc, a, b, tay, -tax, (x, y) => -aside(x, y));
    return Math.min(fromEnd, Math.max(left, right) + past);
  }
  const dx = arc.cx - other.cx;
  const dy = arc.cy - other.cy;
  const outside = maxAlong(arc, a, b, dx, dy, (x, y) => outsideCircle(other, x, y));
  const within = maxAlong(arc, a, b, -dx, -dy, (x, y) => -outsideCircle(other, x, y));
  const off = Math.max(outside, within);
  if (off > nearCircle * other.radius || past > nearEnd * other.radius) return fromEnd;
  return Math.min(fromEnd, off + pastToEnd * past);
}

/** Upper bound of the distance from the edge `other` between two samples. */
function bound(other: ProofEdge, edge: ProofEdge, a: Sample, b: Sample): number {
  const byChord = boundByChord(other, edge, a, b, (b.t - a.t) * edge.length);
  const isSettled = edge.sweep === 0 || byChord <= Math.max(a.distance, b.distance) + measureSlack;
  return isSettled ? byChord : Math.min(byChord, boundAlongArc(other, edge, a, b));
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
  for (const edge of edges) settle(edge, sample(edge, 0), sample(edge, 1));
  return { max, place, beyond };
}
