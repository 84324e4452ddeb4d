/** The coupon: what it is cut with, its parts, and what is measured on them. Lengths in mm. */
import type { Axes, Point } from '../geometry/index.js';
import type { Part } from '../part/index.js';

/** What a coupon was cut with: the values that the readings correct. */
export interface CouponCut {
  /** Name of the material, from the design's `materials`. */
  readonly material: string;
  readonly cutBy: 'router' | 'laser';
  /** Nominal diameter of the bit; only for a router. */
  readonly toolDiameter?: number;
  /** Width of the cut that its files were made for. */
  readonly width: number;
  /** How much wider bored holes were assumed to come out. */
  readonly bore: number;
  /** Thickness of the sheet that its slots were made for. */
  readonly thickness: number;
  /** Drill bits whose holes are on it. */
  readonly drills: readonly number[];
  /** Errors of the axes that its files were corrected for. */
  readonly axes: Axes;
  /** Length of the check line of the design's prints. */
  readonly printLine: number;
}

/** What a reading tells about the machine. */
export type Measure =
  /** From edge to edge of a part, or across an opening, along an axis. */
  | { readonly kind: 'outside' | 'inside'; readonly axis: 'x' | 'y' }
  /** From corner to corner of the square: from lower left to upper right, or the other. */
  | { readonly kind: 'diagonal'; readonly rising: boolean }
  | { readonly kind: 'bored' | 'drilled' | 'depth' };

/** One reading of the callipers. */
export interface Reading {
  /** Its key in the file of readings. */
  readonly id: string;
  /** `id` of the part that it is taken on. */
  readonly part: string;
  readonly measure: Measure;
  /** What it should be. */
  readonly nominal: number;
  /** Ends of the dimension on the part, as it lies with its lettering up. */
  readonly from: Point;
  readonly to: Point;
  /** Where and with which jaws, for the person who measures. */
  readonly words: string;
}

/** The coupon of a material. */
export interface Coupon {
  readonly cut: CouponCut;
  readonly parts: readonly Part[];
  readonly readings: readonly Reading[];
  /** Plays lettered beside the slots; empty if no slot can be cut. */
  readonly fits: readonly number[];
}
