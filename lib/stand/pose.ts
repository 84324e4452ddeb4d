/** Where things of the stand are at a tilt, in the cradle's plane across the tilt axis. Millimetres, radians. */
import { add, type Point, subtract } from '../geometry/index.js';
import type { Cradle } from './cradle.js';

/**
 * How something moves: it stands; tilts with the dish; goes with the focus and stays level; or is a link, which turns as
 * the dish does about its bolt at the side frame.
 */
export type Motion = 'stands' | 'tilts' | 'level' | 'link';

type Axes = Pick<Cradle, 'axis' | 'focus' | 'linkage'>;

/** Turns a place about the tilt axis: what is above it leans towards +x. */
function tilted({ x, y }: Point, axis: number, angle: number): Point {
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
  return { x: x * cos + (y - axis) * sin, y: axis + (y - axis) * cos - x * sin };
}

/** Where a place is at a tilt that it has at none. */
export function posed(place: Point, motion: Motion, { axis, focus, linkage }: Axes, angle: number): Point {
  switch (motion) {
    case 'stands':
      return place;
    case 'tilts':
      return tilted(place, axis, angle);
    case 'level': {
      const top = { x: 0, y: focus };
      return add(place, subtract(tilted(top, axis, angle), top));
    }
    case 'link': {
      // as an arm, moved aside by the lever
      const aside = linkage?.lever ?? { x: 0, y: 0 };
      return add(tilted(subtract(place, aside), axis, angle), aside);
    }
  }
}
