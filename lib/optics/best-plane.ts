/** The level plane in which the spot is least. */
import { estimate } from './estimate.js';
import { quickShareRadius } from './spot.js';
import type { Rays } from './trace.js';
import type { Estimate } from './types.js';

const SCAN = 40;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Least value of a smooth function between two bounds: a scan, then golden section to `precision`. */
function minimise(value: (x: number) => number, from: number, to: number, precision: number): number {
  let best = from;
  let min = Infinity;
  for (let i = 0; i <= SCAN; i++) {
    const x = from + ((to - from) * i) / SCAN;
    const at = value(x);
    if (at < min) [best, min] = [x, at];
  }
  let low = Math.max(from, best - (to - from) / SCAN);
  let high = Math.min(to, best + (to - from) / SCAN);
  let a = high - GOLDEN * (high - low);
  let b = low + GOLDEN * (high - low);
  let [atA, atB] = [value(a), value(b)];
  while (high - low > precision) {
    if (atA < atB) {
      [high, b, atB] = [b, a, atA];
      a = high - GOLDEN * (high - low);
      atA = value(a);
    } else {
      [low, a, atA] = [a, b, atB];
      b = low + GOLDEN * (high - low);
      atB = value(b);
    }
  }
  return (low + high) / 2;
}

/** The rays of one batch. */
function batchOf(rays: Rays, batch: number): Rays {
  const each = rays.count / rays.batches;
  const part = (values: Float32Array) => values.subarray(batch * each, (batch + 1) * each);
  return {
    count: each,
    batches: 1,
    reference: rays.reference,
    x: part(rays.x),
    y: part(rays.y),
    dxdz: part(rays.dxdz),
    dydz: part(rays.dydz),
    low: part(rays.low),
    high: part(rays.high),
    sunX: part(rays.sunX),
    sunY: part(rays.sunY),
    light: part(rays.light),
  };
}

/** Height above the vertex of the plane in which `share` of the light lies within the least radius, to `precision` mm. */
export function bestHeight(rays: Rays, share: number, apertureRadius: number, precision = 0.1): number {
  const reach = 0.15 * rays.reference;
  return minimise(
    (height) => quickShareRadius(rays, height, share, apertureRadius),
    rays.reference - reach,
    rays.reference + reach,
    precision,
  );
}

/**
 * The same with its standard error, from the spread of the batches' own best planes. The height at which a share of the
 * points lies closest together is known only with the cube root of their number (Kim and Pollard, Cube root
 * asymptotics, Annals of Statistics 18, 1990; from memory), not with the square root as a mean is.
 */
export function bestPlane(rays: Rays, share: number, apertureRadius: number): Estimate {
  const own = Array.from({ length: rays.batches }, (_, batch) =>
    bestHeight(batchOf(rays, batch), share, apertureRadius, 0.5),
  );
  // of a mean: spread/√n
  const { standardError } = estimate(own);
  return { value: bestHeight(rays, share, apertureRadius), standardError: standardError * rays.batches ** (1 / 6) };
}
