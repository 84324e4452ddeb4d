/** Motions seen from above: as edges of the proof's own kind. */
import { type ProofEdge, edgeBetween, lengthOf } from '../edge.js';
import { remembered } from '../remembered.js';
import type { Motion, ProofPoint3 } from './types.js';

/** Whether a motion goes straight up or down. */
export function isUpright({ from, to, turn }: Motion): boolean {
  return turn === null && Math.abs(to.x - from.x) < 1e-9 && Math.abs(to.y - from.y) < 1e-9;
}

/** The path of a motion as seen from above; an arc of more than a half circle in pieces. Every check of a motion asks. */
export const edgesOfMotion = remembered((motion: Motion): readonly ProofEdge[] => pathOf(motion));

function pathOf(motion: Motion): ProofEdge[] {
  const { from, to, turn } = motion;
  if (turn === null) return [edgeBetween({ x: from.x, y: from.y, bulge: 0 }, to)];
  const pieces = Math.max(1, Math.ceil(Math.abs(turn.sweep) / Math.PI - 1e-9));
  return Array.from({ length: pieces }, (_, i) => {
    const a = i === 0 ? from : placeOn(motion, i / pieces);
    const b = i === pieces - 1 ? to : placeOn(motion, (i + 1) / pieces);
    return edgeBetween({ x: a.x, y: a.y, bulge: Math.tan(turn.sweep / pieces / 4) }, b);
  });
}

/** The place a share `t` (0 to 1) of the length along a motion. */
export function placeOn({ from, to, turn }: Motion, t: number): ProofPoint3 {
  const z = from.z + t * (to.z - from.z);
  if (turn === null) return { x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y), z };
  const angle = Math.atan2(from.y - turn.cy, from.x - turn.cx) + t * turn.sweep;
  return { x: turn.cx + turn.radius * Math.cos(angle), y: turn.cy + turn.radius * Math.sin(angle), z };
}

/** Length of a motion seen from above. */
export function levelLength({ from, to, turn }: Motion): number {
  return turn === null ? lengthOf(to.x - from.x, to.y - from.y) : Math.abs(turn.sweep) * turn.radius;
}

/** Radius of what the tool cuts at the face of the sheet with its tip at z. */
export function radiusAt({ tool }: Motion, z: number): number {
  return tool.kind === 'v' ? Math.min(tool.diameter / 2, Math.max(0, -z)) : tool.diameter / 2;
}
