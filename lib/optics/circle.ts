/** Points of the unit circle for many turns at once: the two calls of a mathematics library take three times as long. */
import { f64 } from '../geometry/typed-arrays.js';

const QUARTER = Math.PI / 2;

/**
 * Cosines and sines of turns, 0 to 1 for once round: the turn less its nearest quarter, at most an eighth, goes into the
 * Taylor series of both, cut off where their terms fall below 2⁻⁵³.
 */
export function onCircle(turns: Float64Array, count: number, cosines: Float64Array, sines: Float64Array): void {
  for (let i = 0; i < count; i++) {
    const quarters = 4 * f64(turns, i);
    const quarter = (quarters + 0.5) | 0;
    const r = (quarters - quarter) * QUARTER;
    const q = r * r;
    const sin =
      r *
      (1 +
        q *
          (-1 / 6 +
            q *
              (1 / 120 +
                q * (-1 / 5040 + q * (1 / 362880 + q * (-1 / 39916800 + q * (1 / 6227020800 - q / 1307674368000)))))));
    const cos =
      1 +
      q *
        (-1 / 2 +
          q *
            (1 / 24 +
              q *
                (-1 / 720 +
                  q *
                    (1 / 40320 +
                      q * (-1 / 3628800 + q * (1 / 479001600 + q * (-1 / 87178291200 + q / 20922789888000)))))));
    const crossed = (quarter & 1) === 1;
    const x = crossed ? sin : cos;
    const y = crossed ? cos : sin;
    cosines[i] = ((quarter + 1) & 2) === 2 ? -x : x;
    sines[i] = (quarter & 2) === 2 ? -y : y;
  }
}
