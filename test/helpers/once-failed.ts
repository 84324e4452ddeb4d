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
  'router-random': [
    { seed: 30, why: 'a short lead-in cut across its bit over the whole depth' },
    { seed: 38, why: 'a tab stood so near to an inside corner that the tool was not down again' },
    { seed: 142, why: 'the rounding of a start read as a contour that is run twice' },
    { seed: 197, why: 'the innermost ring of an opening was a dot around which the tool ramped for ever' },
    { seed: 20261128597, why: 'a tab of half a millimetre left no cell of the grid standing' },
    { seed: 20261128833, why: 'between two high tabs the tool had no space to come down' },
    { seed: 20261200518, why: 'with three decimals both ends of an arc lay 2 µm differently far from its centre' },
    { seed: 20261200494, why: 'a wide tab on a round edge began where the cut had bent away from it' },
    { seed: 5103, why: 'a scallop between two steps of the simulation read as a pass over the whole depth' },
  ],
  'router-designs': [
    { seed: 4, why: 'steps around a small helix cut its corners off' },
    { seed: 51, why: 'parts that touch along an edge lay on each other' },
    { seed: 20261200264, why: 'a tab that roughing alone touched left its wall to one finishing pass' },
    { seed: 20261200515, why: 'the same, deeper by half than the tool takes' },
    { seed: 20261200200, why: 'an arc that a controller refuses was read as a straight cut through a hole' },
    { seed: 20261200686, why: 'a strip that roughing leaves a quarter of a millimetre of was taken for the frame' },
    { seed: 20261128522, why: 'a pass was chosen by a lead-in that the steps of the search did not meet again' },
    {
      seed: 700149,
      why: 'a slope so short that its ends are rounded alike was held for a level cut at too low a feed',
    },
  ],
  'laser-designs': [
    { seed: 700041, why: 'the size of a sheet was rounded otherwise in the head of its file than in the record' },
  ],
  'whole jobs': [
    { seed: 3005, why: 'the finishing pass slanted out through a tab' },
    { seed: 1283, why: 'tabs from opposite sides of a cut ran into one' },
  ],
};
