import { element } from './element.js';
import { type Edge, pointOnEdge } from './arc.js';
import { edgesOf, reversed } from './contour.js';
import { nearestOnContour } from './distance.js';
import { offsetContour, offsetRings } from './offset.js';
import { cutEdges, type EdgePiece } from './pieces.js';
import { stitch } from './stitch.js';
import type { Contour, Point } from './types.js';

/** Edges closer together than this (mm) are the same edge, seen before and after two offsets. */
const SAME_EDGE = 1e-6;

function middle({ edge, t0, t1 }: EdgePiece): Point {
  return pointOnEdge(edge, (t0 + t1) / 2);
}

function whole(edge: Edge, source: number): EdgePiece {
  return { source, edge, t0: 0, t1: 1, from: edge.from, to: edge.to };
}

/**
 * What a disc of `radius` mm cannot sweep of the waste beside a ring (outside an anticlockwise outline, inside a
 * clockwise opening): inside corners and necks, as anticlockwise rings with the disc's arcs exact. The material
 * grown by the radius and shrunk again is what the disc leaves standing; the answer is that less the ring. An
 * opening that the disc does not enter at all comes back whole.
 */
export function unswept(ring: Contour, radius: number): Contour[] {
  const centres = offsetContour(ring, radius);
  if (centres.length === 0) return [reversed(ring)];
  const left = offsetRings(centres, -radius);
  const onRing = (p: Point): boolean => nearestOnContour(ring, p).distance <= SAME_EDGE;
  const onLeft = (p: Point): boolean => left.some((other) => nearestOnContour(other, p).distance <= SAME_EDGE);

  const arcs = left.flatMap(edgesOf).filter((edge) => !onRing(pointOnEdge(edge, 0.5)));
  const back = reversed(ring);
  const cuts: number[][] = back.map(() => []);
  for (const end of arcs.flatMap((arc) => [arc.from, arc.to])) {
    const { edge, fraction } = nearestOnContour(back, end);
    element(cuts, edge).push(fraction);
  }
  const runs = cutEdges(edgesOf(back), cuts).filter((piece) => !onLeft(middle(piece)));
  return stitch([...runs, ...arcs.map((arc, i) => whole(arc, back.length + i))]);
}
