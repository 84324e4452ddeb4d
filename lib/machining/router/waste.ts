/**
 * What stands of a sheet when every through cut is made, as cells of a millimetre that are numbered by the piece they
 * belong to: parts, the frame of the sheet, and offcuts between them. Only the choice of tabs rests on it; the proof
 * looks for itself.
 */
import { i32 } from '../../geometry/typed-arrays.js';
import { element } from '../../geometry/index.js';
import type { Point } from '../../geometry/index.js';
import { pointAt, type RingPath } from './ring.js';

/** Side of a cell, mm. */
const cell = 1;
/** Step along a path, mm. */
const step = 0.7;

export class Waste {
  readonly #columns: number;
  readonly #rows: number;
  readonly #piece: Int32Array;
  /** Cells of each piece; piece 0 is what is cut away. */
  readonly sizes: number[] = [0];
  /** Pieces that reach the edge of the sheet. */
  readonly frame = new Set<number>();

  /** @param rings paths of the tool's centre @param radius of the tool */
  constructor(width: number, height: number, rings: readonly RingPath[], radius: number) {
    this.#columns = Math.ceil(width / cell);
    this.#rows = Math.ceil(height / cell);
    this.#piece = new Int32Array(this.#columns * this.#rows).fill(-1);
    for (const ring of rings) this.#cut(ring, radius);
    this.#number();
  }

  #cut(ring: RingPath, radius: number): void {
    const count = Math.ceil(ring.length / step);
    // half a cell wider, so that no thread of cells holds what the tool parts
    const reach = radius + cell / 2;
    for (let i = 0; i < count; i += 1) {
      const { x, y } = pointAt(ring, (ring.length * i) / count);
      const top = Math.min(this.#rows - 1, Math.floor(y + reach));
      for (let row = Math.max(0, Math.ceil(y - reach - 0.5)); row <= top; row += 1) {
        const dy = row + 0.5 - y;
        const half = Math.sqrt(Math.max(0, reach * reach - dy * dy));
        const from = Math.max(0, Math.ceil(x - half - 0.5));
        const to = Math.min(this.#columns - 1, Math.floor(x + half - 0.5));
        if (to >= from) this.#piece.fill(0, row * this.#columns + from, row * this.#columns + to + 1);
      }
    }
  }

  /** Numbers the pieces: runs of cells row by row, joined to those above them that they touch. */
  #number(): void {
    const columns = this.#columns;
    const piece = this.#piece;
    const root: number[] = [0];
    const find = (of: number): number => {
      let at = of;
      while (root[at] !== at) at = element(root, at);
      return at;
    };
    for (let row = 0; row < this.#rows; row += 1) {
      const first = row * columns;
      let run = 0;
      for (let at = first; at < first + columns; at += 1) {
        if (piece[at] === 0) {
          run = 0;
          continue;
        }
        const above = row === 0 ? 0 : i32(piece, at - columns);
        if (run === 0) {
          run = above;
          if (run === 0) {
            run = root.length;
            root.push(run);
          }
        } else if (above !== 0 && above !== run) {
          const [a, b] = [find(run), find(above)];
          if (a !== b) root[Math.max(a, b)] = Math.min(a, b);
        }
        piece[at] = run;
      }
    }
    const numbers = new Int32Array(root.length);
    for (let i = 1; i < root.length; i += 1) {
      const to = find(i);
      if (to === i) {
        numbers[i] = this.sizes.length;
        this.sizes.push(0);
      } else numbers[i] = i32(numbers, to);
    }
    const counts = new Float64Array(this.sizes.length);
    for (let at = 0; at < piece.length; at += 1) {
      const number = i32(numbers, i32(piece, at));
      piece[at] = number;
      counts[number]! += cell * cell;
    }
    this.sizes.splice(0, this.sizes.length, ...counts);
    this.sizes[0] = 0;
    for (let row = 0; row < this.#rows; row += 1) {
      const first = row * columns;
      const ends = row === 0 || row === this.#rows - 1 ? columns : 1;
      for (let i = 0; i < ends; i += 1) this.frame.add(i32(piece, first + i)).add(i32(piece, first + columns - 1 - i));
    }
    this.frame.delete(0);
  }

  /** The piece at a place: 0 where it is cut away or off the sheet. */
  at({ x, y }: Point): number {
    const column = Math.floor(x / cell);
    const row = Math.floor(y / cell);
    if (column < 0 || row < 0 || column >= this.#columns || row >= this.#rows) return 0;
    return i32(this.#piece, row * this.#columns + column);
  }

  /** A place within a piece, for a message. */
  placeOf(piece: number): Point {
    const at = this.#piece.indexOf(piece);
    return { x: (at % this.#columns) + 0.5, y: Math.floor(at / this.#columns) + 0.5 };
  }
}
