/** Lever and link of a hanger that the arms carry, each with its first hole at the origin. */
import { type Point, rotate } from '../geometry/index.js';
import { throughHole } from '../part/index.js';
import type { Cradle } from './cradle.js';
import type { Linkage } from './linkage.js';
import { hullOf, octagon, rounded } from './outline.js';
import { label, letters, type Made } from './part-shapes.js';

/** The hull round two holes: wide at the first, narrow at the second. */
const strip = (to: Point, first: number, second: number): Point[] =>
  hullOf([...octagon({ x: 0, y: 0 }, first), ...octagon(to, second)]);

/** A lever, its pipe at the origin, x and y as the cradle's x and z. */
export const leverRing = ({ lever, half }: Linkage, head: number): Point[] => strip(lever, head, half);

/** A link between its two bolts, up the arm. */
export const linkRing = ({ length, half }: Linkage): Point[] => strip({ x: 0, y: length }, half, half);

export function linkageParts({
  linkage,
  arm: { head },
  pipe,
  pipeHole,
}: Cradle): readonly [lever: Made, link: Made] | null {
  if (linkage === null) return null;
  const { lever, length, hole, half } = linkage;
  const along = Math.atan2(lever.y, lever.x);
  const middle = rotate({ x: (pipe.outside / 2 + Math.hypot(lever.x, lever.y) - half) / 2, y: 0 }, along);
  return [
    {
      id: 'stand-lever',
      name: 'Lever',
      quantity: 2,
      outline: rounded(leverRing(linkage, head), half),
      holes: [throughHole({ x: 0, y: 0 }, pipeHole), throughHole(lever, hole)],
      marks: [label('{n}', middle.x, middle.y - letters / 2)],
      notes: [
        'The floor flange of the hanger’s pipe is screwed to its outer face; the small hole is above the large one, away from the sun.',
      ],
    },
    {
      id: 'stand-link',
      name: 'Link',
      quantity: 2,
      outline: rounded(linkRing(linkage), half),
      holes: [throughHole({ x: 0, y: 0 }, hole), throughHole({ x: 0, y: length }, hole)],
      notes: [
        'The distance between its holes is the same as between the two pipe holes in the arm: compare them, as a difference tilts the vessel.',
      ],
    },
  ];
}
