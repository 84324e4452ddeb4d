/**
 * The part and the sheet that it is placed on: one form for making, nesting, cutting, drawing and building. True, finished
 * size throughout, in the part's own axes, mm, y up: kerf and tool belong to machining.
 */
import type { Contour, Path, Placement } from '../geometry/index.js';

/** The two faces of a part: `front` is seen when its x axis runs to the right and its y axis up, `back` from behind. */
export type Face = 'front' | 'back';

/** Grain of a part relative to its own x axis: which way the face grain of the sheet must run. */
export type Grain = 'along' | 'across' | 'any';

export type PartKind =
  | 'rib'
  | 'hub'
  | 'cleat'
  | 'board'
  | 'splice'
  | 'panel'
  | 'batten'
  | 'reflector'
  | 'stand'
  | 'template'
  | 'gauge'
  | 'jig'
  | 'extra'
  | 'coupon';

/** What is done to a sheet: a mark is scribed, a hole drilled and countersunk, a pocket cleared, a ring cut. */
export type Operation = 'outline' | 'opening' | 'pocket' | 'drill' | 'countersink' | 'scribe';

/** A hole square to the faces. */
export interface Hole {
  readonly x: number;
  readonly y: number;
  /** Finished diameter. */
  readonly diameter: number;
  /** Depth from the face that it is drilled from, or right through. */
  readonly depth: number | 'through';
  /** Head diameter of a 90 degree countersink on the face that it is drilled from. */
  readonly countersink?: number;
  readonly from: Face;
}

/** A place that is cleared to a depth from a face, as a groove is. */
export interface Pocket {
  /** Clockwise, as the waste lies inside. */
  readonly ring: Contour;
  /** Depth below the face that it is cleared from. */
  readonly depth: number;
  readonly from: Face;
}

/** A hole in an edge, which no flat-bed machine can drill: marked by a line and drilled at the bench. */
export interface EdgeHole {
  readonly x: number;
  readonly y: number;
  /** Direction of drilling in the plane of the part, radians. */
  readonly direction: number;
  readonly diameter: number;
  readonly length: number;
  /** Height of the hole's axis above the part's back. */
  readonly height: number;
}

/** A line scribed on a face: a closed ring or an open path, in the part's own axes. */
export interface LineMark {
  readonly kind: 'line';
  readonly face: Face;
  readonly closed: boolean;
  readonly vertices: Path;
}

/**
 * Text scribed on a face in the single-line font: lower left corner, capital height (mm), direction (radians). Corner
 * and direction are those of someone who looks at that face: on the back, x runs to the left in the part's own axes.
 * `{n}` stands for the number of the copy.
 */
export interface TextMark {
  readonly kind: 'text';
  readonly face: Face;
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly height: number;
  readonly angle: number;
}

export type Mark = LineMark | TextMark;

/** What edges are for, so that tabs, joints and marks stay clear of them. */
export type EdgeRole = 'optical' | 'seat';

/**
 * A run of edges of a ring, from edge `from` up to and including edge `to` (edge i starts at vertex i). Ring 0 is the
 * outline, ring k the k-th opening.
 */
export interface EdgeRun {
  readonly ring: number;
  readonly from: number;
  readonly to: number;
  readonly role: EdgeRole;
}

/** A corner of a ring where a mating part must seat: it is relieved by a tool that would leave a radius. */
export interface SeatCorner {
  readonly ring: number;
  readonly vertex: number;
}

/** What is cut for a part, and what its edges require of the cut. */
export interface PartShape {
  /** Stable, file-safe: `rib`, `cleat`, `hub`, `board`, `board-2`, `panel`. */
  readonly id: string;
  /** Anticlockwise. */
  readonly outline: Contour;
  /** Clockwise. */
  readonly openings: readonly Contour[];
  readonly pockets: readonly Pocket[];
  readonly holes: readonly Hole[];
  readonly marks: readonly Mark[];
  readonly edges: readonly EdgeRun[];
  readonly seatCorners: readonly SeatCorner[];
  /** The face that is up on the sheet when it is cut; with its back up the part is mirrored. */
  readonly up: Face;
}

export interface Part extends PartShape {
  readonly kind: PartKind;
  readonly name: string;
  /** Key of the design's `materials`. */
  readonly material: string;
  readonly thickness: number;
  readonly quantity: number;
  readonly grain: Grain;
  readonly edgeHoles: readonly EdgeHole[];
  /** Greatest distance between a fitted curve of this part and the true curve (mm). */
  readonly fitDeviation: number;
  /** What to know at the bench, in full sentences. */
  readonly notes: readonly string[];
  /** The file that a user's own outline was read from. */
  readonly file?: string;
}

/** A copy of a part on a sheet: rotated, moved, and mirrored if its back is up. */
export interface PlacedPart extends Placement {
  readonly part: string;
  /** 1-based number among the part's copies. */
  readonly copy: number;
}

/** A piece of stock with the parts on it. */
export interface LaidSheet {
  /** Key of the stock. */
  readonly stock: string;
  /** Size of the stock's bounding box; a roll's width is the length used. */
  readonly width: number;
  readonly height: number;
  readonly placed: readonly PlacedPart[];
}

/** The largest rectangle left over from a sheet. */
export interface Offcut {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
