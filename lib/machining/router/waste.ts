/**
 * What stands of a sheet when every through cut is made, as cells of a millimetre that are numbered by the piece they
 * belong to: parts, the frame of the sheet, and offcuts between them. Only the choice of tabs rests on it; the proof
 * looks for itself.
 */
import type { Point } from '../../geometry/index.js';
import { pointAt, type Ring } from './ring.js';

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
  constructor(width: number, height: number, rings: readonly Ring[], radius: number) {
    this.#columns = Math.ceil(width / cell);
    this.#rows = Math.ceil(height / cell);
    this.#piece = new Int32Array(this.#columns * this.#rows).fill(-1);
    for (const ring of rings) this.#cut(ring, radius);
    this.#number();
  }

  #cut(ring: Ring, radius: number): void {
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

  #number(): void {
    const stack: number[] = [];
    for (let start = 0; start < this.#piece.length; start += 1) {
      if (this.#piece[start] !== -1) continue;
      const number = this.sizes.length;
      let size = 0;
      this.#piece[start] = number;
      stack.push(start);
      while (stack.length > 0) {
        const at = stack.pop()!;
        size += 1;
        const column = at % this.#columns;
        const row = (at - column) / this.#columns;
        if (column === 0 || row === 0 || column === this.#columns - 1 || row === this.#rows - 1) this.frame.add(number);
        const visit = (next: number): void => {
          if (this.#piece[next] !== -1) return;
          this.#piece[next] = number;
          stack.push(next);
        };
        if (column > 0) visit(at - 1);
        if (column < this.#columns - 1) visit(at + 1);
        if (row > 0) visit(at - this.#columns);
        if (row < this.#rows - 1) visit(at + this.#columns);
      }
      this.sizes.push(size * cell * cell);
    }
  }

  /** The piece at a place: 0 where it is cut away or off the sheet. */
  at({ x, y }: Point): number {
    const column = Math.floor(x / cell);
    const row = Math.floor(y / cell);
    if (column < 0 || row < 0 || column >= this.#columns || row >= this.#rows) return 0;
    return this.#piece[row * this.#columns + column]!;
  }

  /** A place within a piece, for a message. */
  placeOf(piece: number): Point {
    const at = this.#piece.indexOf(piece);
    return { x: (at % this.#columns) + 0.5, y: Math.floor(at / this.#columns) + 0.5 };
  }
}
