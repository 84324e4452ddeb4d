import type { CircleCut } from './intersect-line-circle.js';
import { distance } from './point.js';
import type { Point } from './types.js';

export type CirclesCut = CircleCut | { readonly kind: 'same' };

/**
 * Where two circles cut each other. The same circle when the two lie within `touch` (mm) all round; touching when
 * they come within `touch` of a common tangent, from outside or inside.
 */
export function intersectCircles(c0: Point, r0: number, c1: Point, r1: number, touch: number): CirclesCut {
  const apart = distance(c0, c1);
  if (apart + Math.abs(r0 - r1) <= touch) return { kind: 'same' };
  const outside = apart - (r0 + r1);
  const within = Math.abs(r0 - r1) - apart;
  if (outside > touch || within > touch) return { kind: 'apart' };
  const along = { x: (c1.x - c0.x) / apart, y: (c1.y - c0.y) / apart };
  // from the first centre to the common chord (cosine rule), arranged to lose no digits with nearly equal radii
  const foot = (apart + ((r0 - r1) * (r0 + r1)) / apart) / 2;
  const at = (s: number, h: number): Point => ({
    x: c0.x + along.x * s - along.y * h,
    y: c0.y + along.y * s + along.x * h,
  });
  if (outside >= -touch) return { kind: 'touching', points: [at((r0 + apart - r1) / 2, 0)] };
  if (within >= -touch) {
    const sign = r0 >= r1 ? 1 : -1;
    return { kind: 'touching', points: [at((sign * (r0 + r1) + apart) / 2, 0)] };
  }
  // Heron's formula for the height of the triangle of r0, r1 and the distance
  const area = Math.sqrt(Math.max(0, (r0 + r1 + apart) * (r0 + r1 - apart) * (apart + r0 - r1) * (apart - r0 + r1)));
  const half = area / (2 * apart);
  // foot and half lose digits when the circles are nearly one; brought back onto the first they lie on both again
  const onFirst = (h: number): Point => at((foot * r0) / Math.hypot(foot, h), (h * r0) / Math.hypot(foot, h));
  return { kind: 'crossing', points: [onFirst(half), onFirst(-half)] };
}
