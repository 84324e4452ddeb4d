/** Input and result of the nest. Lengths in mm; polygons are exact, and the caller has flattened arcs outward. */
import type { Polygon } from '../geometry/index.js';
import type { Face, LaidSheet, Offcut } from '../part/index.js';

/** A shape to be placed `quantity` times. */
export interface NestPart {
  readonly id: string;
  readonly quantity: number;
  /** Anticlockwise outer ring that covers the part (arcs flattened to the outside). */
  readonly outline: Polygon;
  /** Rings of waste within the part that are large enough to hold other parts. Clockwise. */
  readonly openings: readonly Polygon[];
  /** Parts go only on stock of the same material group (material and thickness). */
  readonly group: string;
  /** Allowed rotations: a list of degrees, or any angle. Already narrowed by grain. */
  readonly rotations: readonly number[] | 'any';
  /** Faces that may be up; with its back up a part is mirrored. */
  readonly faces: readonly Face[];
}

/** Something that can be bought or is in stock. */
export interface NestStock {
  readonly id: string;
  readonly group: string;
  readonly shape:
    | { readonly kind: 'sheet'; readonly width: number; readonly height: number }
    | { readonly kind: 'offcut'; readonly outline: Polygon }
    /** Fixed `height` (the roll's width, across y), open length along x up to `maxLength`. */
    | { readonly kind: 'roll'; readonly height: number; readonly maxLength: number };
  /** How many there are; `Infinity` if more can always be bought. */
  readonly count: number;
  /** Cost of one sheet, or of one metre of roll. */
  readonly price: number;
  /** Distance that parts keep from the edge of the stock. */
  readonly margin: number;
  /** Places that no part may touch (clamps, knots), kept at `spacing`. */
  readonly keepOuts: readonly Polygon[];
}

export interface NestOptions {
  /** Minimum distance between two parts, exact. */
  readonly spacing: number;
  readonly seed: number;
  /**
   * Effort of improving the first valid answer; 0 stops there, 1 takes some seconds for a hundred parts. Same
   * seed and effort, same bytes.
   */
  readonly effort: number;
  /** Called now and then with the share of the work that is done; true ends the search with the best so far. */
  readonly stop?: (share: number) => boolean;
  /** Share of the time that has passed, 0 to 1, where a time limit and not the effort ends the work. */
  readonly elapsed?: () => number;
  /** Called with each better layout. */
  readonly onBetter?: (layout: Layout) => void;
}

export interface NestedSheet extends LaidSheet {
  /** Length along x that is taken up (greatest x of a part plus margin). */
  readonly usedLength: number;
  /** The largest rectangle that is left, if one is worth keeping. */
  readonly offcut: Offcut | null;
}

/** A part that fits no stock, with the smallest sheet (width by height, margin included) that would hold it. */
export interface Unplaced {
  readonly part: string;
  readonly copies: number;
  readonly reason: 'no-stock-for-group' | 'larger-than-stock' | 'stock-used-up';
  readonly minSheet: { readonly width: number; readonly height: number } | null;
}

export interface Layout {
  readonly sheets: readonly NestedSheet[];
  readonly unplaced: readonly Unplaced[];
  readonly cost: number;
}
