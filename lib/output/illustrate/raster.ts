/**
 * What is seen where: every face that looks at the eye is laid into a grid of points, the nearest stays (depth buffer;
 * Catmull 1974). Whether a line is seen follows from the faces that lie beside it, so that faces that touch or reach
 * through each other need no order.
 */
import { element } from '../../geometry/index.js';
import type { Seen } from './camera.js';

export const NOTHING = -1;

export interface Raster {
  readonly width: number;
  readonly height: number;
  /** Number of the face that is seen at each point, row by row. */
  readonly faces: Int32Array;
  readonly depths: Float32Array;
}

export function emptyRaster(width: number, height: number): Raster {
  const size = width * height;
  return { width, height, faces: new Int32Array(size).fill(NOTHING), depths: new Float32Array(size).fill(-Infinity) };
}

/** How near a plane is over the picture: `a x + b y + c`. */
interface Depth {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/** The plane through a flat ring (Newell's normal, which a short edge does not spoil). */
function depthOf(ring: readonly Seen[]): Depth | null {
  let [x, y, z] = [0, 0, 0];
  let [mx, my, mz] = [0, 0, 0];
  ring.forEach((p, i) => {
    const q = element(ring, (i + 1) % ring.length);
    x += (p.y - q.y) * (p.near + q.near);
    y += (p.near - q.near) * (p.x + q.x);
    z += (p.x - q.x) * (p.y + q.y);
    mx += p.x / ring.length;
    my += p.y / ring.length;
    mz += p.near / ring.length;
  });
  // seen on edge
  if (Math.abs(z) < 1e-4 * Math.hypot(x, y, z)) return null;
  return { a: -x / z, b: -y / z, c: mz + (x * mx + y * my) / z };
}

/** Lays a flat face with its holes into the grid. */
export function layFace(raster: Raster, rings: readonly (readonly Seen[])[], face: number): void {
  const { width, height, faces, depths } = raster;
  const depth = depthOf(element(rings, 0));
  if (depth === null) return;
  let [low, high] = [Infinity, -Infinity];
  for (const { y } of element(rings, 0)) {
    low = Math.min(low, y);
    high = Math.max(high, y);
  }
  const first = Math.max(0, Math.ceil(low - 0.5));
  const last = Math.min(height - 1, Math.floor(high - 0.5));
  const cuts: number[][] = [];
  for (let row = first; row <= last; row += 1) cuts.push([]);
  for (const ring of rings)
    ring.forEach((p, i) => {
      const q = element(ring, i + 1 === ring.length ? 0 : i + 1);
      const [under, over] = p.y <= q.y ? [p.y, q.y] : [q.y, p.y];
      const end = Math.min(last, Math.ceil(over - 0.5));
      for (let row = Math.max(first, Math.floor(under - 0.5)); row <= end; row += 1) {
        const level = row + 0.5;
        if (p.y <= level !== q.y <= level) cuts[row - first]?.push(p.x + ((level - p.y) * (q.x - p.x)) / (q.y - p.y));
      }
    });
  cuts.forEach((ends, i) => {
    const row = first + i;
    const level = row + 0.5;
    ends.sort((s, t) => s - t);
    for (let k = 0; k + 1 < ends.length; k += 2) {
      const to = Math.min(width - 1, Math.floor(element(ends, k + 1) - 0.5));
      for (let column = Math.max(0, Math.ceil(element(ends, k) - 0.5)); column <= to; column += 1) {
        const near = depth.a * (column + 0.5) + depth.b * level + depth.c;
        const at = row * width + column;
        if (near <= (depths[at] ?? 0)) continue;
        depths[at] = near;
        faces[at] = face;
      }
    }
  });
}

/** Whether one of some faces is seen at a point or right beside it. */
export function seenAt(
  { width, height, faces }: Raster,
  x: number,
  y: number,
  own: (face: number) => boolean,
): boolean {
  const column = Math.floor(x);
  const row = Math.floor(y);
  const [left, right] = [Math.max(0, column - 1), Math.min(width - 1, column + 1)];
  let last = NOTHING;
  for (let r = Math.max(0, row - 1); r <= Math.min(height - 1, row + 1); r += 1)
    for (let at = r * width + left; at <= r * width + right; at += 1) {
      const face = faces[at] ?? NOTHING;
      if (face === last) continue;
      if (own(face)) return true;
      last = face;
    }
  return false;
}
