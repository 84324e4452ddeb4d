/** Motions where they come out on a machine whose axes are not true. */
import type { AxesRead } from '../job-reader.js';
import { reached, reachedEdges } from '../reached.js';
import { edgesOfMotion } from './level.js';
import type { Motion, ProofPoint3 } from './types.js';

/** A motion as it comes out: an arc as the arcs that follow the ellipse which the machine makes of it. */
export function reachedMotion(axes: AxesRead | undefined, motion: Motion): readonly Motion[] {
  if (axes === undefined) return [motion];
  const { from, to, turn } = motion;
  const out = (place: ProofPoint3): ProofPoint3 => ({ ...reached(axes, place), z: place.z });
  if (turn === null) return [{ ...motion, from: out(from), to: out(to) }];
  const edges = edgesOfMotion(motion).flatMap((edge) => reachedEdges(axes, edge));
  const height = (share: number): number => from.z + share * (to.z - from.z);
  return edges.map((edge, i) => ({
    ...motion,
    from: { x: edge.ax, y: edge.ay, z: height(i / edges.length) },
    to: { x: edge.bx, y: edge.by, z: height((i + 1) / edges.length) },
    turn: edge.sweep === 0 ? null : { cx: edge.cx, cy: edge.cy, radius: edge.radius, sweep: edge.sweep },
  }));
}
