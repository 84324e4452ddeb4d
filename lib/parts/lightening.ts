/** Lightening holes: round, each as large as the web round it allows. */
import {
  bounds,
  circle,
  type Contour,
  distance,
  type Edge,
  edgesOf,
  nearestOnEdge,
  type Point,
  reversed,
} from '../geometry/index.js';
import { crossings } from './crossing.js';

/** A smaller hole saves nothing that is worth a cut (radius, mm). */
const minRadius = 12;
/** Steps of the search along the part (mm). */
const step = 4;

interface Hole {
  readonly centre: Point;
  readonly radius: number;
}

/** The place on an upright line through a ring that is furthest from its edges; they rise to one greatest distance. */
function largestAround(edges: readonly Edge[], x: number, low: number, high: number): Hole {
  const space = (y: number): number =>
    edges.reduce((min, edge) => Math.min(min, nearestOnEdge(edge, { x, y }).distance), Infinity);
  let [from, to] = [low, high];
  while (to - from > 0.01) {
    const third = (to - from) / 3;
    if (space(from + third) < space(to - third)) from += third;
    else to -= third;
  }
  const y = (from + to) / 2;
  return { centre: { x, y }, radius: space(y) };
}

/**
 * Holes along the middle of a part, the largest first.
 * @param web least width of material to any edge, hole or kept place, mm
 * @param keep places that stay whole, such as screws
 * @returns rings run clockwise, as openings do
 */
export function lighteningHoles(outline: Contour, web: number, keep: readonly Point[]): Contour[] {
  const box = bounds(outline);
  const edges = edgesOf(outline);
  const places: Hole[] = [];
  for (let x = box.maxX - step; x > box.minX; x -= step) {
    const pair = crossings(outline, x);
    if (pair) places.push(largestAround(edges, x, pair[0].at.y, pair[1].at.y));
  }
  const holes: Hole[] = [];
  // the largest that still has room beside those before it, until none is worth a cut
  const largest = (): Hole =>
    places.reduce<Hole>(
      (best, { centre, radius: space }) => {
        const radius = Math.min(
          space - web,
          ...keep.map((place) => distance(place, centre) - web),
          ...holes.map((hole) => distance(hole.centre, centre) - hole.radius - web),
        );
        return radius > best.radius ? { centre, radius } : best;
      },
      { centre: { x: 0, y: 0 }, radius: 0 },
    );
  for (let hole = largest(); hole.radius >= minRadius; hole = largest()) holes.push(hole);
  return holes
    .sort((a, b) => a.centre.x - b.centre.x)
    .map(({ centre, radius }) => reversed(circle(centre, Math.floor(radius))));
}
