/**
 * No-fit regions: where the reference point of one shape, seen from that of another, makes the two overlap (Bennell
 * and Oliveira, The geometry of nesting problems, European Journal of Operational Research 184, 2008, from memory).
 */
import { f32, f64 } from '../geometry/typed-arrays.js';
import { cyclic, element, type Point, type Polygon } from '../geometry/index.js';
import { convolve } from './convolution.js';
import { ringArea, unionByFillRule } from './clipping.js';
import { growOuter } from './grow.js';
import type { NestShape } from './shape.js';

/**
 * The moving shape is taken smaller by this (mm) all round, so that exact fits (a tongue in its groove) leave a
 * passage in the region instead of vanishing; far below what any machine or measurement can resolve.
 */
const FIT = 1e-8;

/** Cells of the grid of bounds in each direction. */
const CELLS = 32;
/** For steps that nobody reads. */
const aside = new Float64Array(2);

/** Edges of the region's rings as flat arrays: from (x, y) by (dx, dy); the inside lies left. */
export class NoFit {
  readonly count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly dx: Float64Array;
  readonly dy: Float64Array;
  /** Where the edge ends: bit for bit where the next one starts, so that a level through a corner is crossed alike. */
  readonly endY: Float64Array;
  /** One over the square of the edge's length. */
  readonly per: Float64Array;
  minX = Infinity;
  minY = Infinity;
  maxX = -Infinity;
  maxY = -Infinity;

  constructor(private readonly rings: readonly Polygon[]) {
    const count = rings.reduce((sum, ring) => sum + ring.length, 0);
    this.count = count;
    this.x = new Float64Array(count);
    this.y = new Float64Array(count);
    this.dx = new Float64Array(count);
    this.dy = new Float64Array(count);
    this.endY = new Float64Array(count);
    this.per = new Float64Array(count);
    let k = 0;
    for (const ring of rings) {
      for (let i = 0; i < ring.length; i++, k++) {
        const p = cyclic(ring, i);
        const q = cyclic(ring, i + 1);
        this.x[k] = p.x;
        this.y[k] = p.y;
        this.dx[k] = q.x - p.x;
        this.dy[k] = q.y - p.y;
        this.endY[k] = q.y;
        this.per[k] = 1 / ((q.x - p.x) ** 2 + (q.y - p.y) ** 2);
        this.minX = Math.min(this.minX, p.x);
        this.minY = Math.min(this.minY, p.y);
        this.maxX = Math.max(this.maxX, p.x);
        this.maxY = Math.max(this.maxY, p.y);
      }
    }
    this.#perX = CELLS / (this.maxX - this.minX);
    this.#perY = CELLS / (this.maxY - this.minY);
    // a little more than half a cell's diagonal, for rounding
    this.reach = (0.5001 / CELLS) * Math.hypot(this.maxX - this.minX, this.maxY - this.minY);
  }

  /** How far a point within the region is from its boundary: the shortest move that separates the shapes. 0 outside. */
  depth(px: number, py: number): number {
    if (px <= this.minX || px >= this.maxX || py <= this.minY || py >= this.maxY) return 0;
    const signed = this.#signed(px, py);
    return signed > 0 ? signed : 0;
  }

  /**
   * Puts the shortest vector out of the region into `vector` and returns its length; 0 outside.
   * @param vector two numbers
   */
  separationVector(px: number, py: number, vector: Float64Array): number {
    if (px <= this.minX || px >= this.maxX || py <= this.minY || py >= this.maxY) return 0;
    if (this.depthLowerBound(px, py) < 0) return 0;
    const signed = this.#signed(px, py, vector);
    return signed > 0 ? signed : 0;
  }

