/**
 * Random cases that once failed, each for a fault that was mended: they run before any others. A failing test prints
 * the line to add.
 */

export interface FailedCase {
  readonly seed: number;
  /** Which of the seed's values it was, and how it was made smaller, as fast-check prints it. */
  readonly path: string;
  readonly why: string;
}

/** Of properties, by the full name of the test. */
export const failedCases: Readonly<Record<string, readonly FailedCase[]>> = {};

/** Of random jobs: seeds by test file. */
export const failedJobs: Readonly<Record<string, readonly number[]>> = {};
