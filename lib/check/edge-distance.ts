/** Least distance between two edges, exact but for rounding, and the place where they come closest. */
import { type ProofEdge, distanceFrom, withinSweep } from './edge.js';
import type { ProofPoint } from './types.js';

export interface ClosestPoint extends ProofPoint {
  readonly distance: number;
}

/** Lower bound of the distance of two edges: that of their boxes. */
export function boundsDistance(a: ProofEdge, b: ProofEdge): number {
  const dx = Math.max(0, a.minX - b.maxX, b.minX - a.maxX);
  const dy = Math.max(0, a.minY - b.maxY, b.minY - a.maxY);
  return Math.hypot(dx, dy);
}

/** Points of `a` at which a line or circle through it meets or comes closest to that of `b`, its ends apart. */
export function candidates(a: ProofEdge, b: ProofEdge): ProofPoint[] {
  if (a.sweep === 0 && b.sweep === 0) return lineMeetsLine(a, b);
  if (a.sweep === 0) return lineAndArc(a, b);
  if (b.sweep === 0) return arcAndLine(a, b);
  return arcAndArc(a, b);
}

function lineMeetsLine(a: ProofEdge, b: ProofEdge): ProofPoint[] {
  const ux = a.bx - a.ax;
  const uy = a.by - a.ay;
  const vx = b.bx - b.ax;
  const vy = b.by - b.ay;
  const cross = ux * vy - uy * vx;
  if (cross === 0) return [];
  const t = ((b.ax - a.ax) * vy - (b.ay - a.ay) * vx) / cross;
  return t > 0 && t < 1 ? [{ x: a.ax + t * ux, y: a.ay + t * uy }] : [];
}

/** Foot of the arc's centre on the line, and both points where the line passes through the circle. */
function footAndCrossings(line: ProofEdge, arc: ProofEdge): ProofPoint[] {
  const ux = (line.bx - line.ax) / line.length;
  const uy = (line.by - line.ay) / line.length;
  const along = (arc.cx - line.ax) * ux + (arc.cy - line.ay) * uy;
  const off = (arc.cx - line.ax) * uy - (arc.cy - line.ay) * ux;
  const half = Math.sqrt(Math.max(0, arc.radius * arc.radius - off * off));
  return [along, along - half, along + half].map((s) => ({ x: line.ax + s * ux, y: line.ay + s * uy }));
}

function lineAndArc(line: ProofEdge, arc: ProofEdge): ProofPoint[] {
  if (line.length === 0) return [];
  return footAndCrossings(line, arc).filter(({ x, y }) => {
    const t = (x - line.ax) * (line.bx - line.ax) + (y - line.ay) * (line.by - line.ay);
    return t > 0 && t < line.length * line.length;
  });
}

function arcAndLine(arc: ProofEdge, line: ProofEdge): ProofPoint[] {
  if (line.length === 0) return [];
  const onCircle = footAndCrossings(line, arc).flatMap(({ x, y }) => {
    const distance = Math.hypot(x - arc.cx, y - arc.cy);
    if (distance === 0) return [];
    const scale = arc.radius / distance;
    return [{ x: arc.cx + (x - arc.cx) * scale, y: arc.cy + (y - arc.cy) * scale }];
  });
  return onCircle.filter(({ x, y }) => withinSweep(arc, x, y));
}

function arcAndArc(a: ProofEdge, b: ProofEdge): ProofPoint[] {
  const dx = b.cx - a.cx;
  const dy = b.cy - a.cy;
  const apart = Math.hypot(dx, dy);
  // with one centre, the ends of either arc are as near to the other as anything between
  if (apart === 0) return [];
  const ux = dx / apart;
  const uy = dy / apart;
  const along = (apart * apart + a.radius * a.radius - b.radius * b.radius) / (2 * apart);
  const half = Math.sqrt(Math.max(0, a.radius * a.radius - along * along));
  const directions = [
    [ux, uy],
    [-ux, -uy],
    [along * ux - half * uy, along * uy + half * ux],
    [along * ux + half * uy, along * uy - half * ux],
  ] as const;
  return directions.flatMap(([x, y]) => {
    const size = Math.hypot(x, y);
    if (size === 0) return [];
    const place = { x: a.cx + (x / size) * a.radius, y: a.cy + (y / size) * a.radius };
    return withinSweep(a, place.x, place.y) ? [place] : [];
  });
}

/**
 * Where `a` comes nearest to `b`. The least distance of two lines or arcs that do not meet is found at an end of one
 * of them, or where the normal of both is the same; where they meet it is 0.
 */
export function closest(a: ProofEdge, b: ProofEdge): ClosestPoint {
  let best: ClosestPoint = { x: a.ax, y: a.ay, distance: distanceFrom(b, a.ax, a.ay) };
  const offer = (x: number, y: number, distance: number): void => {
    if (distance < best.distance) best = { x, y, distance };
  };
  offer(a.bx, a.by, distanceFrom(b, a.bx, a.by));
  offer(b.ax, b.ay, distanceFrom(a, b.ax, b.ay));
  offer(b.bx, b.by, distanceFrom(a, b.bx, b.by));
  for (const { x, y } of candidates(a, b)) offer(x, y, distanceFrom(b, x, y));
  return best;
}
