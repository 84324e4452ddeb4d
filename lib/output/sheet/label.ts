/** Where a line of text goes on a part: along it, as large as asked for where it fits, never over its edges. */
import {
  bounds,
  circle,
  type Contour,
  convexHull,
  cyclic,
  flatten,
  flattenPath,
  type Point,
  rotate,
} from '../../geometry/index.js';
import { linesUp, type Part, pocketsUp, ringsOf } from '../../part/index.js';
import { passes, type Segment } from '../shop/free-place.js';

export interface LabelPlace {
  /** Middle of the text, in the part's axes. */
  readonly x: number;
  readonly y: number;
  /** Direction in which it is read, degrees. */
  readonly angleDeg: number;
  /** Of the capitals, mm. */
  readonly height: number;
}

/** Edges are followed this closely, mm. */
const TOLERANCE = 0.3;
/** What a text keeps clear of: edges of material, holes and pockets always, scribed lines where it can. */
export type Clear = 'holes' | 'lines';
/** Places that are tried along and across. */
const PLACES = { along: 41, across: 21 } as const;
/** Each size that is tried over the one before. */
const STEP = 0.87;

/** Whether a place is in the material between some edges: even-odd over all rings. */
export function inMaterial(segments: readonly Segment[], { x, y }: Point): boolean {
  const crossed = segments.filter(
    ({ a, b }) => a.y > y !== b.y > y && x < a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y),
  );
  return crossed.length % 2 === 1;
}

/** Directions worth reading along, radians: of the narrowest box that holds the part, and square to it. */
function directionsOf(points: readonly Point[]): number[] {
  const hull = convexHull(points);
  const boxes = hull.map((from, i) => {
    const to = cyclic(hull, i + 1);
    const angle = Math.atan2(to.y - from.y, to.x - from.x);
    const turned = hull.map((point) => rotate(point, -angle));
    const [xs, ys] = [turned.map(({ x }) => x), turned.map(({ y }) => y)];
    const [wide, high] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
    return { angle: high > wide ? angle + Math.PI / 2 : angle, narrow: Math.min(wide, high) };
  });
  const narrowest = Math.min(...boxes.map(({ narrow }) => narrow));
  const along = boxes.find(({ narrow }) => narrow <= narrowest + 1e-6)?.angle ?? 0;
  return [along, along + Math.PI / 2];
}

/** Numbers from the middle of a range outwards. */
function fromMiddle(low: number, high: number, count: number): number[] {
  const middle = (low + high) / 2;
  const values = Array.from({ length: count }, (_, i) => low + ((high - low) * (i + 0.5)) / count);
  return values.sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle));
}

/** A part turned so that text would run along x. */
interface Turned {
  readonly angle: number;
  /** Edges of material. */
  readonly edges: readonly Segment[];
  /** Holes, pockets and scribed lines, as far as text has to keep clear of them. */
  readonly lines: readonly Segment[];
}

/** The edges of a ring or of an open run of points. */
export const segmentsOf = (points: readonly Point[], closed: boolean): Segment[] =>
  points.slice(closed ? 0 : 1).map((b, i) => ({ a: cyclic(points, closed ? i - 1 : i), b }));

function turnedBy(part: Part, angle: number, clear: Clear): Turned {
  const turn = (points: readonly Point[]) => points.map((point) => rotate(point, -angle));
  const ring = (one: Contour) => segmentsOf(turn(flatten(one, TOLERANCE, 'on')), true);
  const holes = part.holes.flatMap((hole) => ring(circle(hole, Math.max(hole.diameter, hole.countersink ?? 0) / 2)));
  const pockets = pocketsUp(part).flatMap((pocket) => ring(pocket.ring));
  const lines = clear === 'lines' ? linesUp(part) : [];
  return {
    angle,
    edges: ringsOf(part).flatMap(ring),
    lines: [
      ...holes,
      ...pockets,
      ...lines.flatMap(({ vertices, closed }) => segmentsOf(turn(flattenPath(vertices, TOLERANCE)), closed)),
    ],
  };
}

function placeAlong({ edges, lines }: Turned, halfWidth: number, halfHeight: number): Point | null {
  const box = bounds(edges.map(({ a }) => ({ ...a, bulge: 0 })));
  const [wide, high] = [box.maxX - box.minX, box.maxY - box.minY];
  if (wide < 2 * halfWidth || high < 2 * halfHeight) return null;
  for (const y of fromMiddle(box.minY + halfHeight, box.maxY - halfHeight, PLACES.across))
    for (const x of fromMiddle(box.minX + halfWidth, box.maxX - halfWidth, PLACES.along)) {
      const middle = { x, y };
      const text = { minX: x - halfWidth, minY: y - halfHeight, maxX: x + halfWidth, maxY: y + halfHeight };
      const crosses = (segment: Segment) => passes(segment, text);
      if (!edges.some(crosses) && !lines.some(crosses) && inMaterial(edges, middle)) return middle;
    }
  return null;
}

/** From the largest to the smallest, which is always among them. */
function sizes({ max, min }: { readonly max: number; readonly min: number }): number[] {
  const count = Math.max(0, Math.ceil(Math.log(min / max) / Math.log(STEP) - 1e-9));
  return [...Array.from({ length: count }, (_, i) => max * STEP ** i), min];
}

export interface LabelText {
  /** Width over the height of the capitals. */
  readonly ratio: number;
  /** Room round it, in heights of its capitals: what hangs below the line, and a little more. */
  readonly air: number;
  readonly clear: Clear;
}

/**
 * The place of a text.
 * @param heights of the capitals, mm: the largest and the smallest that will do
 * @returns null where even the smallest runs over what it has to keep clear of
 */
export function labelPlace(
  part: Part,
  { ratio, air, clear }: LabelText,
  heights: { readonly max: number; readonly min: number },
): LabelPlace | null {
  const directions = directionsOf(flatten(part.outline, TOLERANCE, 'on'));
  const turned = directions.map((angle) => turnedBy(part, angle, clear));
  for (const height of sizes(heights))
    for (const one of turned) {
      const found = placeAlong(one, (ratio / 2 + air) * height, (0.5 + air) * height);
      if (found === null) continue;
      const { x, y } = rotate(found, one.angle);
      return { x, y, angleDeg: (one.angle * 180) / Math.PI, height };
    }
  return null;
}
