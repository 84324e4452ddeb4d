/**
 * The clamp hole of a rib, near the rim. There top and underside of the rib are askew, and the jaws of a clamp from
 * one to the other creep; through a hole they close square to the panel.
 */
import {
  circle,
  type Contour,
  distance,
  edgeLength,
  edgesOf,
  edgesOfPath,
  element,
  nearestOnEdge,
  type Path,
  type Point,
  pointOnEdge,
  reversed,
  tangentOnEdge,
} from '../geometry/index.js';

/** Wood left all round, which the arm presses on, mm: common practice, no source. */
const wood = 20;
/** Jaws on surfaces that are less askew hold by friction: about the least friction of dry wood; from memory. */
const minWedge = Math.atan(0.2);
/** A hole farther from the rim than this share of the rib is of no use there. */
const reachShare = 1 / 3;
/** Steps of the search along the rib, mm. */
const step = 2;

/** What a clamp hole needs to know of a rib: its outline, top from the inner end to the rim, and underside. */
interface RibShape {
  readonly outline: Contour;
  readonly top: Path;
  readonly underside: readonly Point[];
}

/** Angle between the top at the rim and the underside below it, radians. */
function wedge({ top, underside }: RibShape): number {
  const edges = edgesOfPath(top);
  const slope = tangentOnEdge(element(edges, edges.length - 1), 1);
  const [from, to] = [element(underside, underside.length - 2), element(underside, underside.length - 1)];
  return Math.abs(Math.atan2(slope.y, slope.x) - Math.atan2(to.y - from.y, to.x - from.x));
}

/**
 * The hole as an opening, as close to the rim as it has wood all round; null where a clamp needs none, and where the
 * rib is too slender for one.
 * @param diameter mm
 * @param keep places with this wood round them too, such as pilots
 */
export function clampHole(rib: RibShape, diameter: number, keep: readonly Point[]): Contour | null {
  if (wedge(rib) < minWedge) return null;
  const edges = edgesOf(rib.outline);
  const apart = diameter / 2 + wood;
  // to the last digit it may lie nearer to the curve that it is set off from
  const clear = (1 - 1e-9) * apart;
  const [start, end] = [element(rib.top, 0), element(rib.top, rib.top.length - 1)];
  for (const edge of edgesOfPath(rib.top).toReversed()) {
    const steps = Math.ceil(edgeLength(edge) / step);
    for (let i = steps; i >= 0; i -= 1) {
      const at = pointOnEdge(edge, i / steps);
      if (end.x - at.x > reachShare * (end.x - start.x)) return null;
      const along = tangentOnEdge(edge, i / steps);
      const centre = { x: at.x + apart * along.y, y: at.y - apart * along.x };
      if (
        edges.every((other) => nearestOnEdge(other, centre).distance >= clear) &&
        keep.every((place) => distance(place, centre) >= apart)
      )
        return reversed(circle(centre, diameter / 2));
    }
  }
  return null;
}
