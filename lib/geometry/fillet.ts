import { bulgeOfSweep } from './arc.js';
import { add, cross, distance, dot, scale, subtract, unit } from './point.js';
import type { Contour, Vertex } from './types.js';

/**
 * The ring with the corner at vertex `index` rounded by an arc of `radius` (mm, above 0) that is tangent to both of
 * its edges. The vertex is replaced by two, so later indices move up by one; a corner without a turn stays as it is.
 * Throws RangeError when an edge at the corner is an arc, or too short for the radius.
 */
export function fillet(contour: Contour, index: number, radius: number): Contour {
  const n = contour.length;
  const corner = contour[index];
  const before = contour[(index + n - 1) % n];
  const after = contour[(index + 1) % n];
  if (corner === undefined || before === undefined || after === undefined) {
    throw new RangeError(`a ring of ${n} vertices has no vertex ${index}`);
  }
  if (!(radius > 0)) throw new RangeError(`a corner is rounded by a radius above 0 mm, not ${radius}`);
  if (corner.bulge !== 0 || before.bulge !== 0) throw new RangeError('only a corner of two straight edges is rounded');
  const incoming = unit(subtract(corner, before));
  const outgoing = unit(subtract(after, corner));
  const sweep = Math.atan2(cross(incoming, outgoing), dot(incoming, outgoing));
  if (Math.abs(sweep) < 1e-12) return contour;
  const setback = radius * Math.tan(Math.abs(sweep) / 2);
  const room = Math.min(distance(before, corner), distance(corner, after));
  if (!(setback <= room)) {
    throw new RangeError(
      `the edges at vertex ${index} are ${room} mm long, a radius of ${radius} mm needs ${setback} mm`,
    );
  }
  const start: Vertex = { ...add(corner, scale(incoming, -setback)), bulge: bulgeOfSweep(sweep) };
  const end: Vertex = { ...add(corner, scale(outgoing, setback)), bulge: 0 };
  return [...contour.slice(0, index), start, end, ...contour.slice(index + 1)];
}
