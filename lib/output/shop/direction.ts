import type { Point } from '../../geometry/index.js';

/** Direction from the origin to a place, radians from 0 to a full turn; what is below x by rounding alone is 0. */
export function directionOf({ x, y }: Point): number {
  const angle = Math.atan2(y, x);
  return angle < -1e-9 ? angle + 2 * Math.PI : Math.max(0, angle);
}
