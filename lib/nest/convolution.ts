/**
 * Convolution of two rings: the closed curves whose winding number at a point counts the pieces in which the one
 * ring's inside meets the other's, placed there (Guibas, Ramshaw and Stolfi, A kinetic framework for computational
 * geometry, FOCS 1983, from memory). What they wind about is the Minkowski sum.
 */
import { cyclic, element, type Point, type Polygon } from '../geometry/index.js';
import { f64 } from '../geometry/typed-arrays.js';

interface Corners {
  readonly ring: Polygon;
  /** Direction of the edge that leaves corner i. */
  readonly direction: Float64Array;
  /** Whether corner i turns left. */
  readonly convex: Uint8Array;
}

function cornersOf(ring: Polygon): Corners {
  const n = ring.length;
  const direction = new Float64Array(n);
  const convex = new Uint8Array(n);
  for (let i = 0; i < n; i++) {
    const p = cyclic(ring, i);
    const q = cyclic(ring, i + 1);
    const angle = Math.atan2(q.y - p.y, q.x - p.x);
    // one name for the direction of -x
    direction[i] = angle === -Math.PI ? Math.PI : angle;
  }
  for (let i = 0; i < n; i++) {
    let turn = f64(direction, i) - f64(direction, (i + n - 1) % n);
    if (turn > Math.PI) turn -= 2 * Math.PI;
    if (turn <= -Math.PI) turn += 2 * Math.PI;
    convex[i] = turn >= 0 ? 1 : 0;
  }
  return { ring, direction, convex };
}

/** Whether direction `at` lies anticlockwise from `from` and before `to`; ties as the flags say. */
function within(at: number, from: number, to: number, withFrom: boolean): boolean {
  const afterFrom = withFrom ? at >= from : at > from;
  const beforeTo = withFrom ? at < to : at <= to;
  return from <= to ? afterFrom && beforeTo : afterFrom || beforeTo;
}

/**
 * Closed curves of the convolution of `a` and `b` (anticlockwise solid, clockwise a hole; no zero-length edges). Edges
 * of `b` count as turned anticlockwise by next to nothing against equal ones of `a`, so that ties are settled alike
 * everywhere and the curves close.
 */
export function convolve(a: Polygon, b: Polygon): Point[][] {
  const one = cornersOf(a);
  const two = cornersOf(b);
  const n = a.length;
  const m = b.length;
  const starts = new Map<number, number[]>();
  const ends: number[] = [];
  const add = (from: number, to: number, forward: boolean): void => {
    const [s, e] = forward ? [from, to] : [to, from];
    const index = ends.push(e) - 1;
    const list = starts.get(s);
    if (list) list.push(index);
    else starts.set(s, [index]);
  };
  for (let j = 0; j < m; j++) {
    const into = f64(two.direction, (j + m - 1) % m);
    const out = f64(two.direction, j);
    const convex = two.convex[j] === 1;
    if (into === out) continue;
    const [from, to] = convex ? [into, out] : [out, into];
    for (let i = 0; i < n; i++) {
      // equal directions: the edge of b lies just after that of a
      if (within(f64(one.direction, i), from, to, false)) add(i * m + j, ((i + 1) % n) * m + j, convex);
    }
  }
  for (let i = 0; i < n; i++) {
    const into = f64(one.direction, (i + n - 1) % n);
    const out = f64(one.direction, i);
    const convex = one.convex[i] === 1;
    if (into === out) continue;
    const [from, to] = convex ? [into, out] : [out, into];
    for (let j = 0; j < m; j++) {
      if (within(f64(two.direction, j), from, to, true)) add(i * m + j, i * m + ((j + 1) % m), convex);
    }
  }
  return trace(starts, ends, (node) => {
    const p = element(a, Math.floor(node / m));
    const q = element(b, node % m);
    return { x: p.x + q.x, y: p.y + q.y };
  });
}

/** Runs along edges until each curve closes; every node has as many edges in as out, so any pairing will do. */
function trace(starts: Map<number, number[]>, ends: readonly number[], pointOf: (node: number) => Point): Point[][] {
  const curves: Point[][] = [];
  for (const [start, list] of starts) {
    while (list.length > 0) {
      const curve: Point[] = [];
      let node = start;
      for (;;) {
        const edge = starts.get(node)?.pop();
        if (edge === undefined) break;
        curve.push(pointOf(node));
        node = element(ends, edge);
      }
      curves.push(curve);
    }
  }
  return curves;
}
