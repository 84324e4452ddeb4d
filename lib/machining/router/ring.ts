/** A ring or path measured along its length, and walks on it. */
import {
  cyclic,
  type Edge,
  edgeArc,
  edgeLength,
  element,
  type Point,
  pointOnEdge,
  tangentOnEdge,
  type Vertex,
} from '../../geometry/index.js';

/** A closed ring with the length at which each edge begins. */
export interface RingPath {
  readonly edges: readonly Edge[];
  readonly starts: readonly number[];
  readonly length: number;
}

/** Edges shorter than this (mm) are rounding. */
const minEdge = 1e-6;

export function ringOf(vertices: readonly Vertex[]): RingPath {
  const edges = vertices
    .map((v, i) => edgeArc(v, cyclic(vertices, i + 1)))
    .filter((edge) => edgeLength(edge) > minEdge);
  const starts: number[] = [];
  let length = 0;
  for (const edge of edges) {
    starts.push(length);
    length += edgeLength(edge);
  }
  return { edges, starts, length };
}

/** Length along the ring brought into one turn. */
export function turnOf(ring: RingPath, s: number): number {
  const rest = s % ring.length;
  return rest < 0 ? rest + ring.length : rest;
}

/** The edge at a length along the ring, and the fraction of it. */
export function edgeAt(ring: RingPath, s: number): { readonly index: number; readonly fraction: number } {
  const at = turnOf(ring, s);
  let low = 0;
  let high = ring.edges.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (element(ring.starts, middle) <= at) low = middle;
    else high = middle - 1;
  }
  const fraction = (at - element(ring.starts, low)) / edgeLength(element(ring.edges, low));
  return { index: low, fraction: Math.min(1, Math.max(0, fraction)) };
}

export function pointAt(ring: RingPath, s: number): Point {
  const { index, fraction } = edgeAt(ring, s);
  return pointOnEdge(element(ring.edges, index), fraction);
}

/** Direction of travel at a length along the ring. */
export function directionAt(ring: RingPath, s: number): Point {
  const { index, fraction } = edgeAt(ring, s);
  return tangentOnEdge(element(ring.edges, index), fraction);
}

/** A run of one edge: where it ends, and the arc's centre and signed sweep if it is one. */
export interface Stretch {
  readonly to: Point;
  readonly length: number;
  readonly arc: { readonly centre: Point; readonly sweep: number } | null;
}

/** Longest sweep of one arc: a half circle, so that no reader has to guess which way round. */
const maxSweep = Math.PI;

/** The runs from length s0 to s1 (s1 after s0, both may pass a full turn). */
export function runsBetween(ring: RingPath, s0: number, s1: number): Stretch[] {
  const runs: Stretch[] = [];
  let s = s0;
  // the fraction of a hair that rounding leaves before an edge's end belongs to the next edge
  while (s1 - s > minEdge) {
    const { index, fraction } = edgeAt(ring, s + minEdge / 2);
    const edge = element(ring.edges, index);
    const length = edgeLength(edge);
    const from = Math.max(0, fraction - minEdge / 2 / length);
    const left = (1 - from) * length;
    const max = edge.kind === 'arc' ? Math.min(left, maxSweep * edge.radius) : left;
    const step = Math.min(max, s1 - s);
    const to = Math.min(1, from + step / length);
    runs.push({
      to: pointOnEdge(edge, to),
      length: step,
      arc: edge.kind === 'arc' ? { centre: edge.centre, sweep: edge.sweep * (to - from) } : null,
    });
    s += Math.max(step, minEdge);
  }
  return runs;
}

/** Whether a vertex is the foot of a spur: the path goes out from it and comes straight back. */
function spurAt(vertices: readonly Vertex[], i: number): boolean {
  const next = cyclic(vertices, i + 2);
  const v = element(vertices, i);
  return v.bulge === 0 && Math.hypot(v.x - next.x, v.y - next.y) < minEdge && vertices.length > 4;
}

/** The ring without the spurs that open corners, and whether there were any. */
export function withoutSpurs(vertices: readonly Vertex[]): { readonly ring: Vertex[]; readonly spurs: boolean } {
  const ring: Vertex[] = [];
  let spurs = false;
  for (let i = 0; i < vertices.length; i += 1) {
    if (spurAt(vertices, i)) {
      spurs = true;
      i += 1;
    } else ring.push(element(vertices, i));
  }
  return { ring, spurs };
}
