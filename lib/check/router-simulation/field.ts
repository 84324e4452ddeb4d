/**
 * The sheet as heights on a grid of a millimetre: what stands, how deep each pass bites, what hangs together. Finished
 * edges are not judged by it but by exact distances.
 */
import type { ProofPoint } from '../types.js';
import { levelLength, placeOn } from './level.js';
import type { Motion } from './types.js';

/** Side of a cell, mm, and step along a motion. */
export const cell = 1;
const step = 0.5;
/** Half the diagonal of a cell. */
const halfDiagonal = 0.7072 * cell;

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
   * Removes what a motion sweeps, and tells its deepest bite. Cells that the tool meets within `rim` of its flank do
   * not count for the bite: there a finishing pass takes its allowance over the whole depth.
   */
  remove(motion: Motion, radius: number, rim: number): Bite {
    const count = Math.max(1, Math.ceil(levelLength(motion) / step));
    let depth = 0;
    let place: ProofPoint = motion.from;
    const inner = Math.max(0, radius - rim - halfDiagonal);
    for (let i = 0; i <= count; i += 1) {
      const { x, y, z } = placeOn(motion, i / count);
      if (z >= 0) continue;
      const ahead = placeOn(motion, Math.min(1, (i + 0.5) / count));
      const behind = placeOn(motion, Math.max(0, (i - 0.5) / count));
      const way = Math.hypot(ahead.x - behind.x, ahead.y - behind.y);
      // straight down there is no flank, and the direction drops out
      const ux = way > 0 ? (ahead.x - behind.x) / way : 0;
      const uy = way > 0 ? (ahead.y - behind.y) / way : 0;
      const bite = this.#stamp({ x, y }, z, radius, { ux, uy, inner });
      if (bite > depth) {
        depth = bite;
        place = { x, y };
      }
    }
    return { depth, place };
  }

  /** Lowers the cells under the tool to z; tells how far the one fell that lost most, of those between the flanks. */
  #stamp(
    { x, y }: ProofPoint,
    z: number,
    radius: number,
    flanks: { readonly ux: number; readonly uy: number; readonly inner: number },
  ): number {
    const { columns, rows, heights } = this;
    const { ux, uy, inner } = flanks;
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
        const aside = Math.abs(((column + 0.5) * cell - x) * uy - dy * ux);
        if (height - z > deepest && aside < inner) deepest = height - z;
        heights[index] = z;
      }
    }
    return deepest;
  }

  /**
   * Numbers the pieces that stand above `floor` (z), 0 where nothing stands, and tells which of them reach the edge
   * of the sheet.
   */
  pieces(floor: number): { readonly number: Int32Array; readonly frame: ReadonlySet<number> } {
    const { columns, rows, heights } = this;
    const number = new Int32Array(heights.length);
    const frame = new Set<number>();
    const stack: number[] = [];
    let count = 0;
    // whole rows of cells at a time, then the rows above and below
    const fill = (seed: number): void => {
      const row = Math.floor(seed / columns);
      let left = seed;
      let right = seed;
      const first = row * columns;
      while (left > first && heights[left - 1]! > floor && number[left - 1] === 0) left -= 1;
      while (right < first + columns - 1 && heights[right + 1]! > floor && number[right + 1] === 0) right += 1;
      number.fill(count, left, right + 1);
      if (row === 0 || row === rows - 1 || left === first || right === first + columns - 1) frame.add(count);
      for (const shift of [-columns, columns]) {
        if (left + shift < 0 || right + shift >= heights.length) continue;
        let open = false;
        for (let at = left + shift; at <= right + shift; at += 1) {
          const stands = heights[at]! > floor && number[at] === 0;
          if (stands && !open) stack.push(at);
          open = stands;
        }
      }
    };
    for (let start = 0; start < heights.length; start += 1) {
      if (!(heights[start]! > floor) || number[start] !== 0) continue;
      count += 1;
      stack.push(start);
      while (stack.length > 0) {
        const seed = stack.pop()!;
        if (number[seed] === 0) fill(seed);
      }
    }
    return { number, frame };
  }
}
