/** Measuring and making rings and open paths, exact with arcs. */
import { type Edge, edgeArc, edgeLength } from './arc.js';
import { cyclic, element } from './element.js';
import { polar } from './point.js';
import type { Bounds, Contour, Path, Point, Vertex } from './types.js';

/** The edges of a closed ring, edge i starting at vertex i. */
export function edgesOf(contour: Contour): Edge[] {
  return contour.map((v, i) => edgeArc(v, cyclic(contour, i + 1)));
}

/** The edges of an open path: one fewer than vertices. */
export function edgesOfPath(path: Path): Edge[] {
  return path.slice(0, -1).map((v, i) => edgeArc(v, element(path, i + 1)));
}

/** θ - sin θ without loss of digits for small θ. */
function angleLessSine(angle: number): number {
  if (Math.abs(angle) > 0.1) return angle - Math.sin(angle);
  const square = angle * angle;
  return ((angle * square) / 6) * (1 - (square / 20) * (1 - (square / 42) * (1 - square / 72)));
}

/** Area of a closed ring (mm²), arcs exact: positive when it runs anticlockwise. */
export function signedArea(contour: Contour): number {
  const origin = contour[0];
  if (origin === undefined) return 0;
  let twice = 0;
  for (let i = 0; i < contour.length; i++) {
    const v = element(contour, i);
    const w = i + 1 < contour.length ? element(contour, i + 1) : origin;
    twice += (v.x - origin.x) * (w.y - origin.y) - (w.x - origin.x) * (v.y - origin.y);
    if (v.bulge === 0) continue;
    const edge = edgeArc(v, w);
    // an arc adds the segment between itself and its chord
    if (edge.kind === 'arc') twice += edge.radius * edge.radius * angleLessSine(edge.sweep);
  }
  return twice / 2;
}

/** Length of a closed ring (mm), arcs exact. */
export function perimeter(contour: Contour): number {
  return edgesOf(contour).reduce((sum, edge) => sum + edgeLength(edge), 0);
}

/** Length of an open path (mm), arcs exact. */
export function pathLength(path: Path): number {
  return edgesOfPath(path).reduce((sum, edge) => sum + edgeLength(edge), 0);
}

/** Bounding box of one edge, arcs exact. */
export function edgeBounds(edge: Edge): Bounds {
  let minX = Math.min(edge.from.x, edge.to.x);
  let minY = Math.min(edge.from.y, edge.to.y);
  let maxX = Math.max(edge.from.x, edge.to.x);
  let maxY = Math.max(edge.from.y, edge.to.y);
  if (edge.kind === 'arc') {
    const low = Math.min(edge.startAngle, edge.startAngle + edge.sweep);
    const high = Math.max(edge.startAngle, edge.startAngle + edge.sweep);
    const quarter = Math.PI / 2;
    for (let k = Math.ceil(low / quarter); k * quarter <= high; k++) {
      const side = ((k % 4) + 4) % 4;
      if (side === 0) maxX = Math.max(maxX, edge.centre.x + edge.radius);
      else if (side === 1) maxY = Math.max(maxY, edge.centre.y + edge.radius);
      else if (side === 2) minX = Math.min(minX, edge.centre.x - edge.radius);
      else minY = Math.min(minY, edge.centre.y - edge.radius);
    }
  }
  return { minX, minY, maxX, maxY };
}

/** The box around several boxes. Throws RangeError for none. */
export function boundsOfAll(boxes: readonly Bounds[]): Bounds {
  if (boxes.length === 0) throw new RangeError('an empty list has no bounds');
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (const box of boxes) {
    minX = Math.min(minX, box.minX);
    minY = Math.min(minY, box.minY);
    maxX = Math.max(maxX, box.maxX);
    maxY = Math.max(maxY, box.maxY);
  }
  return { minX, minY, maxX, maxY };
}

/**
 * Bounding box (mm), arcs exact. Serves closed rings, and open paths too: the straight edge that would close them
 * stays within the box. Throws RangeError for an empty list.
 */
export function bounds(vertices: Contour | Path): Bounds {
  if (vertices.length === 0) throw new RangeError('an empty list has no bounds');
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  const arcs: Bounds[] = [];
  vertices.forEach((v, i) => {
    minX = Math.min(minX, v.x);
    minY = Math.min(minY, v.y);
    maxX = Math.max(maxX, v.x);
    maxY = Math.max(maxY, v.y);
    // the corners hold a straight edge
    if (v.bulge !== 0) arcs.push(edgeBounds(edgeArc(v, cyclic(vertices, i + 1))));
  });
  const corners = { minX, minY, maxX, maxY };
  return arcs.length === 0 ? corners : boundsOfAll([corners, ...arcs]);
}

/**
 * The same ring run the other way: vertex i becomes vertex n-1-i. Serves open paths too, whose last bulge is 0.
 */
export function reversed(vertices: Contour | Path): Vertex[] {
  const n = vertices.length;
  return vertices.map((_, i) => {
    const v = element(vertices, n - 1 - i);
    const { bulge } = element(vertices, (2 * n - 2 - i) % n);
    return { x: v.x, y: v.y, bulge: bulge === 0 ? 0 : -bulge };
  });
}

/** The ring, run anticlockwise (as an outer contour is). */
export function anticlockwise(contour: Contour): Contour {
  return signedArea(contour) < 0 ? reversed(contour) : contour;
}

/** The ring, run clockwise (as an opening is). */
export function clockwise(contour: Contour): Contour {
  return signedArea(contour) > 0 ? reversed(contour) : contour;
}

/** A ring or path of straight edges through the points. */
export function contourFromPoints(points: readonly Point[]): Vertex[] {
  return points.map(({ x, y }) => ({ x, y, bulge: 0 }));
}

/** A rectangle with sides along the axes, anticlockwise from its lower left corner. */
export function rectangle(minX: number, minY: number, maxX: number, maxY: number): Contour {
  return contourFromPoints([
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ]);
}

/** A circle of two half-circle arcs, anticlockwise from its +x side. Radius in mm, above 0. */
export function circle(centre: Point, radius: number): Contour {
  return [
    { x: centre.x + radius, y: centre.y, bulge: 1 },
    { x: centre.x - radius, y: centre.y, bulge: 1 },
  ];
}

/**
 * A regular polygon with its corners on a circle of `radius` (mm), anticlockwise, the first corner in the direction
 * `firstAngle` (radians). At least 3 sides.
 */
export function regularPolygon(centre: Point, radius: number, sides: number, firstAngle = 0): Contour {
  return contourFromPoints(
    Array.from({ length: sides }, (_, k) => polar(radius, firstAngle + (2 * Math.PI * k) / sides, centre)),
  );
}
