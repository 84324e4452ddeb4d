/** What the readers of drawings have in common: lines as drawn, and what cannot be taken. Millimetres, y up. */
import type { Diagnostic, DiagnosticCode } from '../../diagnostic/index.js';
import type { FittedPath, Path, Point } from '../../geometry/index.js';

/** Something in a drawing that cannot be taken as it is; the message says where, the remedy how to fix it. */
export class ExtraFault extends Error {
  constructor(
    readonly code: DiagnosticCode,
    message: string,
    readonly remedy = 'correct the drawing and export it again',
  ) {
    super(message);
  }
}

/** What a person has to know of a drawing, before it is known which key names the file. */
export type DrawingMessage = Omit<Diagnostic, 'place' | 'value'>;

/** A line fitted by arcs, without a name. */
export interface DrawnRun extends FittedPath {
  readonly closed: boolean;
}

/** A line as drawn: a ring (its last vertex joins the first) or an open run. */
export interface SourceRun {
  /** Names it in messages: `the LINE in line 40`. */
  readonly what: string;
  readonly closed: boolean;
  readonly vertices: Path;
  /** Greatest distance from the curve that was drawn, mm. */
  readonly deviation: number;
}

export interface SourceDrawing {
  readonly runs: readonly SourceRun[];
  readonly findings: readonly DrawingMessage[];
  /** A place as the drawing program shows it, in the drawing's own units and sense of y. */
  readonly shown: (point: Point) => string;
}

/** How a drawing is read. */
export interface ReadingOptions {
  /** Length of a drawing unit, mm, for files that state none; it wins over what the file states. */
  readonly unit: number | undefined;
  /** Greatest distance of fitted arcs from a curve, mm. */
  readonly tolerance: number;
}

/** Bounds beyond which a drawing is not taken; a person's own outlines stay far below them. */
export const limits = {
  /** Characters in a file. */
  text: 4_000_000,
  /** Characters of path data in a file. */
  pathData: 250_000,
  /** Lines, arcs and curves in a file. */
  entities: 20_000,
  /** Straight edges and arcs in a file, after curves are fitted. */
  edges: 10_000,
  /** Edges of one outline: the nest slows down with each. */
  ringEdges: 2_000,
  outlines: 300,
  /** Groups within groups. */
  depth: 64,
  /** Pairs of edges near one another that are looked at for crossings. */
  pairs: 100_000,
  /** Size of an outline, mm. */
  size: 100_000,
  /** A coordinate, mm: beyond it a double holds less than a nanometre or so less well than the checks need. */
  farthest: 1e8,
  /** Errors after which the rest of a drawing is not looked at. */
  errors: 100,
  /** Findings that are reported one by one. */
  reported: 10,
} as const;

const number = (value: number): string => String(Number(value.toFixed(3)));

/** `(12.5, 30)`, for places in drawing units. */
export function placeText(x: number, y: number): string {
  return `(${number(x)}, ${number(y)})`;
}

/** Text of a file in a message: quoted, cut to 40 characters. */
export function quoted(text: string): string {
  return JSON.stringify(text.length > 40 ? `${text.slice(0, 40)}…` : text);
}

/** Gathers the runs of a drawing, and refuses it when they are too many. */
export class RunList {
  readonly runs: SourceRun[] = [];
  readonly findings: DrawingMessage[] = [];
  private edges = 0;

  /** @throws ExtraFault for a place that is no number or too far, or when the drawing holds too much */
  add(run: SourceRun): void {
    for (const { x, y, bulge } of run.vertices)
      if (!(Math.abs(x) <= limits.farthest && Math.abs(y) <= limits.farthest && Number.isFinite(bulge)))
        throw new ExtraFault(
          'extra-number',
          `${run.what} has a coordinate that is not a number within 100 km of the origin`,
          'redraw it near the origin',
        );
    this.edges += run.vertices.length;
    if (this.edges > limits.edges || this.runs.length >= limits.entities)
      throw new ExtraFault(
        'extra-too-much',
        `the drawing has more than ${limits.edges} edges`,
        'simplify it or split it into several files',
      );
    this.runs.push(run);
  }

  /** So much is wrong that the rest does not matter. */
  get full(): boolean {
    return this.findings.length > limits.errors;
  }

  error(code: DiagnosticCode, message: string, remedy: string): void {
    this.findings.push({ code, severity: 'error', message, remedy });
  }

  warn(code: DiagnosticCode, message: string, remedy?: string): void {
    this.findings.push({ code, severity: 'warning', message, ...(remedy === undefined ? {} : { remedy }) });
  }
}
