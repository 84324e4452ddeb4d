/** The boundary edges of all regions in the way, edge by edge, and lists of those that reach into a box. */
import { f64, i32 } from '../geometry/typed-arrays.js';
import { withCapacity } from './typed-arrays.js';
import type { NoFit } from './no-fit.js';

/** Places are let out of the sheet's limits by this (mm) and put back. */
export const EDGE = 1e-9;

/** Edges as flat arrays: from (ax, ay) by (ex, ey), of a region by its number. Reused. */
export class BoundaryEdges {
  ax = new Float64Array(1024);
  ay = new Float64Array(1024);
  ex = new Float64Array(1024);
  ey = new Float64Array(1024);
  of = new Int32Array(1024);
  /** Numbers of edges, list after list. */
  listed = new Int32Array(16384);
  #count = 0;

  start(): void {
    this.#count = 0;
  }

  /** Takes the edges of a region that reach the limits. */
  add(noFit: NoFit, qx: number, qy: number, of: number, x0: number, y0: number, x1: number, y1: number): void {
    const { x, y, dx, dy, count } = noFit;
    this.#makeRoom(count);
    const minX = x0 - EDGE;
    const minY = y0 - EDGE;
    const maxX = x1 + EDGE;
    const maxY = y1 + EDGE;
    for (let i = 0; i < count; i++) {
      const ax = f64(x, i) + qx;
      const ay = f64(y, i) + qy;
      const bx = ax + f64(dx, i);
      const by = ay + f64(dy, i);
      if ((ax < minX && bx < minX) || (ax > maxX && bx > maxX) || (ay < minY && by < minY) || (ay > maxY && by > maxY))
        continue;
      this.#put(ax, ay, f64(dx, i), f64(dy, i), of);
    }
  }

  /** Takes the limits themselves as one more region, and lists all edges; returns their number. */
  close(of: number, x0: number, y0: number, x1: number, y1: number): number {
    this.#makeRoom(4);
    this.#put(x0, y0, x1 - x0, 0, of);
    this.#put(x1, y0, 0, y1 - y0, of);
    this.#put(x1, y1, x0 - x1, 0, of);
    this.#put(x0, y1, 0, y0 - y1, of);
    const count = this.#count;
    this.listed = withCapacity(this.listed, count);
    for (let k = 0; k < count; k++) this.listed[k] = k;
    return count;
  }

  /** Lists at `at` those of the edges that reach into a box; returns where the list ends. */
  reaching(x0: number, y0: number, x1: number, y1: number, from: number, to: number, at: number): number {
    this.listed = withCapacity(this.listed, at + to - from);
    const edges = this.listed;
    const minX = x0 - EDGE;
    const minY = y0 - EDGE;
    const maxX = x1 + EDGE;
    const maxY = y1 + EDGE;
    const midX = (x0 + x1) / 2;
    const midY = (y0 + y1) / 2;
    const halfX = (x1 - x0) / 2 + EDGE;
    const halfY = (y1 - y0) / 2 + EDGE;
    const xs = this.ax;
    const ys = this.ay;
    const exs = this.ex;
    const eys = this.ey;
    let end = at;
    for (let n = from; n < to; n++) {
      const k = i32(edges, n);
      const ax = f64(xs, k);
      const ay = f64(ys, k);
      const ex = f64(exs, k);
      const ey = f64(eys, k);
      const bx = ax + ex;
      const by = ay + ey;
      if ((ax < minX && bx < minX) || (ax > maxX && bx > maxX) || (ay < minY && by < minY) || (ay > maxY && by > maxY))
        continue;
      // the edge's line passes the box
      const off = ex * (midY - ay) - ey * (midX - ax);
      const wide = (ex < 0 ? -ex : ex) * halfY + (ey < 0 ? -ey : ey) * halfX;
      if (off > wide || off < -wide) continue;
      edges[end++] = k;
    }
    return end;
  }

  #makeRoom(more: number): void {
    const length = this.#count + more;
    if (length <= this.ax.length) return;
    this.ax = withCapacity(this.ax, length);
    this.ay = withCapacity(this.ay, length);
    this.ex = withCapacity(this.ex, length);
    this.ey = withCapacity(this.ey, length);
    this.of = withCapacity(this.of, length);
  }

  #put(ax: number, ay: number, ex: number, ey: number, of: number): void {
    const k = this.#count++;
    this.ax[k] = ax;
    this.ay[k] = ay;
    this.ex[k] = ex;
    this.ey[k] = ey;
    this.of[k] = of;
  }
}
