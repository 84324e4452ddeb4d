/** Random rings for tests of geometry: star-shaped, with straight and bent edges, simple by construction or filter. */
import fc from 'fast-check';
import { type Contour, type Point, type Polygon, signedArea, simplicity } from '../../lib/geometry/index.js';

/** Anticlockwise rings about the origin, radii 20 to 100 mm, edges straight or bent up to about 130 degrees. */
export const bentRing: fc.Arbitrary<Contour> = fc
  .array(
    fc.record({
      radius: fc.double({ min: 20, max: 100, noNaN: true }),
      bulge: fc.oneof(fc.constant(0), fc.double({ min: -0.6, max: 0.6, noNaN: true })),
    }),
    { minLength: 3, maxLength: 14 },
  )
  .map((corners): Contour =>
    corners.map(({ radius, bulge }, k) => {
      const angle = (2 * Math.PI * k) / corners.length;
      return { x: radius * Math.cos(angle), y: radius * Math.sin(angle), bulge };
    }),
  )
  .filter((ring) => signedArea(ring) > 1 && simplicity(ring, 1e-6).kind === 'simple');

/** The same as corners joined by straight edges only, radii 20 to 100 mm. */
export const straightRing: fc.Arbitrary<Contour> = fc
  .array(fc.double({ min: 20, max: 100, noNaN: true }), { minLength: 3, maxLength: 20 })
  .map((radii): Contour =>
    radii.map((radius, k) => {
      const angle = (2 * Math.PI * k) / radii.length;
      return { x: radius * Math.cos(angle), y: radius * Math.sin(angle), bulge: 0 };
    }),
  );

/** Corners on an even grid, so that edges line up, touch and run along each other. */
export const gridRectangles: fc.Arbitrary<Polygon[]> = fc.array(
  fc
    .tuple(
      fc.integer({ min: 0, max: 10 }),
      fc.integer({ min: 0, max: 10 }),
      fc.integer({ min: 1, max: 5 }),
      fc.integer({ min: 1, max: 5 }),
    )
    .map(([x, y, w, h]): Point[] => [
      { x: 2 * x, y: 2 * y },
      { x: 2 * (x + w), y: 2 * y },
      { x: 2 * (x + w), y: 2 * (y + h) },
      { x: 2 * x, y: 2 * (y + h) },
    ]),
  { minLength: 1, maxLength: 8 },
);

/** The ring with vertex `by` first. */
export function rotated(ring: Contour, by: number): Contour {
  return [...ring.slice(by), ...ring.slice(0, by)];
}
