/**
 * What keeps the hanger level where the arms carry it: a lever fixed to each of its pipes, and a link from the lever's end
 * to the side frame. Tilt axis, focus and both bolts of the link are the corners of a parallelogram, so that the lever
 * keeps its direction whatever the tilt. Millimetres, radians.
 */
import type { Point } from '../geometry/index.js';

export interface Linkage {
  /** From tilt axis to focus, and so between the bolts of the link. */
  readonly length: number;
  /** From the pipe to the lever's end: along x and up, the same at every tilt. */
  readonly lever: Point;
  /** Half the width of lever and link at their bolts. */
  readonly half: number;
  /** Hole of the link's bolts. */
  readonly hole: number;
  /** Furthest that arms and lever come from square to each other: the more, the more the link pulls. */
  readonly askew: number;
}

/** Half the width of the link (common practice, no source), and its clearance from the flange of the tilt axis. */
const half = 20;
const clear = 8;
/** Hole of a bolt M8, or of 5/16 in (ISO 273, medium). */
const hole = 9;

/**
 * The linkage of a hanger that far above the tilt axis.
 * @param head radius of what stands round the tilt axis, outside of the side frames
 * @param lowest the greatest tilt
 */
export function linkageOf(length: number, head: number, lowest: number): Linkage {
  // square to the arms in the middle of their range, away from the sun, where nothing swings
  const askew = lowest / 2;
  const lever = 5 * Math.ceil((head + half + clear) / Math.cos(askew) / 5);
  return { length, lever: { x: -lever * Math.cos(askew), y: lever * Math.sin(askew) }, half, hole, askew };
}

/** Distance of a vessel's middle from that of its hanger which the link has to hold (common practice, no source), mm. */
export const offMiddle = 50;

/** Greatest force in each of both links, N, when a weight (N) stands off the middle. */
export const linkForce = ({ lever, askew }: Linkage, weightN: number): number =>
  (weightN * offMiddle) / (2 * Math.hypot(lever.x, lever.y) * Math.cos(askew));
