/**
 * Rings grown and shrunk by a distance, with arcs kept as arcs.
 *
 * Stages, after Xu-Zheng Liu, Jun-Hai Yong, Guo-Qin Zheng and Jia-Guang Sun, An offset algorithm for polyline curves,
 * Computers in Industry 58 (2007), from memory: every edge's parallel and, at every corner that opens, an arc about
 * it; all of them cut wherever they meet; those runs dropped that lie closer to the source than the distance; the
 * rest stitched into rings. All rings of a region go in together, so that an offset outline and an offset opening
 * that run into each other are trimmed as well.
 */
import { element } from './element.js';
import { type Edge, pointOnEdge } from './arc.js';
import { indexBoxes } from './box-index.js';
import { edgeBounds, edgesOf } from './contour.js';
import { distance as separation } from './point.js';
import { nearestOnEdge } from './distance.js';
import { parallelsOfRing } from './parallel.js';
import { cutAtIntersections } from './pieces.js';
import { SAME_CORNER } from './precision.js';
import { stitch } from './stitch.js';
import type { Contour, Point, Vertex } from './types.js';

/** An edge shorter than this (mm) is a speck: rounding alone turns it. */
const SPECK = 1e-6;
/** A run of an offset is dropped when its middle comes closer to the source than the distance less this (mm). */
const CLOSER = 1e-8;

/** Tells whether any of the edges comes closer to a point than `distance`. */
function closenessTo(edges: readonly Edge[], distance: number): (point: Point) => boolean {
  const index = indexBoxes(edges.map(edgeBounds));
  return (point) => {
    const box = { minX: point.x, minY: point.y, maxX: point.x, maxY: point.y };
    return index.touching(box, distance).some((i) => nearestOnEdge(element(edges, i), point).distance < distance);
  };
}

/** The ring without edges too short to have a direction: the next edge starts where they did. */
function withoutSpecks(ring: Contour): Contour {
  const kept: Vertex[] = [];
  for (const vertex of ring) {
    const last = kept.at(-1);
    if (last !== undefined && separation(last, vertex) < SPECK)
      kept[kept.length - 1] = { ...last, bulge: vertex.bulge };
    else kept.push(vertex);
  }
  while (kept.length > 1 && separation(kept.at(-1)!, element(kept, 0)) < SPECK) kept.pop();
  return kept;
}

/**
 * Rings of a region (outer rings anticlockwise, openings clockwise, none crossing another or itself) with the
 * material grown by `distance` mm all round, or shrunk if it is negative. Corners of the material are rounded
 * by an arc, corners of the waste stay sharp. Rings that close up vanish, necks separate; the result is exact to 1e-6 mm
 * and keeps the orientation of rings. A distance too
 * small to matter (1e-7 mm) returns the rings unchanged.
 */
export function offsetRings(rings: readonly Contour[], distance: number): Contour[] {
  if (!Number.isFinite(distance)) throw new RangeError(`an offset needs a distance in mm, not ${distance}`);
  if (Math.abs(distance) <= SAME_CORNER) return [...rings];
  const source = rings.map((ring) => edgesOf(withoutSpecks(ring)));
  const parallels = source.flatMap((edges) => parallelsOfRing(edges, distance));
  const tooClose = closenessTo(source.flat(), Math.abs(distance) - CLOSER);
  const kept = cutAtIntersections(parallels).filter(({ edge, t0, t1 }) => !tooClose(pointOnEdge(edge, (t0 + t1) / 2)));
  return stitch(kept);
}

/**
 * One ring, grown by `distance` mm of material (negative: shrunk). The material lies left of the ring: an outer ring
 * (anticlockwise) grows, an opening (clockwise) shrinks. See `offsetRings`.
 */
export function offsetContour(contour: Contour, distance: number): Contour[] {
  return offsetRings([contour], distance);
}

/** A region of one outer ring and its openings, grown by `distance` mm (negative: shrunk). See `offsetRings`. */
export function offsetRegion(outer: Contour, openings: readonly Contour[], distance: number): Contour[] {
  return offsetRings([outer, ...openings], distance);
}
