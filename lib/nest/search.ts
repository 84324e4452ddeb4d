/**
 * Where a shape may lie among others. Within each cell that the rims of the no-fit regions cut the sheet into, the
 * sum of depths is least at a corner of the cell (exactly so for convex regions), so that the corners are all the
 * places worth trying: corners of rims, crossings of rims, and their crossings with the sheet's limits.
 */
import type { NoFit } from './no-fit.js';

/** Depths below this (mm) are rounding. */
export const TOUCHING = 3e-8;

/** Places are let out of the sheet's limits by this (mm) and put back. */
const EDGE = 1e-9;

const LIMIT = 4096;

/** A search for one shape on one sheet. Reused: `start`, `add` for each thing in the way, then one of the questions. */
export class Search {
  /** Place found by the last question. */
  foundX = 0;
  foundY = 0;
  /** Edges looked at since the start: the measure of work. */
  work = 0;

  #count = 0;
  readonly #noFit: NoFit[] = [];
  readonly #qx = new Float64Array(LIMIT);
  readonly #qy = new Float64Array(LIMIT);
  readonly #weight = new Float64Array(LIMIT);
  #x0 = 0;
  #y0 = 0;
  #x1 = 0;
  #y1 = 0;
  #best = 0;
  #bestY = 0;
  #leftmost = false;
  #floor = -Infinity;
  readonly #near = new Int32Array(LIMIT);
  readonly #first = new Int32Array(LIMIT);
  readonly #second = new Int32Array(LIMIT);

  /** Limits of the reference point. False when the shape is too large for them. */
  start(x0: number, y0: number, x1: number, y1: number): boolean {
    this.#count = 0;
    this.#x0 = x0;
    this.#y0 = y0;
    this.#x1 = x1 < x0 && x1 > x0 - EDGE ? x0 : x1;
    this.#y1 = y1 < y0 && y1 > y0 - EDGE ? y0 : y1;
    return this.#x1 >= x0 && this.#y1 >= y0;
  }

  /** Narrows the limits to within dx, dy of a place; only right after `start`. */
  confine(x: number, y: number, dx: number, dy: number): void {
    this.#x0 = Math.max(this.#x0, Math.min(x - dx, this.#x1));
    this.#x1 = Math.min(this.#x1, Math.max(x + dx, this.#x0));
    this.#y0 = Math.max(this.#y0, Math.min(y - dy, this.#y1));
    this.#y1 = Math.min(this.#y1, Math.max(y + dy, this.#y0));
  }

