/**
 * The sight: two plates square to the dish's axis, held apart by two threaded rods on the upper end of one arm. The sun
 * shines through the small hole of the front plate onto paper over the opening of the rear one, where it is seen from
 * behind, against rings drawn round the middle. Millimetres.
 */
import { lineMark, throughHole } from '../part/index.js';
import { circle, contourFromPoints, rectangle, reversed } from '../geometry/index.js';
import type { Made } from './part-shapes.js';

/** Half the width along the arm's end, and how far the plates stand out beyond the arm's inner face. */
export const sightHalf = 36;
export const sightOut = 130;
/** Between the two plates. */
export const sightHeight = 300;
/** The opening with the paper, its middle on one line with the small hole. */
const opening = 64;
const middle = 88;
const rod = 9;
const rods = 36;

/** Angles off the sun that have a ring, degrees. */
export const ringDegrees = [0.5, 1, 2] as const;

/** Radius of the ring of an angle, for plates `height` apart. */
export const ringRadius = (degrees: number, height: number): number => height * Math.tan((degrees * Math.PI) / 180);

const rodHoles = [-25, 25].map((x) => throughHole({ x, y: rods }, rod));

const cross = [
  lineMark(
    contourFromPoints([
      { x: -sightHalf + 2, y: middle },
      { x: -opening / 2 - 1, y: middle },
    ]),
  ),
  lineMark(
    contourFromPoints([
      { x: opening / 2 + 1, y: middle },
      { x: sightHalf - 2, y: middle },
    ]),
  ),
];

/** Both plates; x along the arm's end, y outward from the arm's inner face. */
export function sightPlates(): readonly [rear: Made, front: Made] {
  const outline = rectangle(-sightHalf, 0, sightHalf, sightOut);
  const radii = ringDegrees.map((degrees) => ringRadius(degrees, sightHeight).toFixed(1));
  return [
    {
      id: 'stand-sight-rear',
      name: 'Sight, rear plate',
      quantity: 1,
      outline,
      openings: [reversed(circle({ x: 0, y: middle }, opening / 2))],
      holes: rodHoles,
      marks: cross,
      notes: [
        `Glue tracing paper under the opening and draw rings of ${radii.join(', ')} mm radius around its centre, where the scribed lines cross: they show 0.5, 1 and 2 degrees.`,
      ],
    },
    {
      id: 'stand-sight-front',
      name: 'Sight, front plate',
      quantity: 1,
      outline,
      holes: rodHoles,
      marks: [
        lineMark(
          contourFromPoints([
            { x: -8, y: middle },
            { x: 8, y: middle },
          ]),
        ),
        lineMark(
          contourFromPoints([
            { x: 0, y: middle - 8 },
            { x: 0, y: middle + 8 },
          ]),
        ),
      ],
      notes: ['The small hole, 5 mm, is drilled at the bench, at the scribed cross.'],
    },
  ];
}
