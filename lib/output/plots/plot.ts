/** A drawing and its numbers. */
export interface ForecastPlot {
  /** File-safe: `intercept`. */
  readonly name: string;
  readonly title: string;
  /** What it shows, in words, for those who do not see it. */
  readonly description: string;
  readonly svg: string;
  readonly csv: string;
}
