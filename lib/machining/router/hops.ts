/**
 * Low hops of the V-bit. Between two marks of a part it need not rise to the height of travel: where its way stays over
 * that part alone, by its own radius, there is nothing but the flat face of the sheet below it, as every clamp and screw
 * stands in the waste. Longer ways are not taken low, as a sheet bows between its hold-downs (common practice, no source).
 */
import {
  bounds,
  type Bounds,
  closestOfContours,
  type Contour,
  distance,
  element,
  placeVertices,
  type Point,
  sideOfContour,
} from '../../geometry/index.js';
import type { PartShape, PlacedPart } from '../../part/index.js';
import type { Cut, Move } from './types.js';

/** Longest hop, mm. */
const longestHop = 100;
const shortestHop = 1e-3;

interface Face {
  readonly outline: Contour;
  readonly openings: readonly Contour[];
  readonly box: Bounds;
}

/** The faces of the parts of a sheet. */
export function facesOf(placed: readonly PlacedPart[], parts: ReadonlyMap<string, PartShape>): Face[] {
  return placed.flatMap((place) => {
    const part = parts.get(place.part);
    if (part === undefined) return [];
    const outline = placeVertices(part.outline, place);
    return [{ outline, openings: part.openings.map((ring) => placeVertices(ring, place)), box: bounds(outline) }];
  });
}

const within = ({ x, y }: Point, { minX, minY, maxX, maxY }: Bounds): boolean =>
  x > minX && x < maxX && y > minY && y < maxY;

/** Whether the straight way from one place to another stays over one part, `radius` off its outline and openings. */
function isOverOne(faces: readonly Face[], from: Point, to: Point, radius: number): boolean {
  const segment: Contour = [
    { x: from.x, y: from.y, bulge: 0 },
    { x: to.x, y: to.y, bulge: 0 },
  ];
  return faces.some(
    ({ outline, openings, box }) =>
      within(from, box) &&
      within(to, box) &&
      sideOfContour(outline, from, 0) === 'inside' &&
      closestOfContours(outline, segment).distance >= radius &&
      openings.every(
        (ring) => sideOfContour(ring, from, 0) === 'outside' && closestOfContours(ring, segment).distance >= radius,
      ),
  );
}

const raisedTo = (move: Move, z: number): Move => ({ ...move, to: { ...move.to, z } });

/**
 * The cuts of a V-bit with low hops between them where they may be.
 * @param cuts each begins and ends with a rapid at the height of travel
 * @param hopHeight at or above that height there are none
 */
export function withLowHops(
  cuts: readonly Cut[],
  faces: readonly Face[],
  {
    hopHeight,
    safeHeight,
    radius,
  }: { readonly hopHeight: number; readonly safeHeight: number; readonly radius: number },
): Cut[] {
  if (hopHeight >= safeHeight) return [...cuts];
  const low = cuts.slice(1).map((cut, i) => {
    const from = element(cuts, i).moves.at(-1)!.to;
    const to = element(cut.moves, 0).to;
    const length = distance(from, to);
    return length > shortestHop && length <= longestHop && isOverOne(faces, from, to, radius);
  });
  return cuts.map((cut, i) => {
    const last = cut.moves.length - 1;
    const moves = cut.moves.map((move, k) => {
      const hops = (k === 0 && i > 0 && low[i - 1]) || (k === last && low[i]);
      return hops === true ? raisedTo(move, hopHeight) : move;
    });
    return { ...cut, moves };
  });
}
