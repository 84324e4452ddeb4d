/** What the book is made from: everything that is known of a job, in mm. */
import type { Diagnostic } from '../../diagnostic/index.js';
import type { NestedSheet } from '../../nest/index.js';
import type { Part } from '../../part/index.js';
import type { ThicknessRange } from '../../parts/index.js';
import type { BurnPlot, ForecastPlot } from '../plots/index.js';
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

/** A picture of a sheet as a simulated router leaves it. */
export interface CutPicture {
  readonly sheet: string;
  readonly svg: string;
  /** Without tool changes. */
  readonly cuttingSeconds: number;
  /** Length that each tool cuts on the sheet, mm. */
  readonly toolWear: readonly { readonly tool: number; readonly length: number }[];
}

export interface BookInput extends ModelInput {
  /** What sheets may measure and still fit. */
  readonly thicknessRanges: readonly ThicknessRange[];
  /** Templates, gauges and jigs. */
  readonly aids: readonly Part[];
  readonly keyValues: readonly { readonly label: string; readonly value: string; readonly note?: string }[];
  readonly problems: readonly Diagnostic[];
  /** Null while the nest is being worked on. */
  readonly sheets: readonly BookSheet[] | null;
  readonly forecast: BookForecast;
  /** Null where nothing is known of it. */
  readonly burn: BookBurn | null;
  readonly cutPictures: readonly CutPicture[];
}
