/**
 * Where a shape may lie among others. Within each cell that the boundary edges of the no-fit regions cut the sheet into,
 * the sum of depths, or of their roots, is least at a corner of the cell (exactly so for convex regions: there the depth
 * is concave, and so is its root), so that the corners are all the places worth trying: of boundary edges, and where they
 * cross each other and the sheet's limits. The sheet is halved again and again; halves in which no place can be better
 * than the best so far are left out: a region's depth changes by no more than one moves, so its middle bounds it.
 */
import { f64, i32 } from '../geometry/typed-arrays.js';
import { element } from '../geometry/index.js';
import { withCapacity } from './typed-arrays.js';
import type { NoFit } from './no-fit.js';
import { EDGE, BoundaryEdges } from './boundary-edges.js';

/** Depths below this (mm) are rounding. */
export const TOUCHING = 3e-8;

/** A box with no more edges than this is not halved further, nor one that was halved so often. */
const FEW = 6;
const MAX_HALVINGS = 14;

/** What a depth counts for: itself, or its root. */
export const counted = (depth: number, rooted: boolean): number => (rooted ? Math.sqrt(depth) : depth);

/** A search for one shape on one sheet. Reused: `start`, `add` for each thing in the way, then one of the questions. */
export class Search {
  /** Place found by the last question. */
  foundX = 0;
  foundY = 0;
  /** Edges and regions looked at since the start: the measure of work. */
  work = 0;

  // regions in the way, where they stand and how much their depth counts
  #count = 0;
  readonly #noFit: NoFit[] = [];
  #qx = new Float64Array(256);
  #qy = new Float64Array(256);
  #weight = new Float64Array(256);
  readonly #boundary = new BoundaryEdges();
  // limits of the reference point
  #x0 = 0;
  #y0 = 0;
  #x1 = 0;
  #y1 = 0;
  // regions that reach into the boxes that are being halved, box after box
  #regionsIn = new Int32Array(4096);
  #near = new Int32Array(256);

