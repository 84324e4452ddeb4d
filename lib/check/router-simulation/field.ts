/**
 * The sheet as heights on a grid of a millimetre: what stands, how deep each pass bites, what hangs together. Finished
 * edges are not judged by it but by exact distances.
 */
import { lengthOf } from '../edge.js';
import type { ProofPoint } from '../types.js';
import { isUpright, placeOn } from './level.js';
import type { Motion, ProofPoint3 } from './types.js';

/** Side of a cell, mm. */
const cell = 1;
/** How far a chord that is swept in place of an arc may leave it, mm, and the greatest turn of one, radians. */
const flatness = 0.02;
const chordTurn = Math.PI / 9;
/** Greatest fall of a stretch that is swept at one height, mm. */
const maxFall = 0.05;
/** How far what an arc's chords and a ramp's stretches leave stands into the swept band, and rounding, mm. */
const scallop = 0.1;

export interface Bite {
  /** Deepest bite of the motion within the inner part of the tool, mm. */
  readonly depth: number;
  readonly place: ProofPoint;
}

/** In how many straight stretches of one height a motion is swept. */
function stretches(motion: Motion): number {
  const { from, to, turn } = motion;
  const falls = Math.ceil(Math.abs(to.z - from.z) / maxFall);
  // straight down, what lies above the end is in the way of none of it
  const level = isUpright(motion) ? 1 : falls;
  if (turn === null) return Math.max(1, level);
  const chord = Math.min(chordTurn, 2 * Math.acos(Math.max(0, 1 - flatness / turn.radius)));
  return Math.max(1, level, Math.ceil(Math.abs(turn.sweep) / chord));
}

/** A straight stretch of a tool's travel seen from above. */
interface Stretch {
  readonly a: ProofPoint;
  readonly b: ProofPoint;
  readonly length: number;
  /** Direction; 0 both for a tool that only goes down: there is no flank then. */
  readonly ux: number;
  readonly uy: number;
}

function stretchOf(a: ProofPoint, b: ProofPoint): Stretch {
  const length = lengthOf(b.x - a.x, b.y - a.y);
  return { a, b, length, ux: length > 0 ? (b.x - a.x) / length : 0, uy: length > 0 ? (b.y - a.y) / length : 0 };
}

/**
 * Where a line of the grid at `y` crosses the band that a disc sweeps along a stretch: in the discs at its two ends, or
 * at the edges along the travel, whichever reaches farther. Written to `band` as its two ends, which spares an object a
 * line; the first over the second where it does not cross.
 */
function crossBand({ a, b, length, ux, uy }: Stretch, radius: number, y: number, band: Float64Array): void {
  let from = Infinity;
  let to = -Infinity;
  const squared = radius * radius;
  const atStart = squared - (y - a.y) ** 2;
  if (atStart >= 0) {
    const half = Math.sqrt(atStart);
    from = a.x - half;
    to = a.x + half;
  }
  const atEnd = squared - (y - b.y) ** 2;
  if (atEnd >= 0) {
    const half = Math.sqrt(atEnd);
    from = Math.min(from, b.x - half);
    to = Math.max(to, b.x + half);
  }
  for (let side = -radius; uy !== 0 && side <= radius; side += 2 * radius) {
    const along = (y - a.y - side * ux) / uy;
    if (along < 0 || along > length) continue;
    const x = a.x - side * uy + along * ux;
    from = Math.min(from, x);
    to = Math.max(to, x);
  }
  band[0] = from;
  band[1] = to;
}

export class HeightField {
  readonly columns: number;
  readonly rows: number;
  /** z of the material's top, row by row. */
  readonly heights: Float32Array;
  readonly #band = new Float64Array(2);

  constructor(width: number, height: number) {
    this.columns = Math.max(1, Math.ceil(width / cell));
    this.rows = Math.max(1, Math.ceil(height / cell));
    this.heights = new Float32Array(this.columns * this.rows);
  }

  /** Height at a place; above everything off the sheet. */
  at({ x, y }: ProofPoint): number {
    const column = Math.floor(x / cell);
    const row = Math.floor(y / cell);
    if (column < 0 || row < 0 || column >= this.columns || row >= this.rows) return Infinity;
    return this.heights[row * this.columns + column]!;
  }

  /**
   * Removes what a motion sweeps, and returns its deepest bite. Cells of which the middle is met within `rim` of the
   * tool's flank, across its travel, do not count for the bite: there a finishing pass takes its allowance over the
   * whole depth.
   */
  remove(motion: Motion, radius: number, rim: number): Bite {
    const count = stretches(motion);
    let depth = 0;
    let place: ProofPoint = motion.from;
    const flanks = { inner: Math.max(0, radius - rim - scallop), solid: Math.max(0, radius - scallop) ** 2 };
    const take = (from: ProofPoint3, to: ProofPoint3): void => {
      const z = Math.max(from.z, to.z);
      if (z >= 0) return;
      const bite = this.#sweep(stretchOf(from, to), z, radius, flanks);
      if (bite <= depth) return;
      depth = bite;
      place = { x: to.x, y: to.y };
    };
    let from = placeOn(motion, 0);
    for (let i = 1; i <= count; i += 1) {
      const to = placeOn(motion, i / count);
      take(from, to);
      from = to;
    }
    // a stretch that falls is swept at its upper end, and the last has none after it
    if (motion.to.z < motion.from.z) take(motion.to, motion.to);
    return { depth, place };
  }

