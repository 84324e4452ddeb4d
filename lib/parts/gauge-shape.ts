/** The shape of a gauge: the finished curve below, a straight back above, windows along the curve. */
import {
  circle,
  contourFromPoints,
  edgesOfPath,
  type Path,
  pathLength,
  type Point,
  pointOnEdge,
  edgeLength,
  reversed,
  strokeTextWidth,
  tangentOnEdge,
  type Vertex,
} from '../geometry/index.js';
import type { Label, PartContour } from './types.js';

/** Sizes of a gauge, mm: common practice, no source. */
const size = { overhang: 15, back: 70, window: 26, windowEvery: 90, windowFromEdge: 8 };

/** A curve as a gauge follows it, from left to right, and where its marks stand on it. */
export interface GaugeCurve {
  readonly path: Path;
  /** Places on the curve that are marked across the gauge, with their names and the side these stand on. */
  readonly marks: readonly { readonly at: Point; readonly text: string; readonly side: 'left' | 'right' }[];
}

/** The gauge's rings, from its lower left end anticlockwise, and the edges that are the curve. */
export interface GaugeShape {
  readonly contours: readonly PartContour[];
  readonly labels: readonly Label[];
  readonly curve: { readonly from: number; readonly to: number };
}

/** The place a length along a path, and the direction there. */
function along(path: Path, length: number): { readonly at: Point; readonly tangent: Point } {
  const edges = edgesOfPath(path);
  let left = length;
  for (const edge of edges) {
    const own = edgeLength(edge);
    if (left <= own) return { at: pointOnEdge(edge, left / own), tangent: tangentOnEdge(edge, left / own) };
    left -= own;
  }
  const last = edges.at(-1)!;
  return { at: last.to, tangent: tangentOnEdge(last, 1) };
}

/**
 * A gauge over a curve that runs to the right and opens upward. It goes on straight past both ends, so that the ends
 * of the work lie under its edge.
 * @param title lettered along the back
 */
export function gaugeShape(curve: GaugeCurve, title: string): GaugeShape {
  const { path } = curve;
  const edges = edgesOfPath(path);
  const [first, last] = [edges[0]!, edges.at(-1)!];
  const [before, after] = [tangentOnEdge(first, 0), tangentOnEdge(last, 1)];
  const start = { x: first.from.x - size.overhang * before.x, y: first.from.y - size.overhang * before.y };
  const end = { x: last.to.x + size.overhang * after.x, y: last.to.y + size.overhang * after.y };
  const under: Vertex[] = [
    { ...start, bulge: 0 },
    ...path.map((v, i) => (i === path.length - 1 ? { ...v, bulge: 0 } : v)),
    { ...end, bulge: 0 },
  ];
  const outline = [
    ...under,
    { x: end.x, y: end.y + size.back, bulge: 0 },
    { x: start.x, y: start.y + size.back, bulge: 0 },
  ];

  const length = pathLength(path);
  const count = Math.max(1, Math.round(length / size.windowEvery));
  const windows = Array.from({ length: count }, (_, i): PartContour => {
    const { at, tangent } = along(path, (length * (i + 0.5)) / count);
    const up = size.windowFromEdge + size.window / 2;
    const centre = { x: at.x - up * tangent.y, y: at.y + up * tangent.x };
    return { operation: 'opening', closed: true, vertices: reversed(circle(centre, size.window / 2)) };
  });
  const marks = curve.marks.map(({ at }): PartContour => ({
    operation: 'scribe',
    closed: false,
    vertices: contourFromPoints([at, { x: at.x, y: at.y + size.back / 2 }]),
  }));
  const back = Math.atan2(end.y - start.y, end.x - start.x);
  const height = 7;
  const onBack = (forth: number, down: number): Point => ({
    x: start.x + forth * Math.cos(back) + down * Math.sin(back),
    y: start.y + size.back + forth * Math.sin(back) - down * Math.cos(back),
  });
  const span = Math.hypot(end.x - start.x, end.y - start.y);
  return {
    contours: [{ operation: 'outline', closed: true, vertices: outline }, ...windows, ...marks],
    labels: [
      { text: title, ...onBack(0.1 * span, height * 2), height, angle: back },
      ...curve.marks.map(({ at, text, side }) => ({
        text,
        x: side === 'right' ? at.x + 2 : at.x - 2 - strokeTextWidth(text, 5),
        y: at.y + size.back / 2 - 2 - 5,
        height: 5,
        angle: 0,
      })),
    ],
    curve: { from: 1, to: path.length - 1 },
  };
}
