/**
 * What a machine whose axes are not true makes of the places that a file sends it to. The record states the axes; the
 * drawings and tool paths are judged by where they come out, in the sheet's true measure.
 */
import type { Vertex } from '../geometry/index.js';
import type { ReadBack } from './drawn.js';
import { type ProofEdge, edgeBetween, pointAlong } from './edge.js';
import type { AxesRead } from './job-reader.js';
import { lineOf } from './ring.js';
import type { ProofPoint } from './types.js';

/** An arc comes out as part of an ellipse; pieces of it this short (radians) are circles to far below a micrometre. */
const shortSweep = 0.1;

/** Where the machine comes when it is sent to a place. */
export function reached({ scaleX, scaleY, lean }: AxesRead, { x, y }: ProofPoint): ProofPoint {
  return { x: scaleX * x + lean * y, y: scaleY * y };
}

/** Bulge of the arc through three places in turn: half its sweep is by how much the two chords turn. */
function bulgeThrough(a: ProofPoint, via: ProofPoint, b: ProofPoint): number {
  const [ux, uy, vx, vy] = [via.x - a.x, via.y - a.y, b.x - via.x, b.y - via.y];
  return Math.tan(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy) / 2);
}

/** The path on which an edge comes out, as the vertices at which its pieces begin. */
function reachedEdge(axes: AxesRead, edge: ProofEdge): Vertex[] {
  const pieces = edge.sweep === 0 ? 1 : Math.ceil(Math.abs(edge.sweep) / shortSweep);
  return Array.from({ length: pieces }, (_, i) => {
    const at = (share: number): ProofPoint => reached(axes, pointAlong(edge, share));
    const from = at(i / pieces);
    const bulge = edge.sweep === 0 ? 0 : bulgeThrough(from, at((i + 0.5) / pieces), at((i + 1) / pieces));
    return { ...from, bulge };
  });
}

/** The edges on which an edge comes out. */
export function reachedEdges(axes: AxesRead, edge: ProofEdge): ProofEdge[] {
  const starts = reachedEdge(axes, edge);
  const end = reached(axes, { x: edge.bx, y: edge.by });
  return starts.map((start, i) => edgeBetween(start, starts[i + 1] ?? end));
}

/** An entity of a drawing where it comes out. The edge of the sheet is no cut: it stands where it is. */
export function reachedEntity(axes: AxesRead, entity: ReadBack): ReadBack {
  if (entity.layer === 'sheet-edge') return entity;
  if (entity.kind === 'circle') return { ...entity, ...reached(axes, entity) };
  const { edges, closed } = entity.line;
  const last = edges.at(-1);
  const end = closed || last === undefined ? [] : [{ ...reached(axes, { x: last.bx, y: last.by }), bulge: 0 }];
  return { ...entity, line: lineOf([...edges.flatMap((edge) => reachedEdge(axes, edge)), ...end], closed) };
}
