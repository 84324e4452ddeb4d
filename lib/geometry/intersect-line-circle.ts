import { cross, distance, dot, subtract } from './point.js';
import type { Point } from './types.js';

/** `touching` within the tolerance: one point, the foot of the square from the centre. */
export type CircleCut =
  | { readonly kind: 'apart' }
  | { readonly kind: 'touching'; readonly points: readonly [Point] }
  | { readonly kind: 'crossing'; readonly points: readonly [Point, Point] };

/** Where the endless line through p and q cuts a circle; it touches when it passes within `touch` (mm) of a tangent. */
export function intersectLineCircle(p: Point, q: Point, centre: Point, radius: number, touch: number): CircleCut {
  const length = distance(p, q);
  const along = { x: (q.x - p.x) / length, y: (q.y - p.y) / length };
  const toCentre = subtract(centre, p);
  const off = cross(along, toCentre);
  const foot = dot(along, toCentre);
  const at = (s: number): Point => ({ x: p.x + along.x * s, y: p.y + along.y * s });
  const inside = radius - Math.abs(off);
  if (inside < -touch) return { kind: 'apart' };
  if (inside <= touch) return { kind: 'touching', points: [at(foot)] };
  const half = Math.sqrt(inside * (radius + Math.abs(off)));
  return { kind: 'crossing', points: [at(foot - half), at(foot + half)] };
}
