/**
 * Overlaps removed by guided local search: pieces that overlap are moved, one at a time, to where their weighted
 * depths are minimum; pairs that go on overlapping gain weight, so that the search is driven out of every dead end
 * (Egeblad, Nielsen and Odgaard, European Journal of Operational Research 183, 2007; Umetani and others, International
 * Transactions in Operational Research 16, 2009; depth as the measure as in Imamichi, Yagiura and Nagamochi, Discrete
 * Optimization 6, 2009; all from memory).
 */
import { element, type Random } from '../geometry/index.js';
import type { Budget } from './budget.js';
import { startOn } from './first.js';
import type { NoFits } from './no-fit.js';
import type { Packing } from './packing.js';
import { relax } from './relax.js';
import { counted, Search, TOUCHING } from './search.js';
import type { NestShape } from './shape.js';
import { f64, i32 } from '../geometry/typed-arrays.js';

/** A pair's weight grows by this factor, and by up to as much again the deeper it is. */
const GROW = 1.2;
const GROW_DEEP = 0.8;
/** Weights of pairs that are apart fall back by this factor to what they were. */
const FADE = 0.95;
/**
 * Share of the runs in which the root of each depth counts in place of the depth, so that one deep overlap is better
 * than two shallow ones. Which of the two gets further depends on the shapes, so both have their turns; but not with
 * several sheets, where roots leave a piece stuck on the wrong one.
 */
const ROOTED = 0.5;

/** How long a search goes on. */
export interface Patience {
  /** Rounds without a better total before it starts again from the best. */
  readonly rounds: number;
  /** Fresh starts without a better total before it gives up. */
  readonly starts: number;
}

/** Rounds without a better total after which the best is pushed apart as a whole. */
const PUSH_AFTER = 8;

/** Share of the moves that look only near the piece, and how near, in its own widths and heights. */
const NEAR = 0.3;
const REACH = 0.6;

/** Sheets that a piece looks at in one move, its own included. */
const SHEETS_PER_MOVE = 3;
/** Ways of present that a piece tries in one move. */
const ORIENTATIONS_PER_MOVE = 4;

export class Separation {
  readonly #search = new Search();
  readonly #n: number;
  readonly #weight: Float64Array;
  /** Weights that a run begins with: the larger the two pieces, the more. */
  readonly #firstWeight: Float64Array;
  readonly #depth: Float64Array;
  /** Sum over a piece's obstacles, and its weight. */
  readonly #wallDepth: Float64Array;
  readonly #wallWeight: Float64Array;
  readonly #order: Int32Array;
  #rooted = false;

  constructor(
    private readonly packing: Packing,
    private readonly noFits: NoFits,
    private readonly random: Random,
  ) {
    const n = packing.pieces.length;
    this.#n = n;
    this.#weight = new Float64Array(n * n);
    this.#firstWeight = new Float64Array(n * n);
    this.#depth = new Float64Array(n * n);
    this.#wallDepth = new Float64Array(n);
    this.#wallWeight = new Float64Array(n);
    this.#order = new Int32Array(n);
    const sizes = packing.pieces.map(({ area }) => Math.sqrt(area));
    const mean = sizes.reduce((sum, size) => sum + size, 0) / n;
    sizes.forEach((one, i) => {
      sizes.forEach((other, j) => {
        this.#firstWeight[i * n + j] = Math.sqrt(one * other) / mean;
      });
    });
  }

