/** Pieces on sheets as flat arrays, which the search copies and compares quickly. */
import type { Orientation } from './shape.js';
import type { Space } from './space.js';
import type { NestPart } from './types.js';

/** One copy of a part. */
export interface Piece {
  readonly part: NestPart;
  readonly copy: number;
  /** Pieces of one kind may be exchanged. */
  readonly kind: number;
  /** At least one; shared by the copies of a part. Parts that may lie at any angle are given more as the search goes on. */
  readonly orientations: readonly Orientation[];
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
  readonly sheets: { space: Space; right: number }[] = [];

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
    return this.pieces[i]!.orientations[this.orientationIndex[i]!]!;
  }

  /** Length along x that the pieces of a sheet take up, margin included; 0 for an empty sheet. */
  used(sheet: number): number {
    let most = 0;
    for (let i = 0; i < this.pieces.length; i++) {
      if (this.sheet[i] === sheet) most = Math.max(most, this.x[i]! + this.orientation(i).shape.width);
    }
    return most === 0 ? 0 : most + this.sheets[sheet]!.space.margin;
  }
}
