/** Lightening holes: round, each as large as the web round it allows. */
import {
  circle,
  type Contour,
  distance,
  nearestOnContour,
  type Point,
  reversed,
  sideOfContour,
  bounds,
} from '../geometry/index.js';

/** A smaller hole saves nothing that is worth a cut (radius, mm). */
const leastRadius = 12;
/** Steps of the search along the part and across it (mm). */
const step = 2;

interface Hole {
  readonly centre: Point;
  readonly radius: number;
}

/** The roomiest place on an upright line through the part, by steps and then by halving. */
function roomiest(outline: Contour, x: number, low: number, high: number): Point {
  const room = (y: number): number => {
    const place = { x, y };
    return sideOfContour(outline, place, 0) === 'inside' ? nearestOnContour(outline, place).distance : -1;
  };
  let best = low;
  for (let y = low; y <= high; y += step) if (room(y) > room(best)) best = y;
  for (let span = step / 2; span > 0.01; span /= 2)
    for (const y of [best - span, best + span]) if (room(y) > room(best)) best = y;
  return { x, y: best };
}

/**
 * Holes along the middle of a part, from its wider end on, largest first place.
 * @param web least width of material to any edge, hole or kept place, mm
 * @param keep places that stay whole, such as screws
 * @returns rings run clockwise, as openings do
 */
export function lighteningHoles(outline: Contour, web: number, keep: readonly Point[]): Contour[] {
  const box = bounds(outline);
  const places: Point[] = [];
  for (let x = box.maxX - step; x > box.minX; x -= step) places.push(roomiest(outline, x, box.minY, box.maxY));
  const edgeRoom = places.map((place) => nearestOnContour(outline, place).distance - web);
  const holes: Hole[] = [];
  for (;;) {
    let best: Hole | null = null;
    places.forEach((centre, i) => {
      const radius = Math.min(
        edgeRoom[i]!,
        ...keep.map((place) => distance(place, centre) - web),
        ...holes.map((hole) => distance(hole.centre, centre) - hole.radius - web),
      );
      if (radius >= leastRadius && (best === null || radius > best.radius)) best = { centre, radius };
    });
    if (best === null) break;
    holes.push(best);
  }
  return holes
    .sort((a, b) => a.centre.x - b.centre.x)
    .map(({ centre, radius }) => reversed(circle(centre, Math.floor(radius))));
}