  /** Sum of depths of all pairs (mm); 0 means that nothing overlaps. */
  total(): number {
    const n = this.#n;
    let sum = 0;
    for (let i = 0; i < n; i++) {
      sum += f64(this.#wallDepth, i);
      for (let j = 0; j < i; j++) sum += f64(this.#depth, i * n + j);
    }
    return sum;
  }

  /**
   * Moves pieces until nothing overlaps. Returns what is left: 0 when done, else the minimum total that was met, and the
   * packing is as it was then.
   */
  run(budget: Budget, patience: Patience): number {
    const { packing } = this;
    this.#rooted = packing.sheets.length === 1 && this.random.real() < ROOTED;
    this.#weight.set(this.#firstWeight);
    this.#wallWeight.fill(1);
    this.#clamp();
    this.#measure();
    // counted, so that whoever starts runs until the work is spent comes to an end
    budget.spend((this.#n * this.#n) / 2);
    let minimum = this.total();
    if (minimum === 0) return 0;
    const best = packing.copy();
    let pushed = Infinity;
    for (let start = 0; start < patience.starts; start++) {
      let atStart = minimum;
      for (let idle = 0; idle < patience.rounds;) {
        this.#round(budget);
        const total = this.total();
        if (total === 0) return 0;
        if (total < minimum) {
          // only a real gain keeps the search going
          if (total < 0.98 * minimum) idle = 0;
          minimum = total;
          best.assign(packing);
        } else idle++;
        if (budget.over()) {
          packing.assign(best);
          return minimum;
        }
        if (idle === PUSH_AFTER && pushed > minimum) {
          pushed = minimum;
          if (this.#pushFree(best, budget)) return 0;
        }
        this.#reweigh();
      }
      packing.assign(best);
      this.#measure();
      if (minimum < 0.98 * atStart) {
        atStart = minimum;
        start = -1;
      }
    }
    return minimum;
  }

  /** Whether pushing all pieces of the best at once frees them; takes the freed packing over. */
  #pushFree(best: Packing, budget: Budget): boolean {
    const trial = best.copy();
    const { free, work } = relax(trial, this.noFits);
    budget.spend(work);
    if (!free) return false;
    const kept = this.packing.copy();
    this.packing.assign(trial);
    this.#measure();
    if (this.total() === 0) return true;
    this.packing.assign(kept);
    this.#measure();
    return false;
  }

  /** Puts pieces back within the limits of their sheets. */
  #clamp(): void {
    const { packing } = this;
    for (let i = 0; i < this.#n; i++) {
      const { space, right } = packing.sheetAt(i32(packing.sheet, i));
      const { shape } = packing.orientation(i);
      const { margin } = space;
      packing.x[i] = Math.max(margin, Math.min(f64(packing.x, i), right - margin - shape.width));
      packing.y[i] = Math.max(margin, Math.min(f64(packing.y, i), space.height - margin - shape.height));
    }
  }

  #measure(): void {
    for (let i = 0; i < this.#n; i++) this.#measureOne(i, i);
  }

  /** Depths of a piece against all before `end`, both ways, and against what is fixed. */
  #measureOne(i: number, end: number): void {
    const { packing, noFits } = this;
    const n = this.#n;
    const depth = this.#depth;
    const { shape } = packing.orientation(i);
    const x = f64(packing.x, i);
    const y = f64(packing.y, i);
    const sheet = i32(packing.sheet, i);
    for (let j = 0; j < end; j++) {
      let d = 0;
      if (j !== i && packing.sheet[j] === sheet) {
        d = noFits.of(packing.orientation(j).shape, shape).depth(x - f64(packing.x, j), y - f64(packing.y, j));
        if (d <= TOUCHING) d = 0;
      }
      depth[i * n + j] = d;
      depth[j * n + i] = d;
    }
    let wall = 0;
    const { space, right } = packing.sheetAt(sheet);
    for (const obstacle of space.obstacles) {
      const d = obstacle.noFit(shape).depth(x - obstacle.x, y - obstacle.y);
      if (d > TOUCHING) wall += d;
    }
    // limits are kept below and on the left; a piece that is larger than its sheet sticks out on the other sides
    const beyond = x + shape.width + space.margin - right;
    if (beyond > TOUCHING) wall += beyond;
    const above = y + shape.height + space.margin - space.height;
    if (above > TOUCHING) wall += above;
    this.#wallDepth[i] = wall;
  }

  #round(budget: Budget): void {
    const n = this.#n;
    const order = this.#order;
    let count = 0;
    for (let i = 0; i < n; i++) {
      let overlaps = f64(this.#wallDepth, i) > 0;
      for (let j = 0; j < n && !overlaps; j++) overlaps = f64(this.#depth, i * n + j) > 0;
      if (overlaps) order[count++] = i;
    }
    for (let k = count - 1; k > 0; k--) {
      const other = this.random.integer(k + 1);
      const kept = i32(order, k);
      order[k] = i32(order, other);
      order[other] = kept;
    }
    for (let k = 0; k < count; k++) {
      if (k % 4 === 3 && budget.over()) return;
      this.#move(i32(order, k));
      budget.spend(this.#search.work);
      this.#search.work = 0;
    }
  }

  /** Weighted depth of a piece where it lies, or weighted roots. */
  #cost(i: number): number {
    const n = this.#n;
    const rooted = this.#rooted;
    let sum = f64(this.#wallWeight, i) * counted(f64(this.#wallDepth, i), rooted);
    for (let j = 0; j < n; j++) {
      const depth = f64(this.#depth, i * n + j);
      if (depth > 0) sum += f64(this.#weight, i * n + j) * counted(depth, rooted);
    }
    return sum;
  }

  #move(i: number): void {
    const { packing, random } = this;
    let best = this.#cost(i);
    if (best === 0) return;
    const { orientations } = element(packing.pieces, i);
    const home = i32(packing.sheet, i);
    const sheets = packing.sheets.length;
    let sheet = home;
    let orientation = i32(packing.orientationIndex, i);
    let x = f64(packing.x, i);
    let y = f64(packing.y, i);
    const looks = Math.min(sheets, SHEETS_PER_MOVE);
    const away = sheets > 1 ? random.integer(sheets) : 0;
    const turns = Math.min(orientations.length, ORIENTATIONS_PER_MOVE);
    const turned = orientations.length > 1 ? random.integer(orientations.length) : 0;
    const { shape: present } = element(orientations, orientation);
    const near = random.real() < NEAR;
    const midX = x + present.width / 2;
    const midY = y + present.height / 2;
    for (let s = 0; s < looks && best > 0; s++) {
      // its own sheet first, then others in turn
      const on = s === 0 ? home : (away + s) % sheets;
      if (s > 0 && on === home) continue;
      for (let t = 0; t < turns && best > 0; t++) {
        const at =
          orientations.length <= ORIENTATIONS_PER_MOVE || t > 0
            ? (turned + t) % orientations.length
            : i32(packing.orientationIndex, i);
        const { shape } = element(orientations, at);
        if (!this.#look(i, shape, on, near && s === 0, midX, midY)) continue;
        const found = this.#search.minCost(best, random.integer(1 << 15), this.#rooted);
        if (found < best) {
          best = found;
          sheet = on;
          orientation = at;
          x = this.#search.foundX;
          y = this.#search.foundY;
        }
      }
    }
    packing.sheet[i] = sheet;
    packing.orientationIndex[i] = orientation;
    packing.x[i] = x;
    packing.y[i] = y;
    this.#measureOne(i, this.#n);
  }

  /** Sets the search up for a piece on a sheet. */
  #look(i: number, shape: NestShape, sheet: number, near: boolean, midX: number, midY: number): boolean {
    const { packing, noFits } = this;
    const search = this.#search;
    const n = this.#n;
    if (!startOn(search, packing, sheet, shape)) return false;
    if (near)
      search.confine(midX - shape.width / 2, midY - shape.height / 2, REACH * shape.width, REACH * shape.height);
    const row = noFits.row(shape);
    for (let j = 0; j < n; j++) {
      if (packing.sheet[j] !== sheet || j === i) continue;
      const other = packing.orientation(j).shape;
      search.add(
        row[other.index] ?? noFits.of(other, shape),
        f64(packing.x, j),
        f64(packing.y, j),
        f64(this.#weight, i * n + j),
      );
    }
    for (const obstacle of packing.sheetAt(sheet).space.obstacles)
      search.add(obstacle.noFit(shape), obstacle.x, obstacle.y, f64(this.#wallWeight, i));
    return true;
  }

  #reweigh(): void {
    const n = this.#n;
    let deepest = 0;
    for (let i = 0; i < n; i++) {
      deepest = Math.max(deepest, f64(this.#wallDepth, i));
      for (let j = 0; j < i; j++) deepest = Math.max(deepest, f64(this.#depth, i * n + j));
    }
    const next = (weight: number, depth: number, first: number): number =>
      depth > 0 ? weight * (GROW + (GROW_DEEP * depth) / deepest) : Math.max(first, weight * FADE);
    for (let i = 0; i < n; i++) {
      this.#wallWeight[i] = next(f64(this.#wallWeight, i), f64(this.#wallDepth, i), 1);
      for (let j = 0; j < i; j++) {
        const at = i * n + j;
        const weight = next(f64(this.#weight, at), f64(this.#depth, at), f64(this.#firstWeight, at));
        this.#weight[at] = weight;
        this.#weight[j * n + i] = weight;
      }
    }
  }
}
