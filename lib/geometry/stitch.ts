/** Pieces of edges joined end to start into closed rings. */
import { element } from './element.js';
import { bulgeOfSweep, edgeLength, tangentOnEdge } from './arc.js';
import { signedArea } from './contour.js';
import { cross, dot } from './point.js';
import { SAME_CORNER } from './precision.js';
import type { EdgePiece } from './pieces.js';
import type { Contour, Point, Vertex } from './types.js';

/** How much farther than usual ends are looked for, in turn, when pieces are left over. */
const REACHES = [1, 10, 100, 1000];
/** Pieces up to this long (mm) are left over where edges meet at next to no angle, and are missed by nobody. */
const SPARE = 1e-3;

/** Number of the corner that each end belongs to: ends within `reach` of one another, in x and in y, share one. */
function corners(ends: readonly Point[], reach: number): number[] {
  const order = ends
    .map((_, i) => i)
    .sort((a, b) => element(ends, a).x - element(ends, b).x || element(ends, a).y - element(ends, b).y || a - b);
  const group = ends.map((_, i) => i);
  const rootOf = (i: number): number => {
    let root = i;
    while (group[root] !== root) root = element(group, root);
    group[i] = root;
    return root;
  };
  order.forEach((i, n) => {
    for (let m = n + 1; m < order.length; m++) {
      const j = element(order, m);
      if (element(ends, j).x - element(ends, i).x > reach) break;
      if (Math.abs(element(ends, j).y - element(ends, i).y) <= reach) group[rootOf(j)] = rootOf(i);
    }
  });
  return ends.map((_, i) => rootOf(i));
}

/** Pieces without those that lead nowhere or come from nowhere, over and over until all that is left closes. */
function prune(pieces: readonly EdgePiece[], start: readonly number[], end: readonly number[]): boolean[] {
  const leaving = new Map<number, number>();
  const arriving = new Map<number, number>();
  const count = (map: Map<number, number>, key: number, by: number): void =>
    void map.set(key, (map.get(key) ?? 0) + by);
  pieces.forEach((_, i) => {
    count(leaving, element(start, i), 1);
    count(arriving, element(end, i), 1);
  });
  const alive = pieces.map(() => true);
  for (let again = true; again;) {
    again = false;
    pieces.forEach((_, i) => {
      if (!alive[i] || ((leaving.get(element(end, i)) ?? 0) > 0 && (arriving.get(element(start, i)) ?? 0) > 0)) return;
      alive[i] = false;
      again = true;
      count(leaving, element(start, i), -1);
      count(arriving, element(end, i), -1);
    });
  }
  return alive;
}

/** How far to the left the path goes on, radians: of several, the sharpest left keeps rings apart that only touch. */
function leftTurn(piece: EdgePiece, next: EdgePiece): number {
  const a = tangentOnEdge(piece.edge, piece.t1);
  const b = tangentOnEdge(next.edge, next.t0);
  return Math.atan2(cross(a, b), dot(a, b));
}

/** Runs of one edge that follow each other, as one. */
function joinRuns(loop: readonly EdgePiece[]): EdgePiece[] {
  const joined: EdgePiece[] = [];
  const follows = (a: EdgePiece, b: EdgePiece): boolean => a.source === b.source && a.t1 === b.t0;
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

function vertexOf(piece: EdgePiece): Vertex {
  const { edge, from, t0, t1 } = piece;
  return { x: from.x, y: from.y, bulge: edge.kind === 'arc' ? bulgeOfSweep(edge.sweep * (t1 - t0)) : 0 };
}

/** What stitching came to: the rings, and the length of the longest piece that found no place in one. */
interface Stitched {
  readonly rings: readonly Contour[];
  readonly lost: number;
}

function lengthOf({ edge, t0, t1 }: EdgePiece): number {
  return edgeLength(edge) * (t1 - t0);
}

function stitchWithin(pieces: readonly EdgePiece[], reach: number): Stitched {
  const ends = pieces.flatMap((piece) => [piece.from, piece.to]);
  const corner = corners(ends, reach);
  const start = pieces.map((_, i) => element(corner, 2 * i));
  const end = pieces.map((_, i) => element(corner, 2 * i + 1));
  const unused = prune(pieces, start, end);
  let lost = 0;
  const leaving = new Map<number, number[]>();
  start.forEach((at, i) => {
    if (!unused[i]) {
      lost = Math.max(lost, lengthOf(element(pieces, i)));
      return;
    }
    const list = leaving.get(at);
    if (list === undefined) leaving.set(at, [i]);
    else list.push(i);
  });

  const onward = (at: number, from: EdgePiece | undefined): number | undefined => {
    const onward = (leaving.get(at) ?? []).filter((i) => unused[i]);
    if (from === undefined || onward.length < 2) return onward[0];
    return onward.reduce((a, b) => (leftTurn(from, element(pieces, b)) > leftTurn(from, element(pieces, a)) ? b : a));
  };

  const rings: Contour[] = [];
  for (let first = 0; first < pieces.length; first++) {
    if (!unused[first]) continue;
    // walk until a corner comes round again; what lies between its two visits is a ring
    const walk: number[] = [];
    const visited = new Map<number, number>([[element(start, first), 0]]);
    let next: number | undefined = first;
    while (next !== undefined || walk.length > 0) {
      if (next === undefined) {
        // a blind end: the last piece was no part of a ring, go back and try the other way
        const blind = walk.pop()!;
        visited.delete(element(end, blind));
        lost = Math.max(lost, lengthOf(element(pieces, blind)));
        next = onward(element(start, blind), pieces[walk.at(-1) ?? -1]);
        continue;
      }
      unused[next] = false;
      walk.push(next);
      const at: number = element(end, next);
      const since = visited.get(at);
      if (since === undefined) visited.set(at, walk.length);
      else {
        const loop = walk.splice(since);
        for (const i of loop) if (end[i] !== at) visited.delete(element(end, i));
        addRing(
          loop.map((i) => element(pieces, i)),
          rings,
        );
        if (walk.length === 0) break;
      }
      next = onward(at, pieces[walk.at(-1)!]);
    }
  }
  return { rings, lost };
}

/**
 * The closed rings that the pieces make, each in the direction of its pieces. Pieces that do not close are dropped,
 * and so are rings that enclose nothing (less than a corner's width all along). Ends meet within 1e-7 mm; where long
 * pieces are left over, as edges shorter than a micrometre may cause, the reach is widened step by step.
 */
export function stitch(pieces: readonly EdgePiece[]): Contour[] {
  let best: Stitched = { rings: [], lost: Infinity };
  for (const wider of REACHES) {
    const stitched = stitchWithin(pieces, SAME_CORNER * wider);
    if (stitched.lost < best.lost) best = stitched;
    if (best.lost <= SPARE) break;
  }
  return [...best.rings];
}

function addRing(loop: readonly EdgePiece[], rings: Contour[]): void {
  const runs = joinRuns(loop);
  const ring = runs.map(vertexOf);
  const length = runs.reduce((sum, { from, to }) => sum + Math.hypot(to.x - from.x, to.y - from.y), 0);
  if (Math.abs(signedArea(ring)) > SAME_CORNER * length) rings.push(ring);
}
