/** Moves as a machine has to be sent whose axes are not true. */
import {
  type Axes,
  bulgeOfSweep,
  commandedPath,
  commandedPoint,
  edgeArc,
  element,
  turnAbout,
} from '../../geometry/index.js';
import type { Cut, Move, Point3 } from '../../machining/index.js';

const sent = (axes: Axes, { x, y, z }: Point3): Point3 => ({ ...commandedPoint(axes, { x, y }), z });

/** An arc as the arcs that stand for it. It climbs or sinks evenly along its sweep. */
function sentArc(axes: Axes, from: Point3, move: Extract<Move, { readonly kind: 'arc' }>): Move[] {
  const { to, centre, clockwise, feed } = move;
  const sweep = (clockwise ? -1 : 1) * turnAbout(centre, from, to, clockwise);
  const radius = Math.hypot(from.x - centre.x, from.y - centre.y);
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  // a bulge holds less than a full turn
  const halves = [0, 1, 2].map((k) => {
    const angle = start + (sweep * k) / 2;
    const on = { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
    return {
      ...(k === 0 ? { x: from.x, y: from.y } : k === 2 ? { x: to.x, y: to.y } : on),
      bulge: bulgeOfSweep(sweep / 2),
    };
  });
  const path = commandedPath(axes, halves, false);
  return path.slice(1).map((vertex, i): Move => {
    const edge = edgeArc(element(path, i), vertex);
    const at = { x: vertex.x, y: vertex.y, z: from.z + ((to.z - from.z) * (i + 1)) / (path.length - 1) };
    if (edge.kind === 'straight') return { kind: 'line', to: at, feed };
    return { kind: 'arc', to: at, centre: edge.centre, clockwise, feed };
  });
}

/** The same cuts for a machine whose axes are as given; as they are for one whose axes are true. */
export function commandedMoves(cuts: readonly Cut[], axes: Axes | undefined): readonly Cut[] {
  if (axes === undefined) return cuts;
  let at: Point3 | null = null;
  return cuts.map(({ title, moves }) => ({
    title,
    moves: moves.flatMap((move): Move[] => {
      const from = at;
      at = move.to;
      if (move.kind === 'arc' && from !== null) return sentArc(axes, from, move);
      return [{ ...move, to: sent(axes, move.to) }];
    }),
  }));
}
