/** Places and directions in the dish: x along rib 1, y square to it, z up from the board's upper face; mm. */

import { type Vec3, vecAdd, vecCross, vecDot } from '../geometry/index.js';

export type { Vec3 };

/**
 * Where a flat part lies. Its own x and y run along `x` and `y`; its front, the face on which it is drawn, looks along
 * `x` cross `y`, so a frame can turn a part over only by turning it in space, never by mirroring it.
 */
export interface Frame {
  /** Where the point (0, 0) of the part's back lies. */
  readonly origin: Vec3;
  readonly x: Vec3;
  readonly y: Vec3;
}

/** Direction in which the part's front looks. */
export const frontOf = (frame: Frame): Vec3 => vecCross(frame.x, frame.y);

/** Direction in which its back looks: the way a screw is driven in from the front. */
export const backOf = (frame: Frame): Vec3 => vecAdd([0, 0, 0], frontOf(frame), -1);

/** A point of the part, `height` above its back, in space. */
export function toSpace(frame: Frame, x: number, y: number, height: number): Vec3 {
  return vecAdd(vecAdd(vecAdd(frame.origin, frame.x, x), frame.y, y), frontOf(frame), height);
}

/** A point of space in the part's own x, y and height above its back. */
export function toPart(frame: Frame, point: Vec3): Vec3 {
  const from = vecAdd(point, frame.origin, -1);
  return [vecDot(from, frame.x), vecDot(from, frame.y), vecDot(from, frontOf(frame))];
}

/** A direction of space in the part's own axes. */
export function directionInPart(frame: Frame, direction: Vec3): Vec3 {
  return [vecDot(direction, frame.x), vecDot(direction, frame.y), vecDot(direction, frontOf(frame))];
}
