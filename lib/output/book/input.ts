/** What the book is made from: everything that is known of a job, in mm. */
import type { Diagnostic } from '../../diagnostic/index.js';
import type { NestedSheet } from '../../nest/index.js';
import type { Point } from '../../geometry/index.js';
import type { Part } from '../../part/index.js';
import type { Cover, ThicknessRange } from '../../parts/index.js';
import type { AxisTable, Bought, Setting } from '../../stand/index.js';
import type { BurnPlot, ForecastPlot } from '../plots/index.js';
import type { ShopDrawing } from '../shop/index.js';
import type { ModelInput } from './model.js';

/** A sheet as nested, with the name of its cut files. */
export interface BookSheet extends NestedSheet {
  /** `birch12-sheet-1`: names the files in `sheets/`. */
  readonly id: string;
  readonly margin: number;
}

/** One line of the forecast. */
export interface ForecastRow {
  readonly label: string;
  readonly value: string;
  /** Standard error of a traced value, in the value's unit; empty where there is none. */
  readonly error: string;
  readonly note?: string;
}

export type BookForecast =
  /** Nothing stands in the focus. */
  | { readonly kind: 'none' }
  /** It is being worked on. */
  | { readonly kind: 'pending' }
  | {
      readonly kind: 'made';
      readonly rows: readonly ForecastRow[];
      /** Values with good, usual and poor care: a label and three values. */
      readonly care: readonly (readonly [label: string, good: string, usual: string, poor: string])[];
      readonly plots: readonly ForecastPlot[];
      /** What the values rest on, each with its source. */
      readonly assumptions: readonly string[];
    };

/** Where it burns round the dish. */
export interface BookBurn {
  readonly plots: readonly BurnPlot[];
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly notes: readonly string[];
}

/** The stand, with everything about it in the user's units. */
export interface BookStand {
  readonly rows: readonly { readonly label: string; readonly value: string; readonly note?: string }[];
  readonly axes: AxisTable;
  readonly settings: readonly Setting[];
  readonly bought: readonly Bought[];
  /** Outlines across the tilt axis at some heights of the sun, x towards the sun. */
  readonly pictures: readonly {
    readonly sunDeg: number;
    readonly outlines: readonly { readonly name: string; readonly outline: readonly Point[] }[];
    readonly mirror: readonly Point[];
    readonly focus: Point;
  }[];
  /** Whether it tilts about the centre of gravity instead of the focus: a lever and a link then keep the hanger level. */
  readonly balanced: boolean;
  /** Heights above the board, the dish looking up. */
  readonly axis: number;
  readonly ground: number;
  readonly axisAbove: number;
  /** Half the base, and the furthest that the dish reaches from the axis. */
  readonly base: number;
  readonly reach: number;
  readonly castors: { readonly x: number; readonly height: number };
  readonly dishKg: number;
  /** Dish with arms and beams, without counterweights. */
  readonly swingKg: number;
  readonly liftAlone: number;
  /** On each arm. */
  readonly weightKg: number;
  readonly ballastKg: number;
  readonly handN: number;
  /** Lowest sun, degrees. */
  readonly lowest: number;
  /** Width inside, between both straps, and height of the vessel's base above the middle of its pipes. */
  readonly holder: { readonly inside: number; readonly strapsApart: number; readonly base: number } | null;
}

/** A tool on one sheet. */
export interface CutTool {
  readonly number: number;
  /** `6 mm end mill, 2 flutes`, in the design's unit. */
  readonly name: string;
  /** rev/min. */
  readonly spindle: number;
  /** What it cuts on the sheet, mm. */
  readonly length: number;
}

/** A picture of a sheet as its machine leaves it, simulated by its files. */
export interface CutPicture {
  readonly sheet: string;
  readonly svg: string;
  /** What a router does on it; null for a laser. */
  readonly routed: {
    /** Without tool changes. */
    readonly cuttingSeconds: number;
    readonly tools: readonly CutTool[];
  } | null;
}

export interface BookInput extends ModelInput {
  /** What sheets may measure and still fit. */
  readonly thicknessRanges: readonly ThicknessRange[];
  readonly cover: Cover;
  /** Templates, gauges and jigs. */
  readonly aids: readonly Part[];
  /** Parts that have a full-size print because they are cut by hand. */
  readonly printed: readonly Part[];
  /** Of parts and aids. */
  readonly drawings: readonly ShopDrawing[];
  readonly keyValues: readonly { readonly label: string; readonly value: string; readonly note?: string }[];
  readonly problems: readonly Diagnostic[];
  /** Null while the nest is being worked on. */
  readonly sheets: readonly BookSheet[] | null;
  readonly forecast: BookForecast;
  /** Null where nothing is known of it. */
  readonly burn: BookBurn | null;
  readonly cutPictures: readonly CutPicture[];
  /** How long a laser is at each sheet that it cuts, in a sentence. */
  readonly laserTimes: readonly { readonly sheet: string; readonly text: string }[];
  /** Null where none is made. */
  readonly stand: BookStand | null;
}
