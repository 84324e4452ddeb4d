/**
 * The sheet as heights on a grid of a millimetre: what stands, how deep each pass bites, what hangs together. Finished
 * edges are not judged by it but by exact distances.
 */
import type { ProofPoint } from '../types.js';
import { levelLength, placeOn } from './level.js';
import type { Motion } from './types.js';

/** Side of a cell, mm. */
const cell = 1;
/** Longest step along a motion, mm, and as a share of the tool's radius: the scallops of longer ones would stand out. */
const maxStep = 0.5;
const stepShare = 0.25;
/** Greatest turn of a step, radians: around a small hole a step along the path would cut the corners off. */
const stepTurn = Math.PI / 9;
/** How far the scallops between two steps stand into the swept band, and rounding, mm. */
const scallop = 0.1;

export interface Bite {
  /** Deepest bite of the motion within the inner part of the tool, mm. */
  readonly depth: number;
  readonly place: ProofPoint;
}

export class HeightField {
  readonly columns: number;
  readonly rows: number;
  /** z of the material's top, row by row. */
  readonly heights: Float32Array;

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
    const turn = Math.abs(motion.turn?.sweep ?? 0);
    const step = Math.min(maxStep, stepShare * radius);
    const count = Math.max(1, Math.ceil(levelLength(motion) / step), Math.ceil(turn / stepTurn));
    let depth = 0;
    let place: ProofPoint = motion.from;
    const inner = Math.max(0, radius - rim - scallop);
    for (let i = 0; i <= count; i += 1) {
      const { x, y, z } = placeOn(motion, i / count);
      if (z >= 0) continue;
      const ahead = placeOn(motion, Math.min(1, (i + 0.5) / count));
      const behind = placeOn(motion, Math.max(0, (i - 0.5) / count));
      const length = Math.hypot(ahead.x - behind.x, ahead.y - behind.y);
      // straight down there is no flank, and the direction drops out
      const ux = length > 0 ? (ahead.x - behind.x) / length : 0;
      const uy = length > 0 ? (ahead.y - behind.y) / length : 0;
      const bite = this.#stamp({ x, y }, z, radius, { ux, uy, inner, solid: Math.max(0, radius - scallop) ** 2 });
      if (bite > depth) {
        depth = bite;
        place = { x, y };
      }
    }
    return { depth, place };
  }

  /** Lowers the cells under the tool to z; returns how far the one fell that lost most, of those between the flanks. */
  #stamp(
    { x, y }: ProofPoint,
    z: number,
    radius: number,
    flanks: { readonly ux: number; readonly uy: number; readonly inner: number; readonly solid: number },
  ): number {
    const { columns, rows, heights } = this;
    const { ux, uy, inner, solid } = flanks;
    const last = Math.min(rows - 1, Math.floor((y + radius) / cell - 0.5));
    let deepest = 0;
    for (let row = Math.max(0, Math.ceil((y - radius) / cell - 0.5)); row <= last; row += 1) {
      const dy = (row + 0.5) * cell - y;
      const half = Math.sqrt(Math.max(0, radius * radius - dy * dy));
      const to = Math.min(columns - 1, Math.floor((x + half) / cell - 0.5));
      for (let column = Math.max(0, Math.ceil((x - half) / cell - 0.5)); column <= to; column += 1) {
        const index = row * columns + column;
        const height = heights[index]!;
        if (height <= z) continue;
        if (height - z > deepest) {
          const dx = (column + 0.5) * cell - x;
          // what only the rim of the tool reaches may be a scallop that steps before have left
          if (dx * dx + dy * dy < solid && Math.abs(dx * uy - dy * ux) < inner) deepest = height - z;
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
