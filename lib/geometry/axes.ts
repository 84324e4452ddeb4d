/**
 * A machine whose axes are not true: what it makes of a place that it is sent to, and where it has to be sent. It makes
 * of x, y the place (scaleX x + lean y, scaleY y), so every part comes out stretched and leaning; sent to the places
 * that this maps onto the true ones, it cuts true parts.
 */
import { arcThrough, edgeArc, pointOnEdge } from './arc.js';
import { element } from './element.js';
import type { Path, Point, Vertex } from './types.js';

export interface Axes {
  /** What the machine makes of a length of 1 along each axis. */
  readonly scaleX: number;
  readonly scaleY: number;
  /** How far its y axis leans towards +x, as a share of the length along it. */
  readonly lean: number;
}

/** How far the arcs that stand for a corrected one may leave it, mm: the rounding of the files. */
const arcError = 0.0005;
/** No arc of a corrected path sweeps more (radians): its middle has to say which way round it goes. */
const widest = Math.PI / 2;

/** Where the machine has to be sent to come to a place. */
export function commandedPoint({ scaleX, scaleY, lean }: Axes, { x, y }: Point): Point {
  const across = y / scaleY;
  return { x: (x - lean * across) / scaleX, y: across };
}

/**
 * Sweep of arcs that may stand for an arc of a stretched circle. An ellipse of radius r whose axes differ by the share
 * e leaves the circle through the ends and the middle of a piece of it, over the angle s, by at most 0.064 r e s³
 * (third term of the Taylor series of r(1 + e cos 2φ) about the middle: 8/6 e r, times the greatest value of
 * t(t² - s²/4), which is 0.0481 s³).
 */
function widestSweep({ scaleX, scaleY, lean }: Axes, radius: number): number {
  const stretch = Math.abs(scaleX - scaleY) + Math.abs(lean);
  return stretch === 0 ? widest : Math.min(widest, Math.cbrt(arcError / (0.065 * radius * stretch)));
}

/**
 * A ring or open path as the machine has to be sent along it, so that it runs along the given one. Arcs become one or
 * more arcs that leave the true curve by half a micrometre at most.
 */
export function commandedPath(axes: Axes, vertices: Path, closed: boolean): Vertex[] {
  return vertices.flatMap((vertex, i): Vertex[] => {
    const next = vertices[i + 1] ?? (closed ? vertices[0] : undefined);
    const start = commandedPoint(axes, vertex);
    const edge = next === undefined ? null : edgeArc(vertex, next);
    if (edge?.kind !== 'arc') return [{ ...start, bulge: 0 }];
    const count = Math.max(1, Math.ceil(Math.abs(edge.sweep) / widestSweep(axes, edge.radius) - 1e-9));
    const places = Array.from({ length: 2 * count + 1 }, (_, k) => {
      if (k === 0) return start;
      return commandedPoint(axes, k === 2 * count ? edge.to : pointOnEdge(edge, k / (2 * count)));
    });
    return Array.from({ length: count }, (_, k) => {
      const from = element(places, 2 * k);
      return { ...from, bulge: arcThrough(from, element(places, 2 * k + 1), element(places, 2 * k + 2)) };
    });
  });
}
