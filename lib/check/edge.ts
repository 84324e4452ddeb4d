/**
 * Edges of paths as the proof sees them: straight lines and arcs with their centre. The arithmetic is this room's own,
 * so that an error in the geometry that made a file cannot hide itself when the file is read.
 */
import type { Vertex } from '../geometry/index.js';
import type { Place } from './types.js';

export interface Edge {
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
  /** Signed sweep in radians, anticlockwise positive; 0 for a straight edge. */
  readonly sweep: number;
  readonly cx: number;
  readonly cy: number;
  readonly radius: number;
  /** Unit vector from the centre to the middle of the arc, and the cosine of half the sweep. */
  readonly mx: number;
  readonly my: number;
  readonly cosHalf: number;
  readonly length: number;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** An arc that rises less than this above its chord (10 nm) is taken as straight: its centre would be lost in rounding. */
const leastRise = 1e-5;

/** The edge from `a` to `b` with the bulge (tan of a quarter of the sweep) of `a`. */
export function edgeBetween(a: Vertex, b: Place): Edge {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const chord = Math.hypot(dx, dy);
  if (Math.abs(a.bulge) * chord < 2 * leastRise) {
    return {
      ax: a.x,
      ay: a.y,
      bx: b.x,
      by: b.y,
      sweep: 0,
      cx: 0,
      cy: 0,
      radius: Infinity,
      mx: 0,
      my: 0,
      cosHalf: 1,
      length: chord,
      minX: Math.min(a.x, b.x),
      minY: Math.min(a.y, b.y),
      maxX: Math.max(a.x, b.x),
      maxY: Math.max(a.y, b.y),
    };
  }
  const { bulge } = a;
  const sweep = 4 * Math.atan(bulge);
  const radius = (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  const toCentre = (1 - bulge * bulge) / (4 * bulge);
  const cx = (a.x + b.x) / 2 - dy * toCentre;
  const cy = (a.y + b.y) / 2 + dx * toCentre;
  // the middle of an arc to the left turn lies to the right of its chord
  const side = Math.sign(bulge) / chord;
  const mx = dy * side;
  const my = -dx * side;
  const cosHalf = Math.cos(sweep / 2);
  // the arc reaches a quarter point of its circle when that direction lies within the sweep
  const reaches = (ux: number, uy: number) => ux * mx + uy * my >= cosHalf;
  return {
    ax: a.x,
    ay: a.y,
    bx: b.x,
    by: b.y,
    sweep,
    cx,
    cy,
    radius,
    mx,
    my,
    cosHalf,
    length: Math.abs(sweep) * radius,
    minX: reaches(-1, 0) ? cx - radius : Math.min(a.x, b.x),
    minY: reaches(0, -1) ? cy - radius : Math.min(a.y, b.y),
    maxX: reaches(1, 0) ? cx + radius : Math.max(a.x, b.x),
    maxY: reaches(0, 1) ? cy + radius : Math.max(a.y, b.y),
  };
}

/** All edges of a ring or an open path, in order. */
export function edgesOf(vertices: readonly Vertex[], closed: boolean): Edge[] {
  return vertices.flatMap((vertex, i) => {
    const next = vertices[i + 1] ?? (closed ? vertices[0] : undefined);
    return next === undefined ? [] : [edgeBetween(vertex, next)];
  });
}

/** The point a share `t` (0 to 1) of the way along an edge. */
export function pointAt(edge: Edge, t: number): Place {
  if (edge.sweep === 0) return { x: edge.ax + t * (edge.bx - edge.ax), y: edge.ay + t * (edge.by - edge.ay) };
  // turned from the middle of the arc, where the rounding of both ends has least weight
  const angle = (t - 0.5) * edge.sweep;
  const cos = edge.radius * Math.cos(angle);
  const sin = edge.radius * Math.sin(angle);
  return { x: edge.cx + cos * edge.mx - sin * edge.my, y: edge.cy + cos * edge.my + sin * edge.mx };
}

/** Length of a vector. A root of squares: `Math.hypot` takes many times as long. */
const lengthOf = (x: number, y: number): number => Math.sqrt(x * x + y * y);

/** Whether the direction `x, y` from the centre of an arc falls within its sweep. */
export function withinSweep(arc: Edge, x: number, y: number): boolean {
  return x * arc.mx + y * arc.my >= lengthOf(x, y) * arc.cosHalf;
}

/** Distance of the point `x, y` from an edge. */
export function distanceFrom(edge: Edge, x: number, y: number): number {
  if (edge.sweep === 0) {
    const dx = edge.bx - edge.ax;
    const dy = edge.by - edge.ay;
    const squared = dx * dx + dy * dy;
    const along = squared === 0 ? 0 : ((x - edge.ax) * dx + (y - edge.ay) * dy) / squared;
    const t = along < 0 ? 0 : along > 1 ? 1 : along;
    return lengthOf(x - edge.ax - t * dx, y - edge.ay - t * dy);
  }
  const vx = x - edge.cx;
  const vy = y - edge.cy;
  if (withinSweep(edge, vx, vy)) return Math.abs(lengthOf(vx, vy) - edge.radius);
  return Math.min(lengthOf(x - edge.ax, y - edge.ay), lengthOf(x - edge.bx, y - edge.by));
}
