/** What the traced rays make in a level plane. All shares are of the light that the mirror gives back, shade taken off. */
import { estimate } from './estimate.js';
import type { Rays } from './trace.js';
import { f32, f64 } from '../geometry/typed-arrays.js';
import type { Estimate } from './types.js';

/** Bins of the histogram over radius from which quantiles are read. */
const BINS = 4096;

/**
 * Squared distance from the axis at which each ray meets the level plane at `height` above the vertex; infinite for a
 * ray that is shaded or never reaches it.
 */
export function squaredRadii(rays: Rays, height: number): Float64Array {
  const { count, x, y, dxdz, dydz, low, high, light } = rays;
  const rise = height - rays.reference;
  const squared = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const px = f32(x, i) + f32(dxdz, i) * rise;
    const py = f32(y, i) + f32(dydz, i) * rise;
    squared[i] = f32(light, i) > 0 && f32(low, i) < height && height < f32(high, i) ? px * px + py * py : Infinity;
  }
  return squared;
}

/** Light of each batch that `take` keeps, as a share of the batch's light before the shade. */
function batchShares(rays: Rays, take: (ray: number) => boolean): Float64Array {
  const each = rays.count / rays.batches;
  const shares = new Float64Array(rays.batches);
  for (let batch = 0; batch < rays.batches; batch++) {
    let kept = 0;
    let all = 0;
    for (let i = batch * each; i < (batch + 1) * each; i++) {
      const light = Math.abs(f32(rays.light, i));
      all += light;
      if (take(i)) kept += light;
    }
    shares[batch] = kept / all;
  }
  return shares;
}

/** Share of the mirror's light that the vessel's shade takes, batch by batch. */
export function shadedShares(rays: Rays): Float64Array {
  return batchShares(rays, (i) => f32(rays.light, i) < 0);
}

/** Share of the mirror's light (before the shade) that arrives within radius `a`, batch by batch. */
export function caughtShares(rays: Rays, squared: Float64Array, a: number): Float64Array {
  const limit = a * a;
  return batchShares(rays, (i) => f64(squared, i) <= limit);
}

/** Intercept: share of the unshaded light within radius `a`, batch by batch. */
export function intercepts(rays: Rays, squared: Float64Array, a: number): Float64Array {
  const caught = caughtShares(rays, squared, a);
  const shaded = shadedShares(rays);
  return caught.map((share, i) => (share === 0 ? 0 : share / (1 - f64(shaded, i))));
}

export interface CurvePoint {
  readonly radius: number;
  readonly intercept: Estimate;
  /** Irradiance on the ring that ends at this radius, in suns: times the direct irradiance, mirror losses not taken off. */
  readonly ringShare: Estimate;
}

/** Light within evenly spaced radii, for each batch: [batch][radius], shares of the unshaded light. */
function cumulative(rays: Rays, squared: Float64Array, max: number, bins: number): Float64Array[] {
  const each = rays.count / rays.batches;
  const perMm = bins / max;
  return Array.from({ length: rays.batches }, (_, batch) => {
    const upTo = new Float64Array(bins + 1);
    let all = 0;
    for (let i = batch * each; i < (batch + 1) * each; i++) {
      const light = f32(rays.light, i);
      if (light <= 0) continue;
      all += light;
      const bin = Math.sqrt(f64(squared, i)) * perMm;
      if (bin < bins) upTo[(bin | 0) + 1] = f64(upTo, (bin | 0) + 1) + light;
    }
    for (let k = 1; k <= bins; k++) upTo[k] = f64(upTo, k - 1) + f64(upTo, k);
    // a batch that is wholly shaded has light nowhere
    for (let k = 1; k <= bins; k++) upTo[k] = f64(upTo, k) / (all || 1);
    return upTo;
  });
}

/** The intercept at `points` evenly spaced radii from 0 to `max`. */
export function interceptCurve(rays: Rays, squared: Float64Array, max: number, points: number): CurvePoint[] {
  const shares = cumulative(rays, squared, max, points);
  return Array.from({ length: points + 1 }, (_, k) => ({
    radius: (max * k) / points,
    intercept: estimate(shares.map((upTo) => f64(upTo, k))),
    ringShare: estimate(shares.map((upTo) => (k === 0 ? 0 : f64(upTo, k) - f64(upTo, k - 1)))),
  }));
}

/** Radius that holds a share of the unshaded light, for each batch; infinite when so much never arrives. */
function shareRadii(rays: Rays, squared: Float64Array, share: number, max: number): number[] {
  return cumulative(rays, squared, max, BINS).map((upTo) => {
    let low = 0;
    let high = BINS;
    if (f64(upTo, BINS) < share) return Infinity;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (f64(upTo, middle) < share) low = middle;
      else high = middle;
    }
    const part = (share - f64(upTo, low)) / (f64(upTo, high) - f64(upTo, low));
    return ((low + part) * max) / BINS;
  });
}

/** The radius with its standard error. */
export function shareRadius(rays: Rays, squared: Float64Array, share: number, max: number): Estimate {
  return estimate(shareRadii(rays, squared, share, max));
}

/** Bins of the quicker histogram with which planes are compared. */
const QUICK_BINS = 1024;

/** The radius that holds a share of all batches' light together, to look at many planes quickly; infinite when none does. */
export function quickShareRadius(rays: Rays, height: number, share: number, max: number): number {
  const { count, x, y, dxdz, dydz, low, high, light } = rays;
  const rise = height - rays.reference;
  const within = new Float64Array(QUICK_BINS);
  const perMm = QUICK_BINS / max;
  let all = 0;
  for (let i = 0; i < count; i++) {
    if (f32(light, i) <= 0) continue;
    all += f32(light, i);
    if (!(f32(low, i) < height && height < f32(high, i))) continue;
    const px = f32(x, i) + f32(dxdz, i) * rise;
    const py = f32(y, i) + f32(dydz, i) * rise;
    const bin = Math.sqrt(px * px + py * py) * perMm;
    if (bin < QUICK_BINS) within[bin | 0] = f64(within, bin | 0) + f32(light, i);
  }
  let upTo = 0;
  for (let bin = 0; bin < QUICK_BINS; bin++) {
    const next = upTo + f64(within, bin);
    if (next >= share * all && next > 0) return (bin + (share * all - upTo) / f64(within, bin)) / perMm;
    upTo = next;
  }
  return Infinity;
}

/** The first `count` rays of every batch, to look at many planes quickly. */
export function fewer(rays: Rays, count: number): Rays {
  const each = rays.count / rays.batches;
  const kept = Math.max(1, Math.min(each, Math.floor(count / rays.batches)));
  if (kept === each) return rays;
  const pick = (from: Float32Array): Float32Array => {
    const to = new Float32Array(kept * rays.batches);
    for (let batch = 0; batch < rays.batches; batch++)
      to.set(from.subarray(batch * each, batch * each + kept), batch * kept);
    return to;
  };
  return {
    ...rays,
    count: kept * rays.batches,
    x: pick(rays.x),
    y: pick(rays.y),
    dxdz: pick(rays.dxdz),
    dydz: pick(rays.dydz),
    low: pick(rays.low),
    high: pick(rays.high),
    sunX: pick(rays.sunX),
    sunY: pick(rays.sunY),
    light: pick(rays.light),
  };
}
