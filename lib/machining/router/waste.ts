/**
 * What stands of a sheet when every through cut is made, as cells of a millimetre that are numbered by the piece they
 * belong to: parts, the frame of the sheet, and offcuts between them. Only the choice of tabs rests on it; the proof
 * looks for itself.
 */
import { i32 } from '../../geometry/typed-arrays.js';
import { element, type Point, pointOnEdge } from '../../geometry/index.js';
import type { RingPath } from './ring.js';

/** Side of a cell, mm. */
const cell = 1;
/** How far an arc may stand off its chords, mm. */
const chordSag = 0.01;
/** By how much a chord of an arc turns at most, radians. */
const chordTurn = (radius: number): number => 2 * Math.acos(Math.max(0, 1 - chordSag / radius));

/** What is swept along a ring, `radius` mm to both sides. */
export interface Swath {
  readonly ring: RingPath;
  readonly radius: number;
}

/** First and past the last of the cells of a row that stand side by side, run by run. */
function runsOf(row: Uint8Array): (readonly [number, number])[] {
  const runs: (readonly [number, number])[] = [];
  for (let from = row.indexOf(0); from >= 0;) {
    const end = row.indexOf(1, from);
    const to = end < 0 ? row.length : end;
    runs.push([from, to]);
    from = end < 0 ? -1 : row.indexOf(0, to);
  }
  return runs;
}

/** Cells of a row that stand side by side, `to` left out. */
interface Run {
  readonly from: number;
  readonly to: number;
  readonly label: number;
}

export class Waste {
  readonly #columns: number;
  readonly #rows: number;
  readonly #piece: Int32Array;
  /** Cells of each piece; piece 0 is what is cut away. */
  readonly sizes: number[] = [0];
  /** Pieces that reach the edge of the sheet. */
  readonly frame = new Set<number>();

  /** @param swaths what the tool sweeps */
  constructor(width: number, height: number, swaths: readonly Swath[]) {
    this.#columns = Math.ceil(width / cell);
    this.#rows = Math.ceil(height / cell);
    this.#piece = new Int32Array(this.#columns * this.#rows);
    const swept = new Uint8Array(this.#columns * this.#rows);
    for (const { ring, radius } of swaths) this.#cut(swept, ring, radius);
    this.#number(swept);
  }

  #cut(swept: Uint8Array, ring: RingPath, radius: number): void {
    // half a cell wider, so that no thread of cells holds what the tool parts
    const reach = radius + cell / 2;
    for (const edge of ring.edges) {
      const chords = edge.kind === 'arc' ? Math.ceil(Math.abs(edge.sweep) / chordTurn(edge.radius)) : 1;
      let from = pointOnEdge(edge, 0);
      for (let i = 1; i <= chords; i += 1) {
        const to = pointOnEdge(edge, i / chords);
        this.#sweep(swept, from, to, reach);
        from = to;
      }
    }
  }

  /** Cuts away the cells whose middle a disc passes on a straight way: of each row one run. */
  #sweep(swept: Uint8Array, a: Point, b: Point, reach: number): void {
    const long = Math.hypot(b.x - a.x, b.y - a.y);
    const [nx, ny] = long > 0 ? [((a.y - b.y) / long) * reach, ((b.x - a.x) / long) * reach] : [0, 0];
    const sides = [
      [a.x + nx, a.y + ny, b.x + nx, b.y + ny],
      [a.x - nx, a.y - ny, b.x - nx, b.y - ny],
    ] as const;
    const bottom = Math.max(0, Math.ceil(Math.min(a.y, b.y) - reach - 0.5));
    const top = Math.min(this.#rows - 1, Math.floor(Math.max(a.y, b.y) + reach));
    for (let row = bottom; row <= top; row += 1) {
      const y = row + 0.5;
      let left = Infinity;
      let right = -Infinity;
      for (const end of [a, b]) {
        const square = reach * reach - (y - end.y) ** 2;
        if (square < 0) continue;
        const half = Math.sqrt(square);
        left = Math.min(left, end.x - half);
        right = Math.max(right, end.x + half);
      }
      for (const [ax, ay, bx, by] of sides) {
        if (ay === by || y < Math.min(ay, by) || y > Math.max(ay, by)) continue;
        const x = ax + ((bx - ax) * (y - ay)) / (by - ay);
        left = Math.min(left, x);
        right = Math.max(right, x);
      }
      const from = Math.max(0, Math.ceil(left - 0.5));
      const to = Math.min(this.#columns - 1, Math.floor(right - 0.5));
      if (to >= from) swept.fill(1, row * this.#columns + from, row * this.#columns + to + 1);
    }
  }

  /** Numbers the pieces: runs row by row, joined to those above them that they touch. */
  #number(swept: Uint8Array): void {
    const columns = this.#columns;
    const root: number[] = [0];
    const find = (of: number): number => {
      let at = of;
      while (root[at] !== at) at = element(root, at);
      return at;
    };
    const rows: Run[][] = [];
    for (let row = 0; row < this.#rows; row += 1) {
      const runs = runsOf(swept.subarray(row * columns, (row + 1) * columns)).map(([from, to]): Run => {
        const touched = (rows[row - 1] ?? []).filter((run) => run.from < to && run.to > from);
        const label = touched[0]?.label ?? root.length;
        if (label === root.length) root.push(label);
        for (const other of touched) {
          const [a, b] = [find(label), find(other.label)];
          if (a !== b) root[Math.max(a, b)] = Math.min(a, b);
        }
        return { from, to, label };
      });
      rows.push(runs);
    }
    const numbers: number[] = [0];
    for (let i = 1; i < root.length; i += 1) {
      const to = find(i);
      if (to === i) {
        numbers[i] = this.sizes.length;
        this.sizes.push(0);
      } else numbers[i] = element(numbers, to);
    }
    rows.forEach((runs, row) => {
      for (const { from, to, label } of runs) {
        const number = element(numbers, label);
        this.sizes[number]! += (to - from) * cell * cell;
        this.#piece.fill(number, row * columns + from, row * columns + to);
        if (row === 0 || row === this.#rows - 1 || from === 0 || to === columns) this.frame.add(number);
      }
    });
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
