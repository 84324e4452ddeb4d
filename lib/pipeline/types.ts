/** Data passed along the pipeline, from a design to files. */
import type { Assembly } from '../assembly/index.js';
import type { Design } from '../design/index.js';
import type { Diagnostic } from '../diagnostic/index.js';
import type { Dish } from '../dish/index.js';
import type { CutSheet, LaserPlan, RouterPlan } from '../machining/index.js';
import type { Layout, NestedSheet, NestOptions, NestPart, NestStock } from '../nest/index.js';
import type { BurnResult, Forecast } from '../optics/index.js';
import type { Part } from '../part/index.js';
import type { CleatStart, SplicePlace } from '../parts/index.js';
import type { Stand } from '../stand/index.js';
import type { NestRequest } from './nesting-request.js';

/** Texts and bytes by path. */
export type JobFiles = ReadonlyMap<string, string | Uint8Array>;

/** Everything that follows from the design without nesting. */
export interface Prepared {
  readonly design: Design;
  readonly dish: Dish;
  /** Parts that are nested on the stock. */
  readonly parts: readonly Part[];
  /** Templates, gauges and jigs: each a file of its own. */
  readonly aids: readonly Part[];
  readonly cleatStart: CleatStart;
  /** Where the plates lie that join the segments of the board. */
  readonly splices: readonly SplicePlace[];
  /** Every part and fastener in its position in the dish. */
  readonly assembly: Assembly;
  /** Null if the design wants none, or none can be made. */
  readonly stand: Stand | null;
  /** Nesting requests, one per process. */
  readonly requests: readonly NestRequest[];
  readonly problems: readonly Diagnostic[];
}

/** How the nest is run; the last is the share (0 to 1) of this request in it and all that are still to be nested. */
export type Nester = (
  parts: readonly NestPart[],
  stock: readonly NestStock[],
  options: NestOptions,
  share: number,
) => Layout | Promise<Layout>;

/** A sheet as nested and as cut. */
export interface JobSheet {
  /** Path of its files, without the ending. */
  readonly file: string;
  readonly nested: NestedSheet;
  readonly cut: CutSheet;
}

/** How one sheet is routed. */
export interface Route {
  readonly sheet: JobSheet;
  readonly plan: RouterPlan;
  /** Texts by path, in the order in which they are run. */
  readonly files: ReadonlyMap<string, string>;
}

/** How a laser follows one sheet. */
export interface LaserRoute {
  readonly sheet: JobSheet;
  readonly plan: LaserPlan;
  /** Keys of the design whose speeds are needed for its time; empty if all are known. */
  readonly unknown: readonly string[];
  /** Texts by path; none where no tool paths are asked for. */
  readonly files: ReadonlyMap<string, string>;
}

/** What was made from a design. With an error among the problems there are no files. */
export interface Job extends Prepared {
  readonly sheets: readonly JobSheet[];
  /** How the sheets for a router are cut. */
  readonly routes: readonly Route[];
  /** How the sheets for a laser are followed, those of templates, gauges and jigs too. */
  readonly lasered: readonly LaserRoute[];
  /** Templates, gauges and jigs, those of a material together. */
  readonly aidSheets: readonly JobSheet[];
  /** Of the bare focus if the design has no vessel; null with an error among the problems. */
  readonly forecast: Forecast | null;
  /** Where it burns; null without a forecast. */
  readonly burn: BurnResult | null;
  /** Of all stock, in the currency of the design's prices. */
  readonly cost: number;
  readonly files: JobFiles;
}

/** All parts of a design on sheets; with an error among the problems they do not all fit. */
export interface NestedJob {
  readonly sheets: readonly JobSheet[];
  /** Of all stock, in the currency of the design's prices. */
  readonly cost: number;
  readonly problems: readonly Diagnostic[];
}