  /** Something in the way: its region, where it stands and how much its depth counts. */
  add(noFit: NoFit, x: number, y: number, weight: number): void {
    if (x + noFit.maxX <= this.#x0 || x + noFit.minX >= this.#x1 + EDGE) {
      if (this.#x1 > this.#x0) return;
    }
    if (y + noFit.maxY <= this.#y0 || y + noFit.minY >= this.#y1 + EDGE) {
      if (this.#y1 > this.#y0) return;
    }
    const k = this.#count++;
    this.#noFit[k] = noFit;
    this.#qx[k] = x;
    this.#qy[k] = y;
    this.#weight[k] = weight;
  }

  /** Weighted depth at a place, cut short once it is no better than `limit`. */
  cost(x: number, y: number, limit: number): number {
    return this.#cost(x, y, limit, -1, -1);
  }

  /**
   * The place with the least weighted depth below `limit`; returns that, or `limit` when there is none. Ends at the
   * first place without overlap. `turn` says with which neighbour to begin.
   */
  least(limit: number, turn: number): number {
    this.#best = limit;
    this.#leftmost = false;
    this.#all(turn);
    return this.#best;
  }

  /**
   * The free place furthest left, then lowest, with x at least `floor`; returns its x, or Infinity.
   */
  leftmost(floor: number, below: number): number {
    this.#best = below;
    this.#bestY = Infinity;
    this.#leftmost = true;
    this.#floor = floor - EDGE;
    this.#all(0);
    return this.#bestY === Infinity ? Infinity : this.#best;
  }

  #cost(x: number, y: number, limit: number, one: number, two: number): number {
    const count = this.#count;
    const qx = this.#qx;
    const qy = this.#qy;
    const near = this.#near;
    let found = 0;
    let bound = 0;
    this.work += count;
    for (let k = 0; k < count; k++) {
      if (k === one || k === two) continue;
      const noFit = this.#noFit[k]!;
      const ux = x - qx[k]!;
      const uy = y - qy[k]!;
      if (ux <= noFit.minX || ux >= noFit.maxX || uy <= noFit.minY || uy >= noFit.maxY) continue;
      const least = noFit.least(ux, uy);
      if (least < 0) continue;
      bound += this.#weight[k]! * least;
      if (bound >= limit) return bound;
      near[found++] = k;
    }
    let sum = 0;
    for (let n = 0; n < found; n++) {
      const k = near[n]!;
      const noFit = this.#noFit[k]!;
      this.work += noFit.count;
      const depth = noFit.depth(x - qx[k]!, y - qy[k]!);
      if (depth > TOUCHING) {
        sum += this.#weight[k]! * depth;
        if (sum >= limit) return sum;
      }
    }
    return sum;
  }

  #try(px: number, py: number, one: number, two: number): void {
    const x0 = this.#x0;
    const y0 = this.#y0;
    const x1 = this.#x1;
    const y1 = this.#y1;
    if (px < x0 - EDGE || px > x1 + EDGE || py < y0 - EDGE || py > y1 + EDGE) return;
    const x = px < x0 ? x0 : px > x1 ? x1 : px;
    const y = py < y0 ? y0 : py > y1 ? y1 : py;
    if (this.#leftmost) {
      if (x < this.#floor || x > this.#best || (x >= this.#best - EDGE && y >= this.#bestY)) return;
      if (this.#cost(x, y, TOUCHING, one, two) > 0) return;
      this.#best = x;
      this.#bestY = y;
    } else {
      const cost = this.#cost(x, y, this.#best, one, two);
      if (cost >= this.#best) return;
      this.#best = cost;
    }
    this.foundX = x;
    this.foundY = y;
  }

  #done(): boolean {
    return !this.#leftmost && this.#best <= 0;
  }

  #all(turn: number): void {
    const { count, x0, y0, x1, y1 } = { count: this.#count, x0: this.#x0, y0: this.#y0, x1: this.#x1, y1: this.#y1 };
    this.#try(x0, y0, -1, -1);
    this.#try(x0, y1, -1, -1);
    this.#try(x1, y0, -1, -1);
    this.#try(x1, y1, -1, -1);
    for (let n = 0; n < count && !this.#done(); n++) {
      this.#rim((n + turn) % count);
    }
    for (let n = 0; n < count && !this.#done(); n++) {
      const a = (n + turn) % count;
      for (let m = 0; m < n && !this.#done(); m++) this.#crossings(a, (m + turn) % count);
    }
  }

  /** Corners of a region's rim, and where it crosses the limits. */
  #rim(a: number): void {
    const noFit = this.#noFit[a]!;
    const qx = this.#qx[a]!;
    const qy = this.#qy[a]!;
    const { x, y, dx, dy, count } = noFit;
    for (let k = 0; k < count; k++) {
      const ax = x[k]! + qx;
      const ay = y[k]! + qy;
      this.#try(ax, ay, a, -1);
      const ex = dx[k]!;
      const ey = dy[k]!;
      for (let side = 0; side < 2; side++) {
        if (ex !== 0) {
          const at = side === 0 ? this.#x0 : this.#x1;
          const t = (at - ax) / ex;
          if (t > 0 && t < 1) this.#try(at, ay + t * ey, a, -1);
        }
        if (ey !== 0) {
          const at = side === 0 ? this.#y0 : this.#y1;
          const t = (at - ay) / ey;
          if (t > 0 && t < 1) this.#try(ax + t * ex, at, a, -1);
        }
      }
    }
  }

  /** Edges of a region that reach into the box; their number. */
  #reaching(a: number, minX: number, minY: number, maxX: number, maxY: number, into: Int32Array): number {
    const noFit = this.#noFit[a]!;
    const qx = this.#qx[a]!;
    const qy = this.#qy[a]!;
    const { x, y, dx, dy, count } = noFit;
    let found = 0;
    for (let k = 0; k < count; k++) {
      const ax = x[k]! + qx;
      const ay = y[k]! + qy;
      const bx = ax + dx[k]!;
      const by = ay + dy[k]!;
      if ((ax < minX && bx < minX) || (ax > maxX && bx > maxX) || (ay < minY && by < minY) || (ay > maxY && by > maxY))
        continue;
      into[found++] = k;
    }
    return found;
  }

  #crossings(a: number, b: number): void {
    const one = this.#noFit[a]!;
    const two = this.#noFit[b]!;
    const ox = this.#qx[a]!;
    const oy = this.#qy[a]!;
    const tx = this.#qx[b]!;
    const ty = this.#qy[b]!;
    const minX =
      Math.max(this.#leftmost ? Math.max(this.#floor, this.#x0) : this.#x0, ox + one.minX, tx + two.minX) - EDGE;
    const maxX =
      Math.min(this.#leftmost ? Math.min(this.#best, this.#x1) : this.#x1, ox + one.maxX, tx + two.maxX) + EDGE;
    if (minX > maxX) return;
    const minY = Math.max(this.#y0, oy + one.minY, ty + two.minY) - EDGE;
    const maxY = Math.min(this.#y1, oy + one.maxY, ty + two.maxY) + EDGE;
    if (minY > maxY) return;
    const first = this.#first;
    const second = this.#second;
    const n = this.#reaching(a, minX, minY, maxX, maxY, first);
    if (n === 0) return;
    const m = this.#reaching(b, minX, minY, maxX, maxY, second);
    this.work += one.count + two.count + n * m;
    for (let i = 0; i < n; i++) {
      const k = first[i]!;
      const ax = one.x[k]! + ox;
      const ay = one.y[k]! + oy;
      const ex = one.dx[k]!;
      const ey = one.dy[k]!;
      for (let j = 0; j < m; j++) {
        const l = second[j]!;
        const fx = two.dx[l]!;
        const fy = two.dy[l]!;
        const turn = ex * fy - ey * fx;
        if (turn === 0) continue;
        const ux = two.x[l]! + tx - ax;
        const uy = two.y[l]! + ty - ay;
        // shares along both edges, times turn: divided only for the few that cross
        const t = ux * fy - uy * fx;
        if (turn > 0 ? t < 0 || t > turn : t > 0 || t < turn) continue;
        const u = ux * ey - uy * ex;
        if (turn > 0 ? u < 0 || u > turn : u > 0 || u < turn) continue;
        this.#try(ax + (t / turn) * ex, ay + (t / turn) * ey, a, b);
      }
    }
  }
}
