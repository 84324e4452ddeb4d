/** What the plan of a laser takes and gives. Lengths in mm, speeds in mm/min. */
import type { Cut } from '../moves.js';
import type { CutOperation } from '../types.js';

/** The laser in one material, as far as it is known. */
export interface LaserData {
  readonly cutSpeed?: number | undefined;
  readonly markSpeed?: number | undefined;
  readonly travelSpeed?: number | undefined;
  /** mm/s² */
  readonly acceleration?: number | undefined;
  readonly arcs: 'arcs' | 'lines';
  readonly lineTolerance: number;
  readonly pathMode: 'exact' | 'exact-stop' | 'continuous';
  readonly pathTolerance: number;
}

/** One line that the beam follows from where it is switched on to where it is switched off. */
export interface LaserCut extends Pick<Cut, 'moves'> {
  readonly operation: CutOperation['operation'];
  readonly part: string;
  readonly copy: number;
  /** Of a hole. */
  readonly diameter?: number | undefined;
  /** Whether it marks, and does not cut through. */
  readonly marks: boolean;
}

export interface LaserPlan {
  /** In the order of the drawings. */
  readonly cuts: readonly LaserCut[];
  /** Null where a speed is not known. */
  readonly seconds: number | null;
  /** Whether the time leaves out how the machine gathers speed. */
  readonly atLeast: boolean;
  /** Speeds that a time would need, by their keys. */
  readonly unknown: readonly ('cutSpeed' | 'markSpeed' | 'travelSpeed')[];
  readonly cutLength: number;
  readonly markLength: number;
  readonly travelLength: number;
  /** Pieces out of openings that are large enough to tip up under the head. */
  readonly slugs: number;
}
