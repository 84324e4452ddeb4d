/**
 * What machining takes and gives, parts apart. Lengths in mm, y up.
 */
import type { Axes, Contour, Path, Point, Vertex } from '../geometry/index.js';
import type { LaidSheet, Operation } from '../part/index.js';

/** What a coupon has shown of the machine in a material; left out where it was not measured. */
export interface Corrections {
  /** How much wider than its diameter a bored hole comes out. */
  readonly bore?: number;
  /** Axes that are not true: the files send the machine where it has to go for true parts. */
  readonly axes?: Axes;
}

/** How the sheets are cut. `web` is the least width of material left between two cuts. */
export type Process =
  | (Corrections & {
      readonly kind: 'router';
      /** Diameter by which the bit is sold and known. */
      readonly toolDiameter: number;
      /** What it takes away, where a coupon has shown it. */
      readonly width?: number;
      readonly web: number;
      /** Whether corners in which a mating part must seat are relieved, as a round tool leaves a radius there. */
      readonly relief: 'dogbone' | 'none';
      /** Diameters of the available drill bits, in addition to the router bit. */
      readonly drills?: readonly number[];
    })
  | (Corrections & {
      readonly kind: 'laser';
      readonly kerf: number;
      readonly web: number;
      /** Order of the operations of a part, `outline` last; the usual one when left out. */
      readonly order?: readonly Exclude<Operation, 'countersink' | 'pocket'>[];
    })
  | { readonly kind: 'hand'; readonly web: number };

/** A sheet to be cut. */
export interface MachinedSheet extends LaidSheet {
  /** Distance that parts keep from the edge of the stock. */
  readonly margin: number;
}

export interface CutOperation {
  readonly operation: Operation;
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
  readonly code: 'hole-smaller-than-tool' | 'opening-smaller-than-tool' | 'pocket-smaller-than-tool';
  readonly part: string;
  /** Centre of the hole, or a point within the opening or pocket, in the part's own axes. */
  readonly place: Point;
  /** Diameter of the hole, or of the largest round tool that goes into the opening or pocket. */
  readonly size: number;
  /** Diameter of the tool, or width of the kerf. */
  readonly tool: number;
  readonly message: string;
  /** How to fix it. */
  readonly remedy: string;
}
