/** One edge of a contour as what it is: a straight run or a circular arc. */
import { between, cross, distance, dot, polar, rotate, subtract } from './point.js';
import type { Point, Vertex } from './types.js';

export interface StraightEdge {
  readonly kind: 'straight';
  readonly from: Point;
  readonly to: Point;
}

export interface ArcEdge {
  readonly kind: 'arc';
  readonly from: Point;
  readonly to: Point;
  readonly centre: Point;
  readonly radius: number;
  /** Direction from the centre to `from`, radians. */
  readonly startAngle: number;
  /** Positive anticlockwise, radians; less than a full turn either way. */
  readonly sweep: number;
}

export type Edge = StraightEdge | ArcEdge;

/**
 * A flatter bulge is taken as straight: its radius is over 25 million chords, and the centre would be known less
 * well in double precision than the arc rises above its chord (5 nm on a metre).
 */
const STRAIGHT_BULGE = 1e-8;

/** The edge from `v0` to `v1`, as the bulge of `v0` bends it. */
export function edgeArc(v0: Vertex, v1: Point): Edge {
  const chord = distance(v0, v1);
  const b = v0.bulge;
  if (Math.abs(b) < STRAIGHT_BULGE || chord === 0) return { kind: 'straight', from: v0, to: v1 };
  // the centre lies left of the chord's middle at chord/2 · (1 - b²)/(2b); negative is to the right
  const left = (1 - b * b) / (4 * b);
  const centre = {
    x: (v0.x + v1.x) / 2 - (v1.y - v0.y) * left,
    y: (v0.y + v1.y) / 2 + (v1.x - v0.x) * left,
  };
  return {
    kind: 'arc',
    from: v0,
    to: v1,
    centre,
    radius: (chord * (1 + b * b)) / (4 * Math.abs(b)),
    startAngle: Math.atan2(v0.y - centre.y, v0.x - centre.x),
    sweep: 4 * Math.atan(b),
  };
}

/** Bulge of an arc that sweeps by `sweep` radians (positive anticlockwise, less than a full turn). */
export function bulgeOfSweep(sweep: number): number {
  return Math.tan(sweep / 4);
}

/** Bulge of the arc from `from` through `via` to `to`; 0 when the three are in line, in this order. Throws RangeError when no circle passes: two coincide, or `via` is in line but outside. */
export function arcThrough(from: Point, via: Point, to: Point): number {
  const a = subtract(from, via);
  const b = subtract(to, via);
  if (Math.hypot(a.x, a.y) === 0 || Math.hypot(b.x, b.y) === 0 || distance(from, to) === 0) {
    throw new RangeError('an arc needs three different points');
  }
  if (cross(a, b) === 0 && dot(a, b) > 0) throw new RangeError('no circle passes through three collinear points');
  // the angle at `via` is half the turn that is left outside the arc (inscribed angle theorem)
  const atVia = Math.atan2(Math.abs(cross(a, b)), dot(a, b));
  const sweep = 2 * (Math.PI - atVia);
  return bulgeOfSweep(cross(a, b) < 0 ? sweep : -sweep);
}

/** The point at the fraction t (0 to 1) of an edge. */
export function pointOnEdge(edge: Edge, t: number): Point {
  if (edge.kind === 'straight') return between(edge.from, edge.to, t);
  // a chord from the start, by the angle it makes with the whole chord: exact for flat arcs too, whose centre is far
  const half = edge.sweep / 2;
  const length = Math.sin(half * t) / Math.sin(half);
  const along = rotate(subtract(edge.to, edge.from), half * (t - 1));
  return { x: edge.from.x + along.x * length, y: edge.from.y + along.y * length };
}

/** Direction of travel (length 1) at the fraction t (0 to 1) of an edge. Throws RangeError for an edge of no length. */
export function tangentOnEdge(edge: Edge, t: number): Point {
  if (edge.kind === 'arc') {
    return polar(1, edge.startAngle + edge.sweep * t + (Math.PI / 2) * Math.sign(edge.sweep));
  }
  const length = distance(edge.from, edge.to);
  if (length === 0) throw new RangeError('an edge of zero length has no direction');
  return { x: (edge.to.x - edge.from.x) / length, y: (edge.to.y - edge.from.y) / length };
}

/** Length of an edge (mm). */
export function edgeLength(edge: Edge): number {
  return edge.kind === 'straight' ? distance(edge.from, edge.to) : edge.radius * Math.abs(edge.sweep);
}

/**
 * Distance of a point (mm) from the endless line or the circle that an edge lies on. It is measured from the edge's
 * start: a flat arc's centre is a rounded number far away, and the difference of two large lengths would lose the
 * small one. Throws RangeError for an edge of no length.
 */
export function offCarrier(edge: Edge, point: Point): number {
  const tangent = tangentOnEdge(edge, 0);
  const from = subtract(point, edge.from);
  const left = cross(tangent, from);
  if (edge.kind === 'straight') return Math.abs(left);
  const curvature = Math.sign(edge.sweep) / edge.radius;
  const f = curvature * dot(from, from) - 2 * left;
  return Math.abs(f) / (1 + Math.sqrt(Math.max(0, 1 + curvature * f)));
}

/**
 * The fraction (0 to 1) at which a direction from the centre meets the arc, or the nearer overshoot when it does
 * not: below 0 before the start, above 1 past the end.
 */
export function arcFraction(arc: ArcEdge, angle: number): number {
  const turn = 2 * Math.PI;
  let past = (angle - arc.startAngle) * Math.sign(arc.sweep);
  past -= turn * Math.floor(past / turn);
  const sweep = Math.abs(arc.sweep);
  // in the gap of the circle, the nearer end decides on which side the overshoot counts
  if (past > sweep + (turn - sweep) / 2) past -= turn;
  return past / sweep;
}

/**
 * The angle turned about a centre from one place to another, radians, more than 0 either way round; a full turn where
 * the two fall together.
 */
export function turnAbout(centre: Point, from: Point, to: Point, clockwise: boolean): number {
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  const end = Math.atan2(to.y - centre.y, to.x - centre.x);
  const full = 2 * Math.PI;
  const raw = (clockwise ? start - end : end - start) % full;
  return raw <= 1e-9 ? raw + full : raw;
}
