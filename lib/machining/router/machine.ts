/** The machine, as the design's `machine` section describes it. Lengths in mm, feeds in mm/min. */
import type { Point } from '../../geometry/index.js';

export interface RouterMachine {
  readonly area?: { readonly width: number; readonly height: number } | undefined;
  /** Unit of the files. */
  readonly programUnits: 'mm' | 'in';
  readonly decimals?: number | undefined;
  readonly arcs: 'arcs' | 'lines';
  readonly lineTolerance: number;
  /** Step of the line numbers; 0 for none. */
  readonly lineNumbers: number;
  /** Between the brackets. */
  readonly commentLength: number;
  readonly commentCharacters: 'ascii' | 'capitals';
  readonly toolChange: 'automatic' | 'by-hand' | 'none';
  readonly lengthOffsets: boolean;
  readonly changeAt: Point;
  readonly changeHeight: number;
  readonly pathMode: 'exact' | 'exact-stop' | 'continuous';
  readonly pathTolerance: number;
  readonly maxFeed: { readonly x: number; readonly y: number; readonly z: number };
  readonly travelSpeed: number;
  /** mm/s² */
  readonly acceleration: number;
  /** rev/min */
  readonly spindle: { readonly min: number; readonly max: number };
  /** s */
  readonly spinUp: number;
  readonly coolant: 'off' | 'mist' | 'flood';
  readonly parking?: Point | undefined;
  readonly end: 'M2' | 'M30';
}

/** Fastest feed of a cut that may turn into any direction of the sheet. */
export function levelFeed({ maxFeed }: RouterMachine): number {
  return Math.min(maxFeed.x, maxFeed.y);
}
