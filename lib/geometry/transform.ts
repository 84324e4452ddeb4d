import { element } from './element.js';
import { reversed } from './contour.js';
import type { Contour, Path, Placement, Point, Vertex } from './types.js';

/** Sine and cosine of whole degrees that are exact for quarter turns, so that a part laid square stays square. */
function turn(rotationDeg: number): { cos: number; sin: number } {
  const quarters = rotationDeg / 90;
  if (Number.isInteger(quarters)) {
    const k = ((quarters % 4) + 4) % 4;
    return { cos: element([1, 0, -1, 0], k), sin: element([0, 1, 0, -1], k) };
  }
  const angle = (rotationDeg * Math.PI) / 180;
  return { cos: Math.cos(angle), sin: Math.sin(angle) };
}

/** The point mirrored (x to -x, when asked), turned about the origin, then moved. */
export function placePoint(point: Point, placement: Placement): Point {
  const { cos, sin } = turn(placement.rotationDeg);
  const x = placement.mirrored ? -point.x : point.x;
  return { x: placement.x + x * cos - point.y * sin, y: placement.y + x * sin + point.y * cos };
}

/**
 * A ring or path as placed. Mirroring turns a ring's sense round; the order of the vertices is therefore reversed
 * (vertex i becomes n-1-i), so that an outer contour stays anticlockwise and an opening clockwise. A mirrored open
 * path is run from its other end.
 */
export function placeVertices(vertices: Contour | Path, placement: Placement): Vertex[] {
  const placed = vertices.map((v) => {
    const { x, y } = placePoint(v, placement);
    return { x, y, bulge: placement.mirrored && v.bulge !== 0 ? -v.bulge : v.bulge };
  });
  return placement.mirrored ? reversed(placed) : placed;
}
