/**
 * Inside corners, in which a round tool leaves a radius, and the spur by which a corner is opened: the tool goes on
 * along the bisector until its rim just reaches the corner (the dog-bone of joinery cut on routers; common practice,
 * no source). It takes material beside the corner on purpose, so it must be known from a gouge.
 */
import type { ProofEdge } from './edge.js';
import type { Line } from './ring.js';
import type { ProofPoint } from './types.js';

export interface NominalCorner extends ProofPoint {
  /** Unit vector into the waste along the bisector. */
  readonly outX: number;
  readonly outY: number;
  /** Sine of half the angle of the waste. */
  readonly sine: number;
}

/** Turn below which two edges run on smoothly, radians. */
const minTurn = 1e-3;
/** How exactly a spur ends where the tool's rim reaches the corner, mm. */
const spurTolerance = 0.005;
/** By how much more than half the cut over the sine of half the angle a spur may begin from its corner. */
const spurLength = 1.1;

/** Unit direction of an edge at its start or end. */
function direction(edge: ProofEdge, end: boolean): readonly [number, number] {
  const dx = edge.bx - edge.ax;
  const dy = edge.by - edge.ay;
  const chord = Math.hypot(dx, dy);
  // the tangent of an arc is its chord turned by half the sweep, back at the start and on at the end
  const half = (end ? edge.sweep : -edge.sweep) / 2;
  const cos = Math.cos(half) / chord;
  const sin = Math.sin(half) / chord;
  return [dx * cos - dy * sin, dx * sin + dy * cos];
}

/** The corners of a ring (material to its left) at which the waste has less than half a turn. */
export function insideCorners({ edges }: Line): NominalCorner[] {
  return edges.flatMap((edge, i) => {
    const before = edges[(i + edges.length - 1) % edges.length]!;
    const [ix, iy] = direction(before, true);
    const [ox, oy] = direction(edge, false);
    const turn = Math.atan2(ix * oy - iy * ox, ix * ox + iy * oy);
    if (turn > -minTurn) return [];
    const x = ox - ix;
    const y = oy - iy;
    const size = Math.hypot(x, y);
    return [{ x: edge.ax, y: edge.ay, outX: x / size, outY: y / size, sine: Math.sin((Math.PI + turn) / 2) }];
  });
}

/** Whether a piece of a path is the spur of a tool of this radius into the corner, in or out. */
export function isSpur(piece: ProofEdge, corner: NominalCorner, radius: number): boolean {
  if (piece.sweep !== 0) return false;
  const end = { x: corner.x + radius * corner.outX, y: corner.y + radius * corner.outY };
  const longest = (spurLength * radius) / corner.sine;
  const reaches = (x: number, y: number, fromX: number, fromY: number): boolean =>
    Math.hypot(x - end.x, y - end.y) <= spurTolerance && Math.hypot(fromX - corner.x, fromY - corner.y) <= longest;
  return reaches(piece.bx, piece.by, piece.ax, piece.ay) || reaches(piece.ax, piece.ay, piece.bx, piece.by);
}
