/** The parallels of edges and the arcs that roll round corners: what an offset ring is made of before trimming. */
import { element } from './element.js';
import { type ArcEdge, type Edge, edgeLength, pointOnEdge, tangentOnEdge } from './arc.js';
import { cross, distance, dot, subtract } from './point.js';
import { SAME_CORNER } from './precision.js';
import type { Point } from './types.js';

/** Within this of a half turn (radians) the tangents alone do not decide which way a corner turns. */
const HALF_TURN_DOUBT = 1e-6;

/** The place `off` (mm) to the right of the direction of travel. */
function toTheRight(at: Point, tangent: Point, off: number): Point {
  return { x: at.x + tangent.y * off, y: at.y - tangent.x * off };
}

/**
 * The parallel of an edge at `off` mm to its right (negative: left), or null for an arc whose radius would come to
 * nothing or turn inside out: no point of that is `off` away from the arc.
 */
export function parallelEdge(edge: Edge, off: number): Edge | null {
  const from = toTheRight(edge.from, tangentOnEdge(edge, 0), off);
  const to = toTheRight(edge.to, tangentOnEdge(edge, 1), off);
  if (edge.kind === 'straight') return { kind: 'straight', from, to };
  const radius = edge.radius + off * Math.sign(edge.sweep);
  return radius > SAME_CORNER ? { ...edge, from, to, radius } : null;
}

/** Turn from one edge to the next, radians, positive to the left, at most a half turn either way. */
export function turnBetween(before: Edge, after: Edge): number {
  const a = tangentOnEdge(before, 1);
  const b = tangentOnEdge(after, 0);
  const turn = Math.atan2(cross(a, b), dot(a, b));
  if (Math.PI - Math.abs(turn) > HALF_TURN_DOUBT) return turn;
  // a spike or a slit: the side on which the next edge lies, a little away from the tip, decides
  const away = Math.min(edgeLength(before), edgeLength(after)) / 4;
  const p = pointOnEdge(before, 1 - away / edgeLength(before));
  const q = pointOnEdge(after, away / edgeLength(after));
  return cross(subtract(before.to, p), subtract(q, before.to)) >= 0 ? Math.abs(turn) : -Math.abs(turn);
}

/** The arc about a corner that joins the parallels of its edges; null where they meet or cross of themselves. */
function cornerArc(before: Edge, after: Edge, off: number): ArcEdge | null {
  const turn = turnBetween(before, after);
  if (turn * off <= 0 || Math.abs(turn * off) <= SAME_CORNER) return null;
  const corner = after.from;
  const from = toTheRight(corner, tangentOnEdge(before, 1), off);
  const to = toTheRight(corner, tangentOnEdge(after, 0), off);
  return {
    kind: 'arc',
    from,
    to,
    centre: corner,
    radius: Math.abs(off),
    startAngle: Math.atan2(from.y - corner.y, from.x - corner.x),
    sweep: turn,
  };
}

/** All parallels and corner arcs of a closed ring, `off` mm to the right of its direction of travel. */
export function parallelsOfRing(edges: readonly Edge[], off: number): Edge[] {
  const real = edges.filter((edge) => edgeLength(edge) > SAME_CORNER);
  return real.flatMap((edge, i) => {
    const corner = cornerArc(edge, element(real, (i + 1) % real.length), off);
    return [parallelEdge(edge, off), corner].filter(
      (part): part is Edge => part !== null && (part.kind === 'arc' || distance(part.from, part.to) > 0),
    );
  });
}
