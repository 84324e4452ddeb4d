/** The dish as it stands: every part and every fastener at its place in space. */
import type { PlanFrame } from '../dish/index.js';
import type { Part } from '../part/index.js';
import type { Frame, Vec3 } from './frame.js';

/** A copy of a part at its place. */
export type AssembledPart = AssembledPlate | AssembledSheet;

/** Which copy of which part. */
export interface Copy {
  readonly part: Part;
  /** Copies of a part count from 1. */
  readonly copy: number;
  /** The rib that it is, or stands at; bays count as the rib before them. */
  readonly rib?: number;
}

/** A flat part. */
export interface AssembledPlate extends Copy {
  readonly form: 'plate';
  readonly frame: Frame;
}

/** A sheet bent along the radius: panel, mirror strip or batten. */
export interface AssembledSheet extends Copy {
  readonly form: 'sheet';
  /** Middle plane of its bay; of a batten, that of its rib. */
  readonly bay: PlanFrame;
  /** From the reflecting face down to its own upper face; of a batten, from its underside, mm. */
  readonly depth: number;
  /** Length along the panel at which its own x begins, mm. */
  readonly start: number;
}

/** What is bought to hold parts together, by its standard size. */
export interface FastenerItem {
  readonly kind: 'wood-screw' | 'bolt' | 'dowel' | 'pin' | 'staple';
  /** As it is sold: `4`, `no 8`, `M8`, `5/16 in`. */
  readonly size: string;
  /** Shank, mm. */
  readonly diameter: number;
  /** Under the head; of a countersunk screw the total length. Null when none that is sold will do. Mm. */
  readonly length: number | null;
  /** Countersunk head, mm. */
  readonly headDiameter?: number;
  /** Hole for the shank, and for the thread of a screw, mm. */
  readonly clearance: number;
  readonly pilot?: number;
}

/** What is joined; names the group in lists. */
export type JointKind =
  | 'cleat-to-board'
  | 'cleat-to-rib'
  | 'hub-dowel'
  | 'hub-bolt'
  | 'board-to-stand'
  | 'splice-to-board'
  | 'splice-bolt'
  | 'panel-to-rib'
  | 'panel-over-joint'
  | 'batten-to-rib'
  | 'stand-joint';

/** How a fastener goes through a part: with play, with its thread biting, or tight. */
export type Passage = 'clearance' | 'pilot' | 'tight';

export interface Fastener {
  readonly joint: JointKind;
  readonly item: FastenerItem;
  /** Where it enters the first part. */
  readonly entry: Vec3;
  /** The direction in which it is driven, a unit vector. */
  readonly direction: Vec3;
  /** From the entry to where its point would come out of the wood; how long it may be at most follows from it. */
  readonly wood: number;
  /** How much of that lies before the last part, where it is not entered through a face. */
  readonly before?: number;
  /** In the order in which it meets them. */
  readonly through: readonly { readonly part: AssembledPart; readonly passage: Passage }[];
}

export interface Assembly {
  readonly placed: readonly AssembledPart[];
  readonly fasteners: readonly Fastener[];
}
