/** Pieces of edges joined end to start into closed rings. */
import { bulgeOfSweep, edgeLength, tangentOnEdge } from './arc.js';
import { signedArea } from './contour.js';
import { element } from './element.js';
import { cross, dot } from './point.js';
import { SAME_CORNER } from './precision.js';
import type { Piece } from './pieces.js';
import type { Contour, Point, Vertex } from './types.js';

/** How much farther than usual ends are looked for, in turn, when pieces are left over. */
const REACHES = [1, 10, 100, 1000];
/** Pieces up to this long (mm) are left over where edges meet at next to no angle, and are missed by nobody. */
const SPARE = 1e-3;

/** Number of the corner that each end belongs to: ends within `reach` of one another, in x and in y, share one. */
function corners(ends: readonly Point[], reach: number): number[] {
  const order = ends.map(({ x, y }, i) => ({ x, y, i })).sort((a, b) => a.x - b.x || a.y - b.y || a.i - b.i);
  const group = ends.map((_, i) => i);
  const rootOf = (i: number): number => {
    let root = i;
    for (let next = group[root]; next !== undefined && next !== root; next = group[root]) root = next;
    group[i] = root;
    return root;
  };
  order.forEach((end, n) => {
    for (let m = n + 1; m < order.length; m++) {
      const other = element(order, m);
      if (other.x - end.x > reach) break;
      if (Math.abs(other.y - end.y) <= reach) group[rootOf(other.i)] = rootOf(end.i);
    }
  });
  return ends.map((_, i) => rootOf(i));
}

/** A piece with the numbers of the corners that it joins. */
interface Link {
  readonly piece: Piece;
  readonly start: number;
  readonly end: number;
}

/** Links that neither lead nowhere nor come from nowhere: those that do are left out until all that remain close. */
function closing(links: readonly Link[]): Set<Link> {
  const leaving = new Map<number, number>();
  const arriving = new Map<number, number>();
  const count = (map: Map<number, number>, key: number, by: number): void =>
    void map.set(key, (map.get(key) ?? 0) + by);
  for (const { start, end } of links) {
    count(leaving, start, 1);
    count(arriving, end, 1);
  }
  const kept = new Set(links);
  for (let again = true; again;) {
    again = false;
    for (const link of kept) {
      if ((leaving.get(link.end) ?? 0) > 0 && (arriving.get(link.start) ?? 0) > 0) continue;
      kept.delete(link);
      again = true;
      count(leaving, link.start, -1);
      count(arriving, link.end, -1);
    }
  }
  return kept;
}

/** How far to the left the path goes on, radians: of several, the sharpest left keeps rings apart that only touch. */
function leftTurn(piece: Piece, next: Piece): number {
  const a = tangentOnEdge(piece.edge, piece.t1);
  const b = tangentOnEdge(next.edge, next.t0);
  return Math.atan2(cross(a, b), dot(a, b));
}

/** Runs of one edge that follow each other, as one. */
function joinRuns(loop: readonly Piece[]): Piece[] {
  const joined: Piece[] = [];
  const follows = (a: Piece, b: Piece): boolean => a.source === b.source && a.t1 === b.t0;
  for (const piece of loop) {
    const before = joined.at(-1);
    if (before !== undefined && follows(before, piece)) {
      joined[joined.length - 1] = { ...before, t1: piece.t1, to: piece.to };
    } else joined.push(piece);
  }
  const first = joined[0];
  const last = joined.at(-1);
  if (first !== undefined && last !== undefined && joined.length > 1 && follows(last, first)) {
    joined.pop();
    joined[0] = { ...first, t0: last.t0, from: last.from };
  }
  return joined;
}

function vertexOf(piece: Piece): Vertex {
  const { edge, from, t0, t1 } = piece;
  return { x: from.x, y: from.y, bulge: edge.kind === 'arc' ? bulgeOfSweep(edge.sweep * (t1 - t0)) : 0 };
}

/** What stitching came to: the rings, and the length of the longest piece that found no place in one. */
interface Stitched {
  readonly rings: readonly Contour[];
  readonly lost: number;
}

function lengthOf({ edge, t0, t1 }: Piece): number {
  return edgeLength(edge) * (t1 - t0);
}

/** Pieces as links between their corners. */
function linksOf(pieces: readonly Piece[], reach: number): Link[] {
  const corner = corners(
    pieces.flatMap(({ from, to }) => [from, to]),
    reach,
  );
  return pieces.map((piece, i) => ({ piece, start: element(corner, 2 * i), end: element(corner, 2 * i + 1) }));
}

function stitchWithin(pieces: readonly Piece[], reach: number): Stitched {
  const links = linksOf(pieces, reach);
  const unused = closing(links);
  let lost = 0;
  const leaving = new Map<number, Link[]>();
  for (const link of links) {
    if (!unused.has(link)) {
      lost = Math.max(lost, lengthOf(link.piece));
      continue;
    }
    const list = leaving.get(link.start);
    if (list === undefined) leaving.set(link.start, [link]);
    else list.push(link);
  }

  const onward = (at: number, from: Link | undefined): Link | undefined => {
    const open = (leaving.get(at) ?? []).filter((link) => unused.has(link));
    if (from === undefined || open.length < 2) return open[0];
    return open.reduce((a, b) => (leftTurn(from.piece, b.piece) > leftTurn(from.piece, a.piece) ? b : a));
  };

  const rings: Contour[] = [];
  for (const first of links) {
    if (!unused.has(first)) continue;
    // walk until a corner comes round again; what lies between its two visits is a ring
    const walk: Link[] = [];
    const visited = new Map<number, number>([[first.start, 0]]);
    let next: Link | undefined = first;
    for (;;) {
      if (next === undefined) {
        // a blind end: the last piece was no part of a ring, go back and try another
        const blind = walk.pop();
        if (blind === undefined) break;
        visited.delete(blind.end);
        lost = Math.max(lost, lengthOf(blind.piece));
        next = onward(blind.start, walk.at(-1));
        continue;
      }
      unused.delete(next);
      walk.push(next);
      const at: number = next.end;
      const since = visited.get(at);
      if (since === undefined) visited.set(at, walk.length);
      else {
        const loop = walk.splice(since);
        for (const { end } of loop) if (end !== at) visited.delete(end);
        addRing(
          loop.map(({ piece }) => piece),
          rings,
        );
        if (walk.length === 0) break;
      }
      next = onward(at, walk.at(-1));
    }
  }
  return { rings, lost };
}

/**
 * The closed rings that the pieces make, each in the direction of its pieces. Pieces that do not close are dropped,
 * and so are rings that enclose nothing (less than a corner's width all along). Ends meet within 1e-7 mm; where long
 * pieces are left over, as edges shorter than a micrometre may cause, the reach is widened step by step.
 */
export function stitch(pieces: readonly Piece[]): Contour[] {
  let best: Stitched = { rings: [], lost: Infinity };
  for (const wider of REACHES) {
    const stitched = stitchWithin(pieces, SAME_CORNER * wider);
    if (stitched.lost < best.lost) best = stitched;
    if (best.lost <= SPARE) break;
  }
  return [...best.rings];
}

function addRing(loop: readonly Piece[], rings: Contour[]): void {
  const runs = joinRuns(loop);
  const ring = runs.map(vertexOf);
  const length = runs.reduce((sum, { from, to }) => sum + Math.hypot(to.x - from.x, to.y - from.y), 0);
  if (Math.abs(signedArea(ring)) > SAME_CORNER * length) rings.push(ring);
}
