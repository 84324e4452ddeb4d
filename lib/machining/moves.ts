/** Moves of a tool or a beam. Lengths in mm, feeds in mm/min; z is 0 at the upper face of the sheet, positive upwards. */
import { distance, type Point, turnAbout } from '../geometry/index.js';

export interface Point3 extends Point {
  readonly z: number;
}

/** One move of the tool's tip. An arc turns about an upright axis and may climb or sink evenly. */
export type Move =
  | { readonly kind: 'rapid'; readonly to: Point3 }
  | { readonly kind: 'line'; readonly to: Point3; readonly feed: number }
  | {
      readonly kind: 'arc';
      readonly to: Point3;
      readonly centre: Point;
      readonly clockwise: boolean;
      readonly feed: number;
    };

/** Moves that belong together, from travel to travel. */
export interface Cut {
  /** What a person calls it: `outline rib 3`. */
  readonly title: string;
  readonly moves: readonly Move[];
}

/** Length of a move (mm). */
export function lengthOf(from: Point3, move: Move): number {
  const { to } = move;
  if (move.kind !== 'arc') return Math.hypot(to.x - from.x, to.y - from.y, to.z - from.z);
  return Math.hypot(distance(move.centre, to) * turnAbout(move.centre, from, to, move.clockwise), to.z - from.z);
}

/**
 * A move as one or more: an arc as short lines that stand off it by at most `tolerance` (mm). A chord over the angle w
 * stands off by r (1 - cos(w/2)).
 */
function shortLines(move: Move, from: Point3, tolerance: number): readonly Move[] {
  if (move.kind !== 'arc') return [move];
  const { to, centre, clockwise, feed } = move;
  const radius = distance(from, centre);
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  const sweep = turnAbout(centre, from, to, clockwise);
  const widest = radius <= tolerance ? Math.PI / 2 : Math.min(Math.PI / 2, 2 * Math.acos(1 - tolerance / radius));
  const count = Math.max(1, Math.ceil(sweep / widest));
  return Array.from({ length: count }, (_, i): Move => {
    if (i === count - 1) return { kind: 'line', to, feed };
    const angle = start + ((clockwise ? -1 : 1) * sweep * (i + 1)) / count;
    const z = from.z + ((to.z - from.z) * (i + 1)) / count;
    return {
      kind: 'line',
      to: { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle), z },
      feed,
    };
  });
}

/** A cut without arcs. Its first move is a rapid. */
export function inLines({ title, moves }: Cut, tolerance: number): Cut {
  let at: Point3 | null = null;
  const lines = moves.flatMap((move) => {
    const pieces = at === null ? [move] : shortLines(move, at, tolerance);
    at = move.to;
    return pieces;
  });
  return { title, moves: lines };
}
