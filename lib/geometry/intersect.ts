/** Where two edges meet. */
import {
  type ArcEdge,
  arcFraction,
  type Edge,
  edgeLength,
  offCarrier,
  pointOnEdge,
  type StraightEdge,
  tangentOnEdge,
} from './arc.js';
import { intersectCircles } from './intersect-circles.js';
import { intersectLineCircle } from './intersect-line-circle.js';
import { intersectLines } from './intersect-lines.js';
import { cross, distance, subtract } from './point.js';
import { TOUCH } from './precision.js';
import type { Point } from './types.js';

/** A common point of two edges, with the fraction (0 to 1) of each at which it lies. */
export interface Intersection extends Point {
  readonly onA: number;
  readonly onB: number;
}

/**
 * `points`: they cross or touch at one or two points. `overlap`: they run along each other; the points are the ends
 * of the common runs, in no order.
 */
export type Contact =
  | { readonly kind: 'none' }
  | { readonly kind: 'points'; readonly points: readonly Intersection[] }
  | { readonly kind: 'overlap'; readonly points: readonly Intersection[] };

const NONE: Contact = { kind: 'none' };

/** Fraction of a straight edge nearest to a point on its line. */
function straightFraction(edge: StraightEdge, p: Point): number {
  const along = subtract(edge.to, edge.from);
  return ((p.x - edge.from.x) * along.x + (p.y - edge.from.y) * along.y) / (along.x * along.x + along.y * along.y);
}

/** Fraction of an edge nearest to a point on its line or circle; below 0 or above 1 past its ends. */
function fractionAt(edge: Edge, p: Point): number {
  return edge.kind === 'straight'
    ? straightFraction(edge, p)
    : arcFraction(edge, Math.atan2(p.y - edge.centre.y, p.x - edge.centre.x));
}

/** The fraction held to 0..1; null when it lies past an end by more than `slack` mm. */
function within(edge: Edge, fraction: number, slack: number): number | null {
  const past = Math.max(-fraction, fraction - 1) * edgeLength(edge);
  return past <= slack ? Math.min(1, Math.max(0, fraction)) : null;
}

/** How far (mm) the place of a point on an arc is unsure, as its centre is a rounded number far away. */
function doubt(edge: Edge): number {
  return edge.kind === 'arc' ? edge.radius * 1e-14 : 0;
}

/** One step of Newton's method towards the common point, by points and tangents that flat arcs know exactly. */
function refine(a: Edge, b: Edge, onA: number, onB: number): [number, number] {
  const gap = subtract(pointOnEdge(b, onB), pointOnEdge(a, onA));
  const alongA = tangentOnEdge(a, onA);
  const alongB = tangentOnEdge(b, onB);
  const sine = cross(alongA, alongB);
  if (Math.abs(sine) < 1e-6) return [onA, onB];
  return [onA + cross(gap, alongB) / sine / edgeLength(a), onB + cross(gap, alongA) / sine / edgeLength(b)];
}

function intersections(a: Edge, b: Edge, points: readonly Point[]): Intersection[] {
  const unsure = doubt(a) + doubt(b);
  return points.flatMap((p) => {
    let [fractionA, fractionB] = [fractionAt(a, p), fractionAt(b, p)];
    if (unsure > TOUCH / 10) {
      if (within(a, fractionA, unsure + TOUCH) === null || within(b, fractionB, unsure + TOUCH) === null) return [];
      for (let step = 0; step < 2; step++) [fractionA, fractionB] = refine(a, b, fractionA, fractionB);
    }
    const onA = within(a, fractionA, TOUCH);
    const onB = within(b, fractionB, TOUCH);
    if (onA === null || onB === null) return [];
    const { x, y } = unsure > TOUCH / 10 ? pointOnEdge(a, onA) : p;
    return [{ x, y, onA, onB }];
  });
}

/** Ends of either edge that lie on the other, each once. */
function sharedEnds(a: Edge, b: Edge): Intersection[] {
  const found: Intersection[] = [];
  const offer = ({ x, y }: Point, onA: number | null, onB: number | null): void => {
    if (onA === null || onB === null || found.some((other) => distance(other, { x, y }) <= TOUCH)) return;
    found.push({ x, y, onA, onB });
  };
  const on = (edge: Edge, p: Point): number | null =>
    offCarrier(edge, p) <= TOUCH ? within(edge, fractionAt(edge, p), TOUCH) : null;
  offer(a.from, 0, on(b, a.from));
  offer(a.to, 1, on(b, a.to));
  offer(b.from, on(a, b.from), 0);
  offer(b.to, on(a, b.to), 1);
  return found;
}

/** What two edges of one line or circle share. */
function overlapOrTouch(a: Edge, b: Edge): Contact {
  const points = sharedEnds(a, b);
  if (points.length === 0) return NONE;
  return { kind: points.length === 1 ? 'points' : 'overlap', points };
}

/**
 * Meetings of two edges whose line or circles touch. About the point of touching they are as good as one for a short
 * stretch; where that point lies past an end, the ends within the stretch are where they meet.
 */
function touchings(a: Edge, b: Edge, points: readonly Point[]): Contact {
  const met = intersections(a, b, points);
  return contact(met.length > 0 ? met : sharedEnds(a, b));
}

function contact(points: readonly Intersection[]): Contact {
  return points.length === 0 ? NONE : { kind: 'points', points };
}

function intersectStraights(a: StraightEdge, b: StraightEdge): Contact {
  const cut = intersectLines(a.from, a.to, b.from, b.to, TOUCH);
  if (cut.kind === 'parallel') return NONE;
  return cut.kind === 'same' ? overlapOrTouch(a, b) : contact(intersections(a, b, [cut.point]));
}

function intersectStraightArc(a: StraightEdge, b: ArcEdge): Contact {
  const cut = intersectLineCircle(a.from, a.to, b.centre, b.radius, TOUCH);
  if (cut.kind === 'apart') return NONE;
  return cut.kind === 'touching' ? touchings(a, b, cut.points) : contact(intersections(a, b, cut.points));
}

function intersectArcs(a: ArcEdge, b: ArcEdge): Contact {
  const cut = intersectCircles(a.centre, a.radius, b.centre, b.radius, TOUCH);
  if (cut.kind === 'apart') return NONE;
  if (cut.kind === 'touching') return touchings(a, b, cut.points);
  if (cut.kind === 'crossing') return contact(intersections(a, b, cut.points));
  // two arcs of one circle that share both ends and nothing else complete it; their middles decide
  const points = sharedEnds(a, b);
  const shares = (p: Edge, q: Edge): boolean => within(q, fractionAt(q, pointOnEdge(p, 0.5)), TOUCH) !== null;
  if (points.length === 2 && points.every(atEnds) && !shares(a, b) && !shares(b, a)) return contact(points);
  return overlapOrTouch(a, b);
}

function atEnds(m: Intersection): boolean {
  return (m.onA === 0 || m.onA === 1) && (m.onB === 0 || m.onB === 1);
}

/** Where two edges meet; edges that pass within 1e-9 mm touch. Edges of no length are not allowed. */
export function intersectEdges(a: Edge, b: Edge): Contact {
  if (a.kind === 'straight') return b.kind === 'straight' ? intersectStraights(a, b) : intersectStraightArc(a, b);
  if (b.kind === 'arc') return intersectArcs(a, b);
  const swapped = intersectStraightArc(b, a);
  if (swapped.kind === 'none') return swapped;
  return { kind: swapped.kind, points: swapped.points.map((m) => ({ ...m, onA: m.onB, onB: m.onA })) };
}
