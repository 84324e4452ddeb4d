/** Least squares with standard errors (any textbook of statistics). */
import { element } from '../../geometry/index.js';
import type { Estimate } from '../types.js';

/** y = factor·x: the factor, its error from how the points scatter about the line. */
export function throughOrigin(xs: readonly number[], ys: readonly number[]): Estimate {
  const xx = xs.reduce((sum, x) => sum + x * x, 0);
  const value = xs.reduce((sum, x, i) => sum + x * element(ys, i), 0) / xx;
  const squares = xs.reduce((sum, x, i) => sum + (element(ys, i) - value * x) ** 2, 0);
  return { value, standardError: xs.length > 1 ? Math.sqrt(squares / (xs.length - 1) / xx) : Infinity };
}

export interface StraightLine {
  readonly intercept: number;
  readonly slope: number;
  /** Share of the scatter that the line explains. */
  readonly r2: number;
  readonly at: (x: number) => Estimate;
}

/** y = intercept + slope·x through three points or more with different x. */
export function straightLine(xs: readonly number[], ys: readonly number[]): StraightLine {
  const n = xs.length;
  const meanX = xs.reduce((sum, x) => sum + x, 0) / n;
  const meanY = ys.reduce((sum, y) => sum + y, 0) / n;
  const xx = xs.reduce((sum, x) => sum + (x - meanX) ** 2, 0);
  const yy = ys.reduce((sum, y) => sum + (y - meanY) ** 2, 0);
  const slope = xs.reduce((sum, x, i) => sum + (x - meanX) * (element(ys, i) - meanY), 0) / xx;
  const intercept = meanY - slope * meanX;
  const rest = xs.reduce((sum, x, i) => sum + (element(ys, i) - intercept - slope * x) ** 2, 0);
  const variance = rest / (n - 2);
  return {
    intercept,
    slope,
    r2: yy === 0 ? 0 : 1 - rest / yy,
    at: (x) => ({
      value: intercept + slope * x,
      standardError: Math.sqrt(variance * (1 / n + (x - meanX) ** 2 / xx)),
    }),
  };
}