  #best = 0;
  #bestY = 0;
  #leftmost = false;
  #rooted = false;
  #floor = -Infinity;
  #turn = 0;

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
    if (x + noFit.maxX < this.#x0 || x + noFit.minX > this.#x1) return;
    if (y + noFit.maxY < this.#y0 || y + noFit.minY > this.#y1) return;
    const k = this.#count++;
    if (k >= this.#qx.length) {
      this.#qx = withCapacity(this.#qx, k + 1);
      this.#qy = withCapacity(this.#qy, k + 1);
      this.#weight = withCapacity(this.#weight, k + 1);
      this.#near = withCapacity(this.#near, k + 1);
    }
    this.#noFit[k] = noFit;
    this.#qx[k] = x;
    this.#qy[k] = y;
    this.#weight[k] = weight;
  }

  /**
   * The place with the least weighted depth below `limit`; returns that, or `limit` when there is none. Ends at the
   * first place without overlap. The bits of `turn` say which halves are looked at first where that is all one.
   * @param rooted whether the root of each depth counts in its place
   */
  minCost(limit: number, turn: number, rooted: boolean): number {
    this.#rooted = rooted;
    this.#best = limit;
    this.#leftmost = false;
    this.#turn = turn;
    this.#all();
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
    this.#all();
    return this.#bestY === Infinity ? Infinity : this.#best;
  }

  /** Weighted depth at a place among the listed regions, cut short once it is no better than `limit`. */
  #cost(x: number, y: number, limit: number, from: number, to: number, one: number, two: number): number {
    const qx = this.#qx;
    const qy = this.#qy;
    const near = this.#near;
    const regions = this.#regionsIn;
    let found = 0;
    let bound = 0;
    this.work += to - from;
    for (let n = from; n < to; n++) {
      const k = i32(regions, n);
      if (k === one || k === two) continue;
      const noFit = element(this.#noFit, k);
      const ux = x - f64(qx, k);
      const uy = y - f64(qy, k);
      if (ux <= noFit.minX || ux >= noFit.maxX || uy <= noFit.minY || uy >= noFit.maxY) continue;
      const lower = noFit.depthLowerBound(ux, uy);
      if (lower < 0) continue;
      bound += f64(this.#weight, k) * counted(lower, this.#rooted);
      if (bound >= limit) return bound;
      near[found++] = k;
    }
    let sum = 0;
    for (let n = 0; n < found; n++) {
      const k = i32(near, n);
      const noFit = element(this.#noFit, k);
      this.work += noFit.count;
      const depth = noFit.depth(x - f64(qx, k), y - f64(qy, k));
      if (depth > TOUCHING) {
        sum += f64(this.#weight, k) * counted(depth, this.#rooted);
        if (sum >= limit) return sum;
      }
    }
    return sum;
  }

  #try(px: number, py: number, from: number, to: number, one: number, two: number): void {
    const x0 = this.#x0;
    const y0 = this.#y0;
    const x1 = this.#x1;
    const y1 = this.#y1;
    if (px < x0 - EDGE || px > x1 + EDGE || py < y0 - EDGE || py > y1 + EDGE) return;
    const x = px < x0 ? x0 : px > x1 ? x1 : px;
    const y = py < y0 ? y0 : py > y1 ? y1 : py;
    if (this.#leftmost) {
      if (x < this.#floor || x > this.#best || (x >= this.#best - EDGE && y >= this.#bestY)) return;
      if (this.#cost(x, y, TOUCHING, from, to, one, two) > 0) return;
      this.#best = x;
      this.#bestY = y;
    } else {
      const cost = this.#cost(x, y, this.#best, from, to, one, two);
      if (cost >= this.#best) return;
      this.#best = cost;
    }
    this.foundX = x;
    this.foundY = y;
  }

  #all(): void {
    const count = this.#count;
    const [x0, y0, x1, y1] = [this.#x0, this.#y0, this.#x1, this.#y1];
    this.#boundary.start();
    for (let k = 0; k < count; k++) {
      const noFit = element(this.#noFit, k);
      this.work += noFit.count;
      this.#boundary.add(noFit, f64(this.#qx, k), f64(this.#qy, k), k, x0, y0, x1, y1);
    }
    const edges = this.#boundary.close(count, x0, y0, x1, y1);
    this.#regionsIn = withCapacity(this.#regionsIn, count);
    for (let k = 0; k < count; k++) this.#regionsIn[k] = k;
    this.#box(x0, y0, x1, y1, 0, count, 0, edges, count, edges, 0);
  }

  /** Whether no place in a box can be better than the best. */
  #hopeless(x0: number, y0: number, x1: number, bound: number): boolean {
    if (!this.#leftmost) return bound >= this.#best;
    if (bound === Infinity) return true;
    if (x1 < this.#floor || x0 > this.#best) return true;
    return x0 >= this.#best - EDGE && y0 >= this.#bestY;
  }

  /** Looks through a box: the regions and edges that may reach into it are listed from .. to. */
  #box(
    x0: number,
    y0: number,
    x1: number,
    y1: number,
    regionsFrom: number,
    regionsTo: number,
    edgesFrom: number,
    edgesTo: number,
    regionsEnd: number,
    edgesEnd: number,
    halvings: number,
  ): void {
    if (edgesTo - edgesFrom <= FEW || halvings >= MAX_HALVINGS) {
      this.#corners(x0, y0, x1, y1, regionsFrom, regionsTo, edgesFrom, edgesTo);
      return;
    }
    const across = x1 - x0 > y1 - y0;
    const middle = across ? (x0 + x1) / 2 : (y0 + y1) / 2;
    const ax1 = across ? middle : x1;
    const ay1 = across ? y1 : middle;
    const bx0 = across ? middle : x0;
    const by0 = across ? y0 : middle;
    // what lies in the way in both halves comes first, since it shows which one is more promising
    const one = this.#regions(x0, y0, ax1, ay1, regionsFrom, regionsTo, regionsEnd);
    const oneEnd = this.#listed;
    const two = this.#regions(bx0, by0, x1, y1, regionsFrom, regionsTo, oneEnd);
    const twoEnd = this.#listed;
    const secondFirst = this.#leftmost ? false : one === two ? ((this.#turn >> halvings) & 1) === 1 : two < one;
    for (let half = 0; half < 2; half++) {
      if ((half === 1) !== secondFirst) {
        if (this.#hopeless(x0, y0, ax1, one)) continue;
        this.work += (edgesTo - edgesFrom) >> 1;
        const end = this.#boundary.reaching(x0, y0, ax1, ay1, edgesFrom, edgesTo, edgesEnd);
        if (end > edgesEnd) this.#box(x0, y0, ax1, ay1, regionsEnd, oneEnd, edgesEnd, end, twoEnd, end, halvings + 1);
      } else {
        if (this.#hopeless(bx0, by0, x1, two)) continue;
        this.work += (edgesTo - edgesFrom) >> 1;
        const end = this.#boundary.reaching(bx0, by0, x1, y1, edgesFrom, edgesTo, edgesEnd);
        if (end > edgesEnd) this.#box(bx0, by0, x1, y1, oneEnd, twoEnd, edgesEnd, end, twoEnd, end, halvings + 1);
      }
      if (!this.#leftmost && this.#best <= 0) return;
    }
  }

  /** End of the last list of regions. */
  #listed = 0;

  /**
   * Lists at `at` those of the regions that may reach into a box; returns a bound of the weighted depth in it, Infinity
   * when nothing better than the best can be there.
   */
  #regions(x0: number, y0: number, x1: number, y1: number, from: number, to: number, at: number): number {
    this.#regionsIn = withCapacity(this.#regionsIn, at + to - from);
    const regions = this.#regionsIn;
    const x = (x0 + x1) / 2;
    const y = (y0 + y1) / 2;
    const reach = 0.5 * Math.hypot(x1 - x0, y1 - y0) + EDGE;
    const halfX = (x1 - x0) / 2;
    const halfY = (y1 - y0) / 2;
    const free = this.#leftmost;
    const rooted = this.#rooted;
    const best = free ? Infinity : this.#best;
    const qx = this.#qx;
    const qy = this.#qy;
    const weight = this.#weight;
    const noFits = this.#noFit;
    let bound = 0;
    let end = at;
    this.work += to - from;
    for (let n = from; n < to; n++) {
      const k = i32(regions, n);
      const noFit = element(noFits, k);
      const ux = x - f64(qx, k);
      const uy = y - f64(qy, k);
      if (ux + halfX <= noFit.minX || ux - halfX >= noFit.maxX || uy + halfY <= noFit.minY || uy - halfY >= noFit.maxY)
        continue;
      if (ux > noFit.minX && ux < noFit.maxX && uy > noFit.minY && uy < noFit.maxY) {
        const signed = noFit.signedNear(ux, uy);
        if (signed < -noFit.reach - reach) continue;
        const lower = signed - noFit.reach - reach;
        if (lower > 0) {
          if (free && lower > TOUCHING) {
            bound = Infinity;
            break;
          }
          bound += f64(weight, k) * counted(lower, rooted);
          if (bound >= best) {
            bound = Infinity;
            break;
          }
        }
      }
      regions[end++] = k;
    }
    this.#listed = bound === Infinity ? at : end;
    return bound;
  }

  /** Tries the corners of boundary edges and their crossings in a box. */
  // eslint-disable-next-line complexity -- the innermost loop of the nest: the tests of crossing are no function
  #corners(
    x0: number,
    y0: number,
    x1: number,
    y1: number,
    regionsFrom: number,
    regionsTo: number,
    edgesFrom: number,
    edgesTo: number,
  ): void {
    const minX = x0 - EDGE;
    const minY = y0 - EDGE;
    const maxX = x1 + EDGE;
    const maxY = y1 + EDGE;
    const { ax: axs, ay: ays, ex: exs, ey: eys, of: ofs, listed: edges } = this.#boundary;
    for (let n = edgesFrom; n < edgesTo; n++) {
      const k = i32(edges, n);
      const ax = f64(axs, k);
      const ay = f64(ays, k);
      if (ax >= minX && ax <= maxX && ay >= minY && ay <= maxY)
        this.#try(ax, ay, regionsFrom, regionsTo, i32(ofs, k), -1);
    }
    for (let n = edgesFrom + 1; n < edgesTo; n++) {
      const k = i32(edges, n);
      const ax = f64(axs, k);
      const ay = f64(ays, k);
      const ex = f64(exs, k);
      const ey = f64(eys, k);
      const of = i32(ofs, k);
      this.work += n - edgesFrom;
      for (let m = edgesFrom; m < n; m++) {
        const l = i32(edges, m);
        if (ofs[l] === of) continue;
        const fx = f64(exs, l);
        const fy = f64(eys, l);
        const turn = ex * fy - ey * fx;
        if (turn === 0) continue;
        const ux = f64(axs, l) - ax;
        const uy = f64(ays, l) - ay;
        // shares along both edges, times turn: divided only for the few that cross
        const t = ux * fy - uy * fx;
        if (turn > 0 ? t < 0 || t > turn : t > 0 || t < turn) continue;
        const u = ux * ey - uy * ex;
        if (turn > 0 ? u < 0 || u > turn : u > 0 || u < turn) continue;
        const px = ax + (t / turn) * ex;
        const py = ay + (t / turn) * ey;
        if (px >= minX && px <= maxX && py >= minY && py <= maxY)
          this.#try(px, py, regionsFrom, regionsTo, of, i32(ofs, l));
      }
    }
  }
}
