/** A design's forecast beside the log of a test. */
import { type Diagnostic, diagnostic, hasError } from '../diagnostic/index.js';
import {
  compareLog,
  type Comparison,
  comparisonRows,
  inputProblems,
  readLog,
  type SpotWidth,
  type SummaryRow,
} from '../optics/index.js';
import { comparisonPlot, type ForecastPlot } from '../output/plots/index.js';
import { inputOf, type Lit } from './forecast.js';

export interface LogComparison {
  /** Null with an error among the problems. */
  readonly comparison: Comparison | null;
  readonly rows: readonly SummaryRow[];
  readonly plot: ForecastPlot | null;
  /** Of the design's optics and of the log; those of the log are placed in it. */
  readonly problems: readonly Diagnostic[];
}

/**
 * Compares.
 * @param text of the log
 * @param file its name, for messages
 * @param widths of the spot on a photo
 */
export function compareOf(lit: Lit, text: string, file: string, widths: readonly SpotWidth[] = []): LogComparison {
  const log = readLog(text, file);
  const input = inputOf(lit);
  const lacking =
    input.vessel === null || input.load === null
      ? [
          diagnostic(
            'no-load',
            ['load'],
            'the design says nothing of what is heated',
            'add `vessel` and `load` as in the test',
          ),
        ]
      : inputProblems(input);
  const problems = [...lacking, ...log.problems];
  if (hasError(problems)) return { comparison: null, rows: [], plot: null, problems };
  const comparison = compareLog(input, log, { seed: lit.design.nest.seed, widths });
  return {
    comparison,
    rows: comparisonRows(comparison, input.sun.slopeErrorMrad),
    plot: comparisonPlot(comparison),
    problems,
  };
}
