/** Screws, bolts, dowels and pins as solids, from what is known of them: shank, head, length and axis. */
import type { Fastener, FastenerItem } from '../../assembly/index.js';
import { type Vec3, vecCross, vecTimes, vecUnit } from '../../geometry/index.js';
import type { Body, Piece } from './scene.js';
import type { Vec2 } from './solids.js';

/** Radius and height, the point first, the place where it enters at height 0; `wide` draws it thicker, not longer. */
export function profileOf({ kind, diameter, length, headDiameter }: FastenerItem, reach: number, wide = 1): Vec2[] {
  const long = length ?? reach;
  const r = (diameter / 2) * wide;
  const point: Vec2[] = [
    [0.02 * r, -long],
    [r, -long + 1.5 * diameter],
  ];
  switch (kind) {
    case 'wood-screw': {
      const head = ((headDiameter ?? 2 * diameter) / 2) * wide;
      return [...point, [r, -(head - r)], [head, 0]];
    }
    case 'bolt':
      // heads of hexagon bolts are 0.65 of the diameter high and 1.6 wide, washers 2.1 (ISO 4017, ISO 7089, rounded)
      return [
        [r, -long],
        [r, 0],
        [2.1 * r, 0],
        [2.1 * r, 0.18 * diameter],
        [1.65 * r, 0.18 * diameter],
        [1.65 * r, 0.83 * diameter],
      ];
    case 'dowel':
      return [
        [r, -long],
        [r, 0],
      ];
    default:
      return [...point, [r, 0], [2 * r, 0], [2 * r, 0.4 * diameter]];
  }
}

/**
 * A fastener at its place, pulled back out along its axis.
 * @param reach length of one that is cut to length, mm
 */
export function fastenerPiece(fastener: Fastener, pulled: number, reach: number, wide: number): Piece {
  const { direction: d, entry, item } = fastener;
  const back = vecTimes(d, -1);
  const aside: Vec3 = Math.abs(back[2]) > 0.9 ? [1, 0, 0] : [0, 0, 1];
  const x = vecUnit(vecCross(aside, back));
  const body: Body = { parts: [], role: 'metal', shape: { kind: 'turned', profile: profileOf(item, reach, wide) } };
  return {
    body,
    frame: { origin: entry, x, y: vecCross(back, x) },
    moved: vecTimes(back, pulled),
    look: 'new',
  };
}
