/** The mirror sheet turned over the panel's rim: round the edge and back under. */

/**
 * Length of flat sheet that a right-angled bend takes up: 0.64·T + 1.57·R for soft steel and aluminium of thickness T
 * on an inside radius R (Machinery's Handbook, bending sheet metal, from memory). Lengths in mm.
 */
export function bendAllowance(thickness: number, insideRadius: number): number {
  return 0.64 * thickness + 1.57 * insideRadius;
}

/** A hem as flat sheet, lengths from the rim of the panel's mirror side on, mm. */
export interface Hem {
  /** All that the strip is longer for the hem. */
  readonly past: number;
  /** Middles of the two bends: over the rim's upper corner and its lower one. */
  readonly folds: readonly [number, number];
}

/**
 * The flat length of a hem with two right-angled bends of the sheet's own thickness as inside radius.
 * @param width how far the hem reaches back under the panel
 * @param over thickness that it goes round: panel and glue
 * @param thickness of the sheet
 */
export function flatHem(width: number, over: number, thickness: number): Hem {
  // a radius larger than half of what it goes round would not leave two bends
  const radius = Math.min(thickness, over / 2);
  const bend = bendAllowance(thickness, radius);
  const upright = over - 2 * radius;
  // straight pieces end at the bends: a radius before each corner
  const past = -radius + bend + upright + bend + (width - radius);
  return { past, folds: [-radius + bend / 2, -radius + bend + upright + bend / 2] };
}

/** From a hem to the side of a rib, mm: common practice, no source. */
const besideRib = 1;

/** How much narrower than its panel a hem is on each side: between the ribs, on which the panel lies, mm. */
export const hemNarrower = (ribThickness: number, seamGap: number): number =>
  Math.max(0, (ribThickness - seamGap) / 2) + besideRib;
