/** Where cleats stand beside the ribs, as radii from the axis to their inner ends. Lengths in mm. */

/** What the cleats stand on. */
export interface CleatBase {
  readonly ribThickness: number;
  /** Where the ribs start, and where their base ends. */
  readonly innerRadius: number;
  readonly toeRadius: number;
  readonly boardSize: number;
  readonly roundBoard: boolean;
}

/** The cleats of one rib. */
export interface CleatRows {
  readonly length: number;
  readonly width: number;
  readonly rows: number;
  readonly perRib: number;
}

/** Clearance that is left between two things on the board that are not joined: common practice, no source. */
export const planClearance = 1;

/** From a joint of the board to the nearest screw: common practice, no source. */
export const screwFromJoint = 8;

/** Greatest radius at which a cleat still stands under its rib's base and on the board. */
export function endOfBase(base: CleatBase, { length, width }: CleatRows): number {
  const half = base.boardSize / 2;
  const out = base.ribThickness / 2 + width;
  const edge = base.roundBoard ? Math.sqrt(Math.max(0, half * half - out * out)) : half;
  return Math.min(base.toeRadius, edge) - length;
}

/** Greatest radius for the only row, or for the inner one: a cleat's length stays free before the outer. */
export function maxStart(base: CleatBase, cleat: CleatRows): number {
  const end = endOfBase(base, cleat);
  return cleat.rows === 2 ? end - 2 * cleat.length : end;
}

/** Radii are told in whole steps, so that they can be set out by a rule. */
const step = 5;

/**
 * Where cleats hold a rib best against a pull at its rim, as far as the base goes: with their middle two thirds of the
 * way along it, an inner row at one third (common practice, no source).
 */
export function bestStart(base: CleatBase, cleat: CleatRows): number {
  const share = cleat.rows === 2 ? 1 / 3 : 2 / 3;
  const wanted = base.innerRadius + share * (base.toeRadius - base.innerRadius) - cleat.length / 2;
  return Math.min(Math.floor(maxStart(base, cleat)), step * Math.round(wanted / step));
}

/** Where cleats stand that clear all else from `min` on and not where they would hold best. */
export function startFrom(min: number, base: CleatBase, cleat: CleatRows): number {
  return Math.max(min, Math.min(Math.floor(maxStart(base, cleat)), step * Math.ceil((min - 1e-6) / step)));
}

/**
 * Whether a joint of the board passes between the cleats of two neighbours, where the board comes apart: cleats there
 * hold on one segment only. The joint runs from the axis past the corner of a rib's inner end.
 */
export function jointPasses(base: CleatBase, cleat: CleatRows, halfAngle: number, start: number): boolean {
  const half = base.ribThickness / 2;
  const besideCleat = Math.atan2(half + cleat.width + planClearance, start);
  const besideRib = Math.asin(Math.min(1, (half + planClearance) / base.innerRadius));
  return besideCleat + (cleat.perRib === 2 ? Math.max(besideCleat, besideRib) : besideRib) <= 2 * halfAngle;
}
