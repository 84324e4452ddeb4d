/** What is to be cut. True, finished size throughout: kerf and tool belong to machining. */
import type { Contour, Path } from '../geometry/index.js';

/** Grain of a part relative to its own x axis: which way the face grain of the sheet must run. */
export type Grain = 'along' | 'across' | 'any';

/** What an edge is for, so that tabs, joints and labels keep off it. */
export type EdgeUse = 'optical' | 'seat';

/** A run of edges of a contour, from edge `from` up to and including edge `to` (edge i starts at vertex i). */
export interface EdgeRun {
  readonly contour: number;
  readonly from: number;
  readonly to: number;
  readonly use: EdgeUse;
}

/** Outlines and openings are closed rings (outline anticlockwise, opening clockwise); a scribe may be open. */
export type PartContour =
  | { readonly operation: 'outline'; readonly closed: true; readonly vertices: Contour }
  | { readonly operation: 'opening'; readonly closed: true; readonly vertices: Contour }
  | { readonly operation: 'scribe'; readonly closed: boolean; readonly vertices: Path };

export interface Drill {
  readonly x: number;
  readonly y: number;
  /** Finished diameter. */
  readonly diameter: number;
  /** Depth from the face, or right through. */
  readonly depth: number | 'through';
  /** Head diameter of a 90 degree countersink on the face that lies up. */
  readonly countersink?: number;
}

/** A corner of an opening or outline where a mating part must seat: it is relieved by a tool that would leave a radius. */
export interface SeatCorner {
  readonly contour: number;
  readonly vertex: number;
}

/** Text scribed on a part in the single-line font: lower left corner, capital height, direction. */
export interface Label {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly height: number;
  readonly angle: number;
}

/** A hole that no flat machine can drill: into an edge, marked by a scribe and drilled at the bench. */
export interface EdgeDrill {
  readonly x: number;
  readonly y: number;
  /** Direction of drilling in the plane of the part, radians. */
  readonly direction: number;
  readonly diameter: number;
  readonly length: number;
  /** Height of the hole's axis above the part's lower face. */
  readonly height: number;
}

export type PartKind =
  'rib' | 'hub' | 'cleat' | 'board' | 'splice' | 'panel' | 'reflector' | 'template' | 'gauge' | 'jig' | 'extra';

export interface Part {
  /** Stable, file-safe: `rib`, `cleat`, `hub`, `board`, `board-2`, `panel`. */
  readonly id: string;
  readonly kind: PartKind;
  readonly name: string;
  /** Key of the design's `materials`. */
  readonly material: string;
  readonly thickness: number;
  readonly quantity: number;
  readonly grain: Grain;
  /** The outline is contours[0]; every further ring is an opening or a scribe. */
  readonly contours: readonly PartContour[];
  readonly drills: readonly Drill[];
  readonly labels: readonly Label[];
  readonly edges: readonly EdgeRun[];
  readonly seatCorners: readonly SeatCorner[];
  readonly edgeDrills: readonly EdgeDrill[];
  /** Greatest distance between a fitted curve of this part and the true curve (mm). */
  readonly fitDeviation: number;
  /** What a person should know at the bench, in whole sentences. */
  readonly notes: readonly string[];
  /** The file that an outline of one's own was read from. */
  readonly file?: string;
}
