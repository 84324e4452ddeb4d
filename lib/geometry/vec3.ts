/** Vectors in space. */
import type { Vec3 } from './types.js';

/** `a` and `by` times `b`. */
export const vecAdd = (a: Vec3, b: Vec3, by = 1): Vec3 => [a[0] + by * b[0], a[1] + by * b[1], a[2] + by * b[2]];

export const vecTimes = (a: Vec3, by: number): Vec3 => [by * a[0], by * a[1], by * a[2]];

export const vecDot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

export const vecCross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** The direction of a vector that is not 0. */
export const vecUnit = (a: Vec3): Vec3 => {
  const size = Math.hypot(...a);
  return [a[0] / size, a[1] / size, a[2] / size];
};
