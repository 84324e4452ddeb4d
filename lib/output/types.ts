/**
 * What the writers take. A drawing is made first (drawSheet, drawPart) and serialised second, by one writer a format.
 * Lengths in mm, y up.
 */
import type { Vertex } from '../geometry/index.js';
import type { CutSheet } from '../machining/index.js';
import type { Operation, Part, PartShape } from '../part/index.js';

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

/** What a drawing shows of a sheet. A laser follows every line, so its files hold no edge of the sheet. */
export type CutSheetToDraw = Pick<CutSheet, 'id' | 'width' | 'height' | 'process' | 'operations' | 'marks'>;

/** What a drawing shows of a part. */
export type PartToDraw = PartShape & Pick<Part, 'name'>;
