/**
 * Edges of paths as the proof sees them: straight lines and arcs with their centre. The arithmetic is this module's own,
 * so that an error in the geometry that made a file cannot hide itself when the file is read.
 */
import type { Vertex } from '../geometry/index.js';
import type { ProofPoint } from './types.js';

export interface ProofEdge {
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
  /** Signed sweep in radians, anticlockwise positive; 0 for a straight edge. */
  readonly sweep: number;
  readonly cx: number;
  readonly cy: number;
  readonly radius: number;
  /** Middle of the arc, and the unit vector from the centre to it. A flat arc's centre is far off and badly rounded. */
  readonly px: number;
  readonly py: number;
  readonly mx: number;
  readonly my: number;
  /** Unit tangents at both ends, in the direction of travel. */
  readonly tax: number;
  readonly tay: number;
  readonly tbx: number;
  readonly tby: number;
  readonly length: number;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** An arc that rises less than this above its chord (10 nm) is taken as straight: its centre would be lost in rounding. */
const minRise = 1e-5;

/**
 * How much farther a circle reaches in some direction than at the middle of an arc of it, as a share of the radius:
 * 1 less `along`, the component of the middle's unit vector in that direction. `across` is its other component, which
 * resolves a small lead without the rounding.
 */
function lead(along: number, across: number): number {
  return along > 0 ? (across * across) / (1 + along) : 1 - along;
}

/** Length of a vector. A root of squares: `Math.hypot` takes many times as long. */
export const lengthOf = (x: number, y: number): number => Math.sqrt(x * x + y * y);

function straight(a: ProofPoint, b: ProofPoint, length: number): ProofEdge {
  const tx = length > 0 ? (b.x - a.x) / length : 0;
  const ty = length > 0 ? (b.y - a.y) / length : 0;
  return {
    ax: a.x,
    ay: a.y,
    bx: b.x,
    by: b.y,
    sweep: 0,
    cx: 0,
    cy: 0,
    radius: Infinity,
    px: (a.x + b.x) / 2,
    py: (a.y + b.y) / 2,
    mx: 0,
    my: 0,
    tax: tx,
    tay: ty,
    tbx: tx,
    tby: ty,
    length,
    minX: Math.min(a.x, b.x),
    minY: Math.min(a.y, b.y),
    maxX: Math.max(a.x, b.x),
    maxY: Math.max(a.y, b.y),
  };
}

/** The edge from `a` to `b` with the bulge (tan of a quarter of the sweep) of `a`. */
export function edgeBetween(a: Vertex, b: ProofPoint): ProofEdge {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const chord = lengthOf(dx, dy);
  const { bulge } = a;
  if (Math.abs(bulge) * chord < 2 * minRise) return straight(a, b, chord);
  const sweep = 4 * Math.atan(bulge);
  const radius = (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  const toCentre = (1 - bulge * bulge) / (4 * bulge);
  const cx = (a.x + b.x) / 2 - dy * toCentre;
  const cy = (a.y + b.y) / 2 + dx * toCentre;
  // the middle of an arc to the left turn lies to the right of its chord
  const side = Math.sign(bulge) / chord;
  const mx = dy * side;
  const my = -dx * side;
  const px = (a.x + b.x) / 2 + (dy * bulge) / 2;
  const py = (a.y + b.y) / 2 - (dx * bulge) / 2;
  // the tangents are the chord's direction turned by half the sweep, back and on
  const cos = Math.cos(sweep / 2) / chord;
  const sin = Math.sin(sweep / 2) / chord;
  const [tax, tay] = [dx * cos + dy * sin, dy * cos - dx * sin];
  const [tbx, tby] = [dx * cos - dy * sin, dy * cos + dx * sin];
  const reaches = (ux: number, uy: number) => isBetween(sweep, ux * tax + uy * tay, ux * tbx + uy * tby);
  return {
    ax: a.x,
    ay: a.y,
    bx: b.x,
    by: b.y,
    sweep,
    cx,
    cy,
    radius,
    px,
    py,
    mx,
    my,
    tax,
    tay,
    tbx,
    tby,
    length: Math.abs(sweep) * radius,
    minX: reaches(-1, 0) ? px - radius * lead(-mx, my) : Math.min(a.x, b.x),
    minY: reaches(0, -1) ? py - radius * lead(-my, mx) : Math.min(a.y, b.y),
    maxX: reaches(1, 0) ? px + radius * lead(mx, my) : Math.max(a.x, b.x),
    maxY: reaches(0, 1) ? py + radius * lead(my, mx) : Math.max(a.y, b.y),
  };
}

/**
 * Whether a direction falls within a sweep, by how far it goes along the tangents of the start and of the end:
 * exact for flat arcs too, where an angle seen from the centre is lost in rounding.
 */
function isBetween(sweep: number, afterStart: number, afterEnd: number): boolean {
  return Math.abs(sweep) <= Math.PI ? afterStart >= 0 && afterEnd <= 0 : afterStart >= 0 || afterEnd <= 0;
}

/** All edges of a ring or an open path, in order. */
export function proofEdges(vertices: readonly Vertex[], closed: boolean): ProofEdge[] {
  return vertices.flatMap((vertex, i) => {
    const next = vertices[i + 1] ?? (closed ? vertices[0] : undefined);
    return next === undefined ? [] : [edgeBetween(vertex, next)];
  });
}

/** The point a share `t` (0 to 1) of the way along an edge. */
export function pointAlong(edge: ProofEdge, t: number): ProofPoint {
  const dx = edge.bx - edge.ax;
  const dy = edge.by - edge.ay;
  if (edge.sweep === 0) return { x: edge.ax + t * dx, y: edge.ay + t * dy };
  // from the nearer end, along the chord to the point: the centre of a flat arc is too far off to turn about
  const fromStart = t <= 0.5;
  const share = fromStart ? t : 1 - t;
  const half = edge.sweep / 2;
  const size = Math.sin(half * share) / Math.sin(half);
  const turn = half * (1 - share);
  const along = size * Math.cos(turn);
  const aside = size * Math.sin(turn);
  return fromStart
    ? { x: edge.ax + along * dx + aside * dy, y: edge.ay + along * dy - aside * dx }
    : { x: edge.bx - along * dx + aside * dy, y: edge.by - along * dy - aside * dx };
}

/** How far past the start of an arc a place is, along the tangent there; and how far past its end. */
export const pastStart = (arc: ProofEdge, x: number, y: number): number =>
  (x - arc.ax) * arc.tax + (y - arc.ay) * arc.tay;
export const pastEnd = (arc: ProofEdge, x: number, y: number): number =>
  (x - arc.bx) * arc.tbx + (y - arc.by) * arc.tby;

/** Whether the point `x, y` seen from the centre of an arc falls within its sweep. */
export function withinSweep(arc: ProofEdge, x: number, y: number): boolean {
  return isBetween(arc.sweep, pastStart(arc, x, y), pastEnd(arc, x, y));
}

/**
 * Whether all points from `a` to `b` in a straight line fall within the sweep of an arc. Up to half a turn that region
 * is convex; beyond, it is two half planes, and true is only said where one of them holds both.
 */
export function isFacedBy(arc: ProofEdge, a: ProofPoint, b: ProofPoint): boolean {
  const afterStart = pastStart(arc, a.x, a.y) >= 0 && pastStart(arc, b.x, b.y) >= 0;
  const beforeEnd = pastEnd(arc, a.x, a.y) <= 0 && pastEnd(arc, b.x, b.y) <= 0;
  return Math.abs(arc.sweep) <= Math.PI ? afterStart && beforeEnd : afterStart || beforeEnd;
}

/**
 * How far the point `x, y` lies outside the circle of an arc; negative inside. It is worked out from the middle of the
 * arc: the difference of two large lengths from the centre would lose what a flat arc rises.
 */
export function outsideCircle(arc: ProofEdge, x: number, y: number): number {
  const dx = x - arc.px;
  const dy = y - arc.py;
  const excess = (dx * dx + dy * dy) / arc.radius + 2 * (dx * arc.mx + dy * arc.my);
  const squared = 1 + excess / arc.radius;
  // deep inside it is the centre that is near
  if (squared < 0.25) return lengthOf(x - arc.cx, y - arc.cy) - arc.radius;
  return excess / (1 + Math.sqrt(squared));
}

/** Distance of the point `x, y` from an edge. */
export function distanceFrom(edge: ProofEdge, x: number, y: number): number {
  if (edge.sweep === 0) {
    const dx = edge.bx - edge.ax;
    const dy = edge.by - edge.ay;
    const squared = dx * dx + dy * dy;
    const along = squared === 0 ? 0 : ((x - edge.ax) * dx + (y - edge.ay) * dy) / squared;
    const t = along < 0 ? 0 : along > 1 ? 1 : along;
    return lengthOf(x - edge.ax - t * dx, y - edge.ay - t * dy);
  }
  if (withinSweep(edge, x, y)) return Math.abs(outsideCircle(edge, x, y));
  return Math.min(lengthOf(x - edge.ax, y - edge.ay), lengthOf(x - edge.bx, y - edge.by));
}
