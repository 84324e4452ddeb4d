import { edgeArc } from './arc.js';
import { isNearContour } from './distance.js';
import { cyclic, element } from './element.js';
import type { Contour, Point } from './types.js';

export type Side = 'inside' | 'outside' | 'on';

/**
 * Positive when p lies left of the line from a to b, negative right. A point on the line counts as if it lay a
 * trifle above it, or beside it for an upright line, so that every line through a point decides the same way.
 */
function sideOf(p: Point, a: Point, b: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const side = dx * (p.y - a.y) - dy * (p.x - a.x);
  if (side !== 0) return side;
  return dx !== 0 ? dx : -dy;
}

/**
 * Whether a point lies inside a closed ring (either sense of travel), arcs exact. `on` within `samePoint` (mm) of
 * an edge. Even-odd rule, for rings that do not cross themselves.
 */
export function sideOfContour(contour: Contour, point: Point, samePoint: number): Side {
  if (isNearContour(contour, point, samePoint)) return 'on';
  let inside = false;
  for (let i = 0; i < contour.length; i++) {
    const from = element(contour, i);
    const to = cyclic(contour, i + 1);
    const side = sideOf(point, from, to);
    // a level ray to the right crosses the chord when the chord passes the point's height on that side
    if (from.y <= point.y !== to.y <= point.y && side > 0 === from.y <= point.y) inside = !inside;
    // between chord and arc the count is the other way round
    if (from.bulge !== 0 && side > 0 !== from.bulge > 0) {
      const edge = edgeArc(from, to);
      if (edge.kind === 'arc' && Math.hypot(point.x - edge.centre.x, point.y - edge.centre.y) < edge.radius)
        inside = !inside;
    }
  }
  return inside ? 'inside' : 'outside';
}