  /** Lowers the cells under a tool's travel to z; returns how far the one fell that lost most, of those between the flanks. */
  #sweep(
    stretch: Stretch,
    z: number,
    radius: number,
    { inner, solid }: { readonly inner: number; readonly solid: number },
  ): number {
    const { columns, rows, heights } = this;
    const { a, b, length, ux, uy } = stretch;
    const band = this.#band;
    const last = Math.min(rows - 1, Math.floor((Math.max(a.y, b.y) + radius) / cell - 0.5));
    let deepest = 0;
    for (let row = Math.max(0, Math.ceil((Math.min(a.y, b.y) - radius) / cell - 0.5)); row <= last; row += 1) {
      const y = (row + 0.5) * cell;
      crossBand(stretch, radius, y, band);
      const from = band[0]!;
      const to = band[1]!;
      const end = Math.min(columns - 1, Math.floor(to / cell - 0.5));
      for (let column = Math.max(0, Math.ceil(from / cell - 0.5)); column <= end; column += 1) {
        const index = row * columns + column;
        const height = heights[index]!;
        if (height <= z) continue;
        if (height - z > deepest) {
          const dx = (column + 0.5) * cell - a.x;
          const dy = y - a.y;
          const along = Math.min(length, Math.max(0, dx * ux + dy * uy));
          const off = (dx - along * ux) ** 2 + (dy - along * uy) ** 2;
          // what only the rim of the tool reaches may be left over by stretches before
          if (off < solid && Math.abs(dx * uy - dy * ux) < inner) deepest = height - z;
        }
        heights[index] = z;
      }
    }
    return deepest;
  }

  /**
   * What hangs together above `floor` (z): the number of the piece at a place, 0 where nothing stands, and which pieces
   * reach the edge of the sheet. Runs of cells in a row hang together with those that they touch in the row below.
   */
  pieces(floor: number): { readonly pieceAt: (place: ProofPoint) => number; readonly frame: ReadonlySet<number> } {
    const { columns, rows } = this;
    const runs = this.#runs(floor);
    const parent = Int32Array.from(runs.from, (_, i) => i);
    const rootOf = (run: number): number => {
      let root = run;
      while (parent[root]! !== root) {
        parent[root] = parent[parent[root]!]!;
        root = parent[root]!;
      }
      return root;
    };
    // of two neighbouring rows, run by run from the left
    for (let row = 1; row < rows; row += 1) {
      let below = runs.firstOfRow[row - 1]!;
      let run = runs.firstOfRow[row]!;
      while (below < runs.firstOfRow[row]! && run < runs.firstOfRow[row + 1]!) {
        const shift = row * columns;
        const [fromRun, toRun] = [runs.from[run]! - shift, runs.to[run]! - shift];
        const [fromBelow, toBelow] = [runs.from[below]! - shift + columns, runs.to[below]! - shift + columns];
        if (fromRun < toBelow && fromBelow < toRun) parent[rootOf(run)] = rootOf(below);
        if (toRun < toBelow) run += 1;
        else below += 1;
      }
    }
    const frame = new Set<number>();
    runs.from.forEach((from, run) => {
      const to = runs.to[run]!;
      const row = Math.floor(from / columns);
      if (row === 0 || row === rows - 1 || from === row * columns || to === (row + 1) * columns)
        frame.add(rootOf(run) + 1);
    });
    const pieceAt = ({ x, y }: ProofPoint): number => {
      const column = Math.floor(x / cell);
      const row = Math.floor(y / cell);
      if (column < 0 || row < 0 || column >= columns || row >= rows) return 0;
      const at = row * columns + column;
      // the last run of the row that starts no later
      let [low, high] = [runs.firstOfRow[row]!, runs.firstOfRow[row + 1]!];
      const first = low;
      while (low < high) {
        const middle = (low + high) >> 1;
        if (runs.from[middle]! <= at) low = middle + 1;
        else high = middle;
      }
      return low > first && runs.to[low - 1]! > at ? rootOf(low - 1) + 1 : 0;
    };
    return { pieceAt, frame };
  }

  /** Runs of neighbouring cells above `floor`, row by row: first cell, cell after the last, first run of each row. */
  #runs(floor: number): { readonly from: number[]; readonly to: number[]; readonly firstOfRow: number[] } {
    const { columns, rows, heights } = this;
    const from: number[] = [];
    const to: number[] = [];
    const firstOfRow: number[] = [];
    for (let row = 0; row < rows; row += 1) {
      firstOfRow.push(from.length);
      const end = (row + 1) * columns;
      let stood = false;
      for (let at = row * columns; at < end; at += 1) {
        const stands = heights[at]! > floor;
        if (stands === stood) continue;
        if (stands) from.push(at);
        else to.push(at);
        stood = stands;
      }
      if (stood) to.push(end);
    }
    firstOfRow.push(from.length);
    return { from, to, firstOfRow };
  }
}
