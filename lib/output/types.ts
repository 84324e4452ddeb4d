/**
 * What the writers take. A drawing is made first (drawSheet, drawPart) and serialised second, by one writer a format.
 * Lengths in mm, y up. The shapes below name only the fields of other modules' values that a drawing needs.
 */
import type { Contour, Path, Vertex } from '../geometry/index.js';

export type Operation = 'outline' | 'opening' | 'drill' | 'countersink' | 'scribe';

/** One colour, as `#RRGGBB`, for each operation and for the edge of the sheet. */
export type Colours = Readonly<Record<Operation | 'sheet-edge', string>>;

export interface Layer {
  /** The operation; a drill with its diameter (`drill-4mm`); or `sheet-edge`, which is never cut. Group class in SVG. */
  readonly name: string;
  /** `#RRGGBB` */
  readonly colour: string;
}

export interface DrawnPath {
  readonly kind: 'path';
  readonly layer: string;
  /** What a person calls it: the part and its copy. On outlines only, once for a placed part. */
  readonly title?: string;
  readonly closed: boolean;
  /** No arc sweeps more than a half circle. */
  readonly vertices: readonly Vertex[];
}

export interface DrawnCircle {
  readonly kind: 'circle';
  readonly layer: string;
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
}

export type DrawnEntity = DrawnPath | DrawnCircle;

/** The document that every writer takes. Everything lies within 0..width, 0..height. */
export interface Drawing {
  readonly title: string;
  readonly width: number;
  readonly height: number;
  /** The layers in use: marks first, outlines last. */
  readonly layers: readonly Layer[];
  /** In cutting order. */
  readonly entities: readonly DrawnEntity[];
}

/** One writer interface for every format: a drawing in, the bytes of a file out. */
export type DrawingWriter = (drawing: Drawing) => string;

/** One operation on a sheet, in cutting order. */
export interface SheetOperation {
  readonly operation: Operation;
  readonly part: string;
  /** 1-based number among the part's copies. */
  readonly copy: number;
  readonly closed: boolean;
  /** One vertex, the centre, for a drill or countersink. */
  readonly vertices: readonly Vertex[];
  readonly diameter?: number;
  /** The path of the tool's or beam's centre in a hole that is not simply drilled. */
  readonly bore?: Contour;
}

/** A sheet with its cuts, as machining gives it. */
export interface CutSheetToDraw {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  /** A laser follows every line, so its files hold no edge of the sheet. */
  readonly process: { readonly kind: 'router' | 'laser' | 'hand' };
  readonly operations: readonly SheetOperation[];
  readonly marks?: readonly { readonly vertices: Path }[];
}

/** A part at its true, finished size. */
export interface PartToDraw {
  readonly name: string;
  readonly contours: readonly {
    readonly operation: 'outline' | 'opening' | 'scribe';
    readonly closed: boolean;
    readonly vertices: readonly Vertex[];
  }[];
  readonly drills: readonly {
    readonly x: number;
    readonly y: number;
    readonly diameter: number;
    readonly countersink?: number;
  }[];
  readonly labels: readonly {
    readonly text: string;
    readonly x: number;
    readonly y: number;
    readonly height: number;
    readonly angle: number;
  }[];
}
