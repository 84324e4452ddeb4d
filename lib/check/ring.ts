/** Closed rings: box, area, whether a point lies inside. */
import type { Vertex } from '../geometry/index.js';
import { lengthOf, type ProofEdge, proofEdges, outsideCircle } from './edge.js';
import type { ProofPoint } from './types.js';

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** A ring or open path with its edges. */
export interface Line {
  readonly vertices: readonly Vertex[];
  readonly closed: boolean;
  readonly edges: readonly ProofEdge[];
  readonly box: Box;
}

/** The box around edges or boxes. */
export function boxOf(boxes: readonly Box[]): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const box of boxes) {
    minX = Math.min(minX, box.minX);
    minY = Math.min(minY, box.minY);
    maxX = Math.max(maxX, box.maxX);
    maxY = Math.max(maxY, box.maxY);
  }
  return { minX, minY, maxX, maxY };
}

export function lineOf(vertices: readonly Vertex[], closed: boolean): Line {
  const edges = proofEdges(vertices, closed);
  return { vertices, closed, edges, box: boxOf(edges) };
}

/** The angle less its sine; of a small one by its series, as the difference would be rounding. */
function lessSine(angle: number): number {
  if (Math.abs(angle) > 0.01) return angle - Math.sin(angle);
  const square = angle * angle;
  return ((angle * square) / 6) * (1 - (square / 20) * (1 - square / 42));
}

/** Area of a ring, anticlockwise positive: that of the chords and that of the segments between chord and arc. */
export function ringArea(edges: readonly ProofEdge[]): number {
  const origin = edges[0];
  if (origin === undefined) return 0;
  return edges.reduce((sum, { ax, ay, bx, by, sweep, radius }) => {
    const chord = ((ax - origin.ax) * (by - origin.ay) - (bx - origin.ax) * (ay - origin.ay)) / 2;
    return sum + chord + (sweep === 0 ? 0 : (radius * radius * lessSine(sweep)) / 2);
  }, 0);
}

/**
 * Whether a point lies inside a ring. Each edge adds the angle that it sweeps as seen from the point; an arc adds a
 * full turn more or less where the point lies between it and its chord. A point on the ring itself may go either way.
 */
export function inside(edges: readonly ProofEdge[], { x, y }: ProofPoint): boolean {
  const turns = edges.reduce((sum, edge) => {
    const ux = edge.ax - x;
    const uy = edge.ay - y;
    const vx = edge.bx - x;
    const vy = edge.by - y;
    const cross = ux * vy - uy * vx;
    const dot = ux * vx + uy * vy;
    const angle = Math.atan2(cross, dot);
    if (edge.sweep === 0) return sum + angle;
    // on the chord itself both sides of it agree: half a turn, the way of the arc
    if (cross === 0 && dot < 0) return sum + Math.PI * Math.sign(edge.sweep);
    // the chord's side on which the arc lies: right of the chord for an anticlockwise arc
    const onArcSide = edge.sweep > 0 ? cross < 0 : cross > 0;
    const inCircle = outsideCircle(edge, x, y) < 0;
    return sum + angle + (onArcSide && inCircle ? 2 * Math.PI * Math.sign(edge.sweep) : 0);
  }, 0);
  return Math.abs(turns) > Math.PI;
}

/** How far the boxes of two things stand apart. */
export function gap(a: Box, b: Box): number {
  const x = Math.max(0, a.minX - b.maxX, b.minX - a.maxX);
  const y = Math.max(0, a.minY - b.maxY, b.minY - a.maxY);
  return lengthOf(x, y);
}
