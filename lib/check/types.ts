/** The result of the proof of a written folder. Lengths in mm, positions on the sheet with y up. */
import type { MessageId } from './messages/index.js';

/** Kinds of fault, by what a person would have to look at. */
export type FaultCode =
  | 'missing-file'
  | 'unreadable'
  | 'more'
  | 'units'
  | 'scale'
  | 'layer'
  | 'open-contour'
  | 'zero-length'
  | 'duplicate'
  | 'order'
  | 'missing-path'
  | 'stray-path'
  | 'cut-error'
  | 'drill'
  | 'mark'
  | 'colour'
  | 'disagreement'
  | 'quantity'
  | 'overlap'
  | 'spacing'
  | 'margin'
  | 'keep-out'
  | 'router'
  | 'laser'
  | 'record'
  | 'assembly'
  | 'changed'
  | 'stray-file';

export interface ProofPoint {
  readonly x: number;
  readonly y: number;
}

export interface Fault {
  readonly code: FaultCode;
  /** Which message of the catalogue it is. */
  readonly id: MessageId;
  /** A full sentence with the file and, if known, the part and the position. */
  readonly message: string;
  readonly file: string;
  readonly place?: ProofPoint;
}

/** The largest error of one kind on a sheet. */
export interface CutError extends ProofPoint {
  readonly mm: number;
  readonly part: string;
  readonly copy: number;
}

export interface SheetProof {
  /** Path of the sheet's files in the folder, without the ending. */
  readonly file: string;
  readonly parts: number;
  /** Material that is left outside the nominal part; null when nothing could be compared. */
  readonly worstOutward: CutError | null;
  /** Material of the nominal part that is cut away; null when nothing could be compared. */
  readonly worstInward: CutError | null;
  /** Minimum distance between two parts; null with fewer than two. */
  readonly minSpacing: number | null;
  /** Minimum distance of a part from the edge of the sheet; null without parts. */
  readonly minMargin: number | null;
  readonly faults: readonly Fault[];
}

export interface Proof {
  readonly sheets: readonly SheetProof[];
  /** Those of all sheets, and those of the folder as a whole. */
  readonly faults: readonly Fault[];
  readonly ok: boolean;
}
