/** Nearest places, exact with arcs. */
import { arcFraction, type Edge, edgeArc, offCarrier, pointOnEdge } from './arc.js';
import { boundsOfAll, edgeBounds, edgesOf } from './contour.js';
import { cyclic, element } from './element.js';
import { intersectEdges } from './intersect.js';
import { distance, dot, subtract } from './point.js';
import { TOUCH } from './precision.js';
import type { Bounds, Contour, Point, Vertex } from './types.js';

/** The place on something that is nearest to a point, and how far it is (mm). */
export interface Nearest {
  readonly distance: number;
  readonly place: Point;
}

/** The nearest place on an edge, with the fraction (0 to 1) of the edge at which it lies. */
export interface NearestOnEdge extends Nearest {
  readonly fraction: number;
}

/** The nearest place on a ring, with the number of the edge and the fraction of it. */
export interface NearestOnContour extends NearestOnEdge {
  readonly edge: number;
}

/** Nearest place on one edge to a point. */
export function nearestOnEdge(edge: Edge, point: Point): NearestOnEdge {
  let best: NearestOnEdge = { distance: distance(edge.from, point), place: edge.from, fraction: 0 };
  const end = distance(edge.to, point);
  if (end < best.distance) best = { distance: end, place: edge.to, fraction: 1 };
  if (edge.kind === 'straight') {
    const along = subtract(edge.to, edge.from);
    const square = dot(along, along);
    const fraction = square > 0 ? dot(subtract(point, edge.from), along) / square : 0;
    if (fraction <= 0 || fraction >= 1) return best;
    const place = pointOnEdge(edge, fraction);
    const off = distance(place, point);
    return off < best.distance ? { distance: off, place, fraction } : best;
  }
  const out = subtract(point, edge.centre);
  const fraction = arcFraction(edge, Math.atan2(out.y, out.x));
  if (fraction <= 0 || fraction >= 1) return best;
  const off = offCarrier(edge, point);
  return off < best.distance ? { distance: off, place: pointOnEdge(edge, fraction), fraction } : best;
}

/**
 * What a point is off the edge from `from` to `to` at least (mm): its distance to the chord, less what the arc rises
 * above that. Cheap, as no edge is made.
 */
function minDistance(from: Vertex, to: Point, { x, y }: Point): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const square = dx * dx + dy * dy;
  const along = (x - from.x) * dx + (y - from.y) * dy;
  const t = along <= 0 ? 0 : along >= square ? 1 : along / square;
  const offX = from.x + t * dx - x;
  const offY = from.y + t * dy - y;
  return Math.sqrt(offX * offX + offY * offY) - (Math.abs(from.bulge) * Math.sqrt(square)) / 2 - TOUCH;
}

/** Whether a point lies within `reach` (mm) of a closed ring. */
export function isNearContour(contour: Contour, point: Point, reach: number): boolean {
  for (let i = 0; i < contour.length; i++) {
    const from = element(contour, i);
    const to = cyclic(contour, i + 1);
    if (minDistance(from, to, point) > reach) continue;
    if (nearestOnEdge(edgeArc(from, to), point).distance <= reach) return true;
  }
  return false;
}

/** Nearest place on a closed ring to a point. Throws RangeError for a ring of no vertices. */
export function nearestOnContour(contour: Contour, point: Point): NearestOnContour {
  let best: NearestOnEdge | null = null;
  let edge = 0;
  for (let i = 0; i < contour.length; i++) {
    const from = element(contour, i);
    const to = cyclic(contour, i + 1);
    if (best !== null && minDistance(from, to, point) >= best.distance) continue;
    const nearest = nearestOnEdge(edgeArc(from, to), point);
    if (best !== null && nearest.distance >= best.distance) continue;
    best = nearest;
    edge = i;
  }
  if (best === null) throw new RangeError('a ring without vertices has no nearest point');
  return { ...best, edge };
}

/** The two places where two things come closest, and how far apart they are (mm); 0 when they meet. */
export interface Closest {
  readonly distance: number;
  readonly onA: Point;
  readonly onB: Point;
}

/** Distance between two boxes (mm), 0 when they overlap. */
export function boxDistance(a: Bounds, b: Bounds): number {
  return Math.hypot(Math.max(0, a.minX - b.maxX, b.minX - a.maxX), Math.max(0, a.minY - b.maxY, b.minY - a.maxY));
}

/** The closest places of two edges. */
function closestOfEdges(a: Edge, b: Edge): Closest {
  const contact = intersectEdges(a, b);
  const met = contact.kind === 'none' ? undefined : contact.points[0];
  if (met !== undefined) return { distance: 0, onA: met, onB: met };

  let best: Closest = { distance: Infinity, onA: a.from, onB: b.from };
  const offer = (onA: Point, onB: Point): void => {
    const apart = distance(onA, onB);
    if (apart < best.distance) best = { distance: apart, onA, onB };
  };
  for (const end of [a.from, a.to]) offer(end, nearestOnEdge(b, end).place);
  for (const end of [b.from, b.to]) offer(nearestOnEdge(a, end).place, end);
  // within both edges the shortest link stands square on each, so it lies on the line through an arc's centre
  const square = (edge: Edge, towards: Point): Point[] => {
    if (edge.kind === 'straight') {
      const along = subtract(edge.to, edge.from);
      const t = dot(subtract(towards, edge.from), along) / dot(along, along);
      return t > 0 && t < 1 ? [pointOnEdge(edge, t)] : [];
    }
    const out = subtract(towards, edge.centre);
    return [0, Math.PI].flatMap((turn) => {
      const t = arcFraction(edge, Math.atan2(out.y, out.x) + turn);
      return t > 0 && t < 1 ? [pointOnEdge(edge, t)] : [];
    });
  };
  if (a.kind === 'arc' || b.kind === 'arc') {
    const footOfA = a.kind === 'arc' ? a.centre : undefined;
    const footOfB = b.kind === 'arc' ? b.centre : undefined;
    const onB = footOfA === undefined ? [] : square(b, footOfA);
    const onA = footOfB === undefined ? [] : square(a, footOfB);
    for (const p of onB) for (const q of square(a, p)) offer(q, p);
    for (const q of onA) for (const p of square(b, q)) offer(q, p);
  }
  return best;
}

/**
 * The closest places of two closed rings; distance 0 when they cross or touch (one lying within the other without
 * touching is as far as their edges are). Cost n·m box tests.
 */
export function closestOfContours(a: Contour, b: Contour): Closest {
  const edgesA = edgesOf(a);
  const edgesB = edgesOf(b);
  const boxesA = edgesA.map(edgeBounds);
  const boxesB = edgesB.map(edgeBounds);
  const boxB = boundsOfAll(boxesB);
  let best: Closest = { distance: Infinity, onA: element(a, 0), onB: element(b, 0) };
  for (let i = 0; i < edgesA.length; i++) {
    const boxA = element(boxesA, i);
    if (boxDistance(boxA, boxB) >= best.distance) continue;
    for (let j = 0; j < edgesB.length; j++) {
      if (boxDistance(boxA, element(boxesB, j)) >= best.distance) continue;
      const closest = closestOfEdges(element(edgesA, i), element(edgesB, j));
      if (closest.distance < best.distance) best = closest;
    }
  }
  return best;
}
