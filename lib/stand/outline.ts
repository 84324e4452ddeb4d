/** Outlines of the stand's parts, from straight edges with rounded corners. */
import {
  contourFromPoints,
  type Contour,
  convexHull,
  cross,
  fillet,
  type Point,
  polar,
  subtract,
} from '../geometry/index.js';

/** Corners at which an outline all but goes straight on are none, mm². */
const straight = 1e-9;

/** The smallest convex ring round some points, anticlockwise. */
export const hullOf = (points: readonly Point[]): Point[] => convexHull(points, straight);

/** A ring with its corners rounded where their edges are long enough for it; some may stay sharp. */
export function rounded(
  points: readonly Point[],
  radius: number,
  sharp: (point: Point) => boolean = () => false,
): Contour {
  let contour: Contour = contourFromPoints(points);
  for (let i = points.length - 1; i >= 0; i--) {
    const [a, b, c] = [points.at(i - 1)!, points[i]!, points[(i + 1) % points.length]!];
    if (sharp(b)) continue;
    const [into, out] = [subtract(b, a), subtract(c, b)];
    const turn = Math.abs(Math.atan2(cross(into, out), into.x * out.x + into.y * out.y));
    // an arc takes radius·tan(turn/2) of either edge, and its neighbour may take as much
    const taken = 2.2 * radius * Math.tan(turn / 2);
    if (Math.hypot(into.x, into.y) >= taken && Math.hypot(out.x, out.y) >= taken) contour = fillet(contour, i, radius);
  }
  return contour;
}

/** Points of a regular octagon round a place; its flats lie `apothem` off it. */
export const octagon = ({ x, y }: Point, apothem: number): Point[] =>
  Array.from({ length: 8 }, (_, i) => {
    const corner = polar(apothem / Math.cos(Math.PI / 8), ((2 * i + 1) * Math.PI) / 8);
    return { x: x + corner.x, y: y + corner.y };
  });

/** A box as an opening: clockwise. */
export const boxOpening = (fromX: number, fromY: number, toX: number, toY: number): Contour =>
  contourFromPoints([
    { x: fromX, y: fromY },
    { x: fromX, y: toY },
    { x: toX, y: toY },
    { x: toX, y: fromY },
  ]);
