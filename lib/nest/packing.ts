/** Pieces on sheets as flat arrays, which the search copies and compares quickly. */
import type { Orientation } from './shape.js';
import type { Space } from './space.js';
import type { NestPart } from './types.js';
import { f64, i32 } from '../geometry/typed-arrays.js';

/** One copy of a part. */
export interface Piece {
  readonly part: NestPart;
  readonly copy: number;
  /** Pieces of one kind may be exchanged. */
  readonly kind: number;
  /** At least one; shared by the copies of a part. Parts that may lie at any angle are given more as the search goes on. */
  readonly orientations: readonly Orientation[];
  /** The same in every orientation (mm²). */
  readonly area: number;
}

/** A sheet with the right limit of what may be used of it. */
export interface PackedSheet {
  space: Space;
  right: number;
}

/** Where every piece lies. */
export class Packing {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Index into the piece's orientations. */
  readonly orientationIndex: Int32Array;
  /** Index of the sheet, or -1 for a piece that is not laid. */
  readonly sheet: Int32Array;
  /** Right limit of each sheet: its width, or less while the last one is compressed. */
  readonly sheets: PackedSheet[] = [];

  constructor(readonly pieces: readonly Piece[]) {
    const n = pieces.length;
    this.x = new Float64Array(n);
    this.y = new Float64Array(n);
    this.orientationIndex = new Int32Array(n);
    this.sheet = new Int32Array(n).fill(-1);
  }

  /** Takes over another packing of the same pieces. */
  assign(other: Packing): this {
    this.x.set(other.x);
    this.y.set(other.y);
    this.orientationIndex.set(other.orientationIndex);
    this.sheet.set(other.sheet);
    this.sheets.length = 0;
    for (const { space, right } of other.sheets) this.sheets.push({ space, right });
    return this;
  }

  copy(): Packing {
    return new Packing(this.pieces).assign(this);
  }

  orientation(i: number): Orientation {
    const orientation = this.pieces[i]?.orientations[i32(this.orientationIndex, i)];
    // asked in hot loops: a check of its own here, where it meets one kind of list only
    if (orientation === undefined) throw new RangeError(`no piece ${i}, or no such orientation of it`);
    return orientation;
  }

  /** A sheet by its index. @throws RangeError for a piece's -1 */
  sheetAt(sheet: number): PackedSheet {
    const found = this.sheets[sheet];
    if (found === undefined) throw new RangeError(`no sheet ${sheet}`);
    return found;
  }

  /** The sheet that is compressed. @throws RangeError without sheets */
  lastSheet(): PackedSheet {
    return this.sheetAt(this.sheets.length - 1);
  }

  /** Area of all pieces (mm²). */
  area(): number {
    return this.pieces.reduce((sum, { area }) => sum + area, 0);
  }

  /** Length along x that the pieces of a sheet take up, margin included; 0 for an empty sheet. */
  used(sheet: number): number {
    let right = 0;
    for (let i = 0; i < this.pieces.length; i++) {
      if (this.sheet[i] === sheet) right = Math.max(right, f64(this.x, i) + this.orientation(i).shape.width);
    }
    return right === 0 ? 0 : right + this.sheetAt(sheet).space.margin;
  }
}
