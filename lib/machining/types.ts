/**
 * What machining takes and gives. Lengths in mm, y up. It takes the parts and the layout by the few fields it needs,
 * so that it depends on no other module but geometry.
 */
import type { Contour, Path, Placement, Point, Vertex } from '../geometry/index.js';

/** How the sheets are cut. `web` is the least width of material left between two cuts. */
export type Process =
  | {
      readonly kind: 'router';
      readonly toolDiameter: number;
      readonly web: number;
      /** Whether corners in which a mating part must seat are relieved, as a round tool leaves a radius there. */
      readonly relief: 'dogbone' | 'none';
      /** Diameters of the drill bits at hand besides the router bit. */
      readonly drills?: readonly number[];
    }
  | { readonly kind: 'laser'; readonly kerf: number; readonly web: number }
  | { readonly kind: 'hand'; readonly web: number };

/** A ring or scribe of a part: outlines anticlockwise, openings clockwise, true size. */
export type MachinedContour =
  | { readonly operation: 'outline' | 'opening'; readonly closed: true; readonly vertices: Contour }
  | { readonly operation: 'scribe'; readonly closed: boolean; readonly vertices: Path };

export interface MachinedDrill {
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
  readonly depth: number | 'through';
  readonly countersink?: number;
}

/** The part as machining sees it. */
export interface MachinedPart {
  readonly id: string;
  readonly contours: readonly MachinedContour[];
  readonly drills: readonly MachinedDrill[];
  /** Corners where a mating part must seat: contour index, vertex index. */
  readonly seatCorners: readonly { readonly contour: number; readonly vertex: number }[];
}

/** A sheet of the layout as machining sees it. */
export interface MachinedSheet {
  readonly stock: string;
  readonly width: number;
  readonly height: number;
  readonly margin: number;
  readonly placed: readonly (Placement & { readonly part: string; readonly copy: number })[];
}

export interface CutOperation {
  readonly operation: 'outline' | 'opening' | 'drill' | 'countersink' | 'scribe';
  readonly part: string;
  /** 1-based number among the part's copies. */
  readonly copy: number;
  readonly closed: boolean;
  /**
   * On the sheet: the path of the tool's or beam's centre when compensated, the finished edge otherwise. A drill or
   * countersink has one vertex, the centre.
   */
  readonly vertices: readonly Vertex[];
  /** Finished diameter of a drill, head diameter of a countersink. */
  readonly diameter?: number;
  readonly depth: number | 'through';
  /** A hole larger than the tool is bored: the circle that the tool's centre runs, clockwise inside the hole. */
  readonly bore?: Contour;
}

/** Material that the tool leaves where the part should have none: an inside corner, a neck too narrow for the tool. */
export interface Unreached {
  readonly part: string;
  readonly copy: number;
  /** A place within it, on the sheet. */
  readonly x: number;
  readonly y: number;
  /** mm² */
  readonly area: number;
}

export interface CutSheet {
  /** `<stock>-<n>`, n counting the sheets of the stock from 1. */
  readonly id: string;
  readonly stock: string;
  readonly width: number;
  readonly height: number;
  readonly margin: number;
  readonly process: Process;
  readonly compensated: boolean;
  /** In cutting order. */
  readonly operations: readonly CutOperation[];
  readonly unreached: readonly Unreached[];
  /** Lettering in the single-line font, as open paths on the sheet; added by whoever knows the font. */
  readonly marks?: readonly { readonly part: string; readonly copy: number; readonly vertices: Path }[];
}

/** Why a part cannot be cut as asked. */
export interface CutProblem {
  readonly code: 'hole-smaller-than-tool' | 'opening-smaller-than-tool';
  readonly part: string;
  /** Centre of the hole, or a point within the opening, in the part's own axes. */
  readonly place: Point;
  /** Diameter of the hole, or of the largest round tool that goes into the opening. */
  readonly size: number;
  /** Diameter of the tool, or width of the kerf. */
  readonly tool: number;
  readonly message: string;
  /** What would do. */
  readonly remedy: string;
}
