import { cross, distance, subtract } from './point.js';
import type { Point } from './types.js';

export type LineCut =
  { readonly kind: 'parallel' } | { readonly kind: 'same' } | { readonly kind: 'point'; readonly point: Point };

/**
 * Where the endless lines through a0, a1 and through b0, b1 cross. They are the same line when b0 and b1 lie within
 * `touch` (mm) of the first, and parallel when they cross too far away for a number.
 */
export function intersectLines(a0: Point, a1: Point, b0: Point, b1: Point, touch: number): LineCut {
  const a = subtract(a1, a0);
  const b = subtract(b1, b0);
  const length = distance(a0, a1);
  const off0 = cross(a, subtract(b0, a0)) / length;
  const off1 = cross(a, subtract(b1, a0)) / length;
  if (Math.abs(off0) <= touch && Math.abs(off1) <= touch) return { kind: 'same' };
  const t = off0 / (off0 - off1);
  if (!Number.isFinite(t)) return { kind: 'parallel' };
  return { kind: 'point', point: { x: b0.x + b.x * t, y: b0.y + b.y * t } };
}
