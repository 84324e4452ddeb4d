import { f64 } from './typed-arrays.js';
import { distance } from './point.js';
import type { Point } from './types.js';

/** A smooth curve: the point and the direction of travel (any length) at a parameter between `from` and `to`. */
export interface Curve {
  readonly from: number;
  readonly to: number;
  readonly at: (t: number) => Point;
  readonly tangent: (t: number) => Point;
}

/** A curve at equal steps of its length: exact points, directions in radians without jumps of a full turn. */
export interface SampledCurve {
  readonly count: number;
  readonly t: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly direction: Float64Array;
}

/**
 * The curve at `count` points (ends included) about equally far apart. The steps are even by a table of chords;
 * the points themselves are the curve's own. Throws RangeError for a curve of no length or with points that are
 * not numbers.
 */
export function sampleCurve(curve: Curve, count: number): SampledCurve {
  const fine = 2 * count;
  const step = (curve.to - curve.from) / fine;
  const lengths = new Float64Array(fine + 1);
  let last = curve.at(curve.from);
  for (let i = 1; i <= fine; i++) {
    const next = curve.at(curve.from + step * i);
    lengths[i] = f64(lengths, i - 1) + distance(last, next);
    last = next;
  }
  const total = f64(lengths, fine);
  if (!(total > 0) || !Number.isFinite(total)) throw new RangeError(`a curve to fit needs a length, not ${total} mm`);

  const sampled = {
    count,
    t: new Float64Array(count),
    x: new Float64Array(count),
    y: new Float64Array(count),
    direction: new Float64Array(count),
  };
  let at = 0;
  for (let k = 0; k < count; k++) {
    const wanted = (total * k) / (count - 1);
    while (at < fine - 1 && f64(lengths, at + 1) < wanted) at++;
    const span = f64(lengths, at + 1) - f64(lengths, at);
    const part = span > 0 ? (wanted - f64(lengths, at)) / span : 0;
    const t = k === 0 ? curve.from : k === count - 1 ? curve.to : curve.from + step * (at + part);
    const point = curve.at(t);
    const tangent = curve.tangent(t);
    sampled.t[k] = t;
    sampled.x[k] = point.x;
    sampled.y[k] = point.y;
    let direction = Math.atan2(tangent.y, tangent.x);
    if (k > 0) {
      const before = f64(sampled.direction, k - 1);
      direction -= 2 * Math.PI * Math.round((direction - before) / (2 * Math.PI));
    }
    sampled.direction[k] = direction;
  }
  return sampled;
}
