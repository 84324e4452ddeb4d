/** What of a rib goes into slots and grooves, piece by piece. */
import {
  bounds,
  type Contour,
  flatten,
  intersectPolygons,
  nearestOnContour,
  polygonArea,
  rectangle,
} from '../../geometry/index.js';
import type { Part } from '../../part/index.js';
import { toPart, toSpace } from '../frame.js';
import type { AssembledPlate } from '../types.js';

/** Heights of edges that are only touched, mm. */
const touching = 0.005;
/** Chords of curved edges, mm. */
const chord = 0.01;

/** What of a rib stands between two heights, in its own axes. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly middle: number;
}

/** The pieces of a rib between two heights above the board, in order outward. */
export function stretches({ outline }: Part, low: number, high: number): Stretch[] {
  const ring = flatten(outline, chord, 'on');
  return intersectPolygons([ring], [rectangle(-1e5, low + touching, 1e5, high - touching)])
    .filter((piece) => polygonArea(piece) > 0)
    .map((piece) => {
      const box = bounds(piece.map(({ x, y }) => ({ x, y, bulge: 0 })));
      return { from: box.minX, to: box.maxX, middle: (box.minY + box.maxY) / 2 };
    })
    .sort((a, b) => a.from - b.from);
}

/** Distance from a place of space, in a level plate's plan, to one of its rings. */
export const toRing = (
  plate: AssembledPlate,
  ring: Contour,
  rib: AssembledPlate,
  at: Stretch,
  x: number,
  h: number,
): number => {
  const [px, py] = toPart(plate.frame, toSpace(rib.frame, x, at.middle, h));
  return nearestOnContour(ring, { x: px, y: py }).distance;
};
