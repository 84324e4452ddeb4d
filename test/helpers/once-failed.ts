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

/** Of random jobs, by the name under which `jobSeeds` asks for them. */
export const failedJobs: Readonly<Record<string, readonly { readonly seed: number; readonly why: string }[]>> = {
  'whole jobs': [
    { seed: 3005, why: 'the finishing pass slanted out through a tab' },
    { seed: 1283, why: 'tabs from opposite sides of a cut ran into one' },
  ],
};