  /** Distance to the boundary, negative outside; the step to the nearest place on it goes into `vector`. */
  #signed(px: number, py: number, vector: Float64Array = aside): number {
    const { count, x, y, dx, dy, endY, per } = this;
    let inside = false;
    let min = Infinity;
    for (let k = 0; k < count; k++) {
      const ay = f64(y, k);
      const ux = px - f64(x, k);
      const uy = py - ay;
      const ex = f64(dx, k);
      const ey = f64(dy, k);
      if (ay > py !== f64(endY, k) > py && ux < (uy * ex) / ey) inside = !inside;
      let t = (ux * ex + uy * ey) * f64(per, k);
      t = t < 0 ? 0 : t > 1 ? 1 : t;
      const rx = t * ex - ux;
      const ry = t * ey - uy;
      const square = rx * rx + ry * ry;
      if (square < min) {
        min = square;
        vector[0] = rx;
        vector[1] = ry;
      }
    }
    return inside ? Math.sqrt(min) : -Math.sqrt(min);
  }

  /**
   * A bound that is never above the depth, from a grid over the region's box; -1 where the depth is 0 for certain.
   * For places within the box only.
   */
  depthLowerBound(px: number, py: number): number {
    const signed = this.signedNear(px, py);
    const { reach } = this;
    return signed < -reach ? -1 : signed < reach ? 0 : signed - reach;
  }

  /** Distance to the boundary, negative outside, to within `reach`; for places within the box only. */
  signedNear(px: number, py: number): number {
    const i = ((px - this.minX) * this.#perX) | 0;
    const j = ((py - this.minY) * this.#perY) | 0;
    return this.#atMiddle(i < CELLS ? i : CELLS - 1, j < CELLS ? j : CELLS - 1);
  }

  /** By how much `signedNear` may be off. */
  readonly reach: number;
  #signedIn: Float32Array | undefined;
  readonly #perX: number;
  readonly #perY: number;

  /** Signed distance at the middle of a cell, found when first asked for: of most pairs few cells are. */
  #atMiddle(i: number, j: number): number {
    const signed = (this.#signedIn ??= new Float32Array(CELLS * CELLS).fill(NaN));
    const at = j * CELLS + i;
    const known = f32(signed, at);
    if (!Number.isNaN(known)) return known;
    const found = this.#signed(this.minX + (i + 0.5) / this.#perX, this.minY + (j + 0.5) / this.#perY);
    signed[at] = found;
    return f32(signed, at);
  }

  /** The region seen from the other shape. */
  opposite(): NoFit {
    return new NoFit(this.rings.map(negated));
  }
}

const negated = (ring: Polygon): Point[] => ring.map(({ x, y }) => ({ x: -x, y: -y }));

function box(rings: readonly Polygon[]): { width: number; height: number } {
  const xs = rings.flatMap((ring) => ring.map(({ x }) => x));
  const ys = rings.flatMap((ring) => ring.map(({ y }) => y));
  return { width: Math.max(...xs) - Math.min(...xs), height: Math.max(...ys) - Math.min(...ys) };
}

/** The shape less next to nothing, for exact fits; itself if nothing would be left. */
function slightlyShrunk(rings: readonly Polygon[]): Polygon[] {
  const less = rings.flatMap((ring) => growOuter(ring, -FIT)).filter((ring) => ringArea(ring) > 0);
  return less.length > 0 ? less : [...rings];
}

const shrunkShapes = new WeakMap<NestShape, Polygon[]>();

/** A shape as `slightlyShrunk` leaves it: once for all the shapes that it is laid against. */
function shrunkShape(shape: NestShape): Polygon[] {
  const shrunk = shrunkShapes.get(shape) ?? slightlyShrunk(shape.solid);
  shrunkShapes.set(shape, shrunk);
  return shrunk;
}

/**
 * Places at which the moving rings lie wholly within the opening (clockwise), as clockwise rings.
 * @param moving anticlockwise rings of one connected shape
 */
function innerFit(opening: Polygon, moving: readonly Polygon[]): Polygon[] {
  const space = box([opening]);
  const size = box(moving);
  if (size.width > space.width || size.height > space.height) return [];
  const reach = 4 * (space.width + space.height);
  const middle = element(opening, 0);
  const around: Polygon = [
    { x: middle.x - reach, y: middle.y - reach },
    { x: middle.x + reach, y: middle.y - reach },
    { x: middle.x + reach, y: middle.y + reach },
    { x: middle.x - reach, y: middle.y + reach },
  ];
  const curves = moving.flatMap((ring) => convolve(opening, negated(ring)));
  return unionByFillRule([around, ...curves], 'nonzero').filter((ring) => ringArea(ring) < 0);
}

/** The region in which `moving` overlaps `fixed`; both with their openings. */
function noFitOf(fixed: NestShape, moving: NestShape): NoFit {
  const less = shrunkShape(moving);
  const solid = fixed.solid.flatMap((a) => less.flatMap((b) => convolve(a, negated(b))));
  const rings = unionByFillRule(solid, 'nonzero');
  const within = fixed.openings.flatMap((opening) => innerFit(opening, less));
  const about = moving.openings.flatMap((opening) => innerFit(opening, shrunkShape(fixed)).map(negated));
  return new NoFit([...rings, ...within, ...about]);
}

/** The region in which `moving`, at its true size, is not wholly within any of the openings (clockwise rings). */
export function outsideFit(openings: readonly Polygon[], moving: NestShape): NoFit {
  const less = slightlyShrunk([moving.outline]);
  const within = openings.flatMap((opening) => innerFit(opening, less));
  const xs = openings.flatMap((ring) => ring.map(({ x }) => x));
  const ys = openings.flatMap((ring) => ring.map(({ y }) => y));
  const reach =
    2 * (Math.max(...xs) - Math.min(...xs) + Math.max(...ys) - Math.min(...ys) + moving.width + moving.height);
  const [x0, y0, x1, y1] = [
    Math.min(...xs) - reach,
    Math.min(...ys) - reach,
    Math.max(...xs) + reach,
    Math.max(...ys) + reach,
  ];
  const around = [
    { x: x0, y: y0 },
    { x: x1, y: y0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ];
  return new NoFit([around, ...within]);
}

/** Regions of pairs of shapes, made when first asked for. */
export class NoFits {
  readonly #rows: (NoFit | undefined)[][] = [];

  /** Regions for a moving shape, by the index of the fixed one; holes are filled by `of`. */
  row(moving: NestShape): (NoFit | undefined)[] {
    return (this.#rows[moving.index] ??= []);
  }

  /** The region in which `moving` overlaps `fixed`. */
  of(fixed: NestShape, moving: NestShape): NoFit {
    const row = this.row(moving);
    const known = row[fixed.index];
    if (known) return known;
    const made = noFitOf(fixed, moving);
    row[fixed.index] = made;
    if (fixed !== moving) this.row(fixed)[moving.index] = made.opposite();
    return made;
  }
}
