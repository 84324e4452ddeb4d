/** Union, difference and intersection of polygons, by the clipping library on a grid of a millionth of a millimetre. */
import { element } from './element.js';
import { Clipper, FillRule, type PathsD } from 'clipper2-ts';
import type { Polygon } from './types.js';

/** Decimal places of a millimetre that the clipping library works to: 1e-6 mm. */
const PLACES = 6;

const toPaths = (polygons: readonly Polygon[]): PathsD => polygons.map((ring) => ring.map(({ x, y }) => ({ x, y })));
const fromPaths = (paths: PathsD): Polygon[] => paths.map((path) => path.map(({ x, y }) => ({ x, y })));

/**
 * What any of the polygons covers: outer rings anticlockwise, openings clockwise. Rings given clockwise are openings
 * of those around them (rule of non-zero turns), so pass solid polygons anticlockwise.
 */
export function unionPolygons(polygons: readonly Polygon[]): Polygon[] {
  return fromPaths(Clipper.unionD(toPaths(polygons), [], FillRule.NonZero, PLACES));
}

/** What the polygons of `a` cover and those of `b` do not; rings as in `unionPolygons`. */
export function subtractPolygons(a: readonly Polygon[], b: readonly Polygon[]): Polygon[] {
  return fromPaths(Clipper.differenceD(toPaths(a), toPaths(b), FillRule.NonZero, PLACES));
}

/** What the polygons of both cover; rings as in `unionPolygons`. */
export function intersectPolygons(a: readonly Polygon[], b: readonly Polygon[]): Polygon[] {
  return fromPaths(Clipper.intersectD(toPaths(a), toPaths(b), FillRule.NonZero, PLACES));
}

/** Area of a polygon (mm²), positive when it runs anticlockwise. */
export function polygonArea(polygon: Polygon): number {
  const origin = polygon[0];
  if (origin === undefined) return 0;
  let twice = 0;
  for (let i = 0; i < polygon.length; i++) {
    const p = element(polygon, i);
    const q = element(polygon, (i + 1) % polygon.length);
    twice += (p.x - origin.x) * (q.y - origin.y) - (q.x - origin.x) * (p.y - origin.y);
  }
  return twice / 2;
}
