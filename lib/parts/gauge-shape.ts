/** The shape of a gauge: the finished curve below, a straight back above, windows along the curve. */
import {
  circle,
  type Contour,
  contourFromPoints,
  cyclic,
  edgeLength,
  edgesOfPath,
  element,
  type Path,
  pathLength,
  type Point,
  pointOnEdge,
  reversed,
  strokeTextWidth,
  tangentOnEdge,
  type Vertex,
} from '../geometry/index.js';
import { lineMark, type Mark, textMark } from '../part/index.js';

/** Sizes of a gauge, mm: common practice, no source. */
const size = { overhang: 15, back: 70, window: 26, windowEvery: 90, windowFromEdge: 8, bridge: 25 };

/** What a gauge is the negative of, and how it is lettered. */
export interface GaugeCurve {
  /** The finished curve from the inner end to the rim, running to the right. */
  readonly side: Path;
  /** Whether the gauge reaches over the axis (x = 0) to the opposite rim. */
  readonly full: boolean;
  readonly title: string;
}

/** The gauge, from its lower left end anticlockwise, and the edges of its outline that are the curve. */
export interface GaugeShape {
  readonly outline: Contour;
  readonly windows: readonly Contour[];
  readonly marks: readonly Mark[];
  readonly curve: readonly { readonly from: number; readonly to: number }[];
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
  const last = cyclic(edges, -1);
  return { at: last.to, tangent: tangentOnEdge(last, 1) };
}

const mirrored = (path: Path): Vertex[] =>
  reversed(path.map(({ x, y, bulge }) => ({ x: -x, y, bulge: bulge === 0 ? 0 : -bulge })));

const straight = ({ x, y }: Point): Vertex => ({ x, y, bulge: 0 });

/** Windows along the curve, as circles by their centres. */
function windowCentres(side: Path): Point[] {
  const length = pathLength(side);
  const count = Math.max(1, Math.round(length / size.windowEvery));
  return Array.from({ length: count }, (_, i) => {
    const { at, tangent } = along(side, (length * (i + 0.5)) / count);
    const up = size.windowFromEdge + size.window / 2;
    return { x: at.x - up * tangent.y, y: at.y + up * tangent.x };
  });
}

/**
 * A gauge over a curve that opens upward. It goes on straight past the rim (and past the inner end of a half gauge),
 * so that the ends of the work lie under its edge; a full gauge bridges the hub.
 */
export function gaugeShape({ side, full, title }: GaugeCurve): GaugeShape {
  const edges = edgesOfPath(side);
  const [inner, rim] = [element(edges, 0).from, cyclic(edges, -1).to];
  const [before, after] = [tangentOnEdge(element(edges, 0), 0), tangentOnEdge(cyclic(edges, -1), 1)];
  const end = straight({ x: rim.x + size.overhang * after.x, y: rim.y + size.overhang * after.y });
  const start = full
    ? straight({ x: -end.x, y: end.y })
    : straight({ x: inner.x - size.overhang * before.x, y: inner.y - size.overhang * before.y });
  const right: Vertex[] = [...side.slice(0, -1), straight(cyclic(side, -1))];
  const left = mirrored(right);
  const bridge = inner.y + size.bridge;
  const under = full
    ? [
        ...left.slice(0, -1),
        straight(cyclic(left, -1)),
        straight({ x: -inner.x, y: bridge }),
        straight({ x: inner.x, y: bridge }),
      ]
    : [];
  // the back of a full gauge comes down to the middle, so that it is no heavier than it must be
  const top = [
    straight({ x: end.x, y: end.y + size.back }),
    ...(full ? [straight({ x: 0, y: bridge + size.back })] : []),
    straight({ x: start.x, y: start.y + size.back }),
  ];
  const outline = [start, ...under, ...right, end, ...top];
  const last = side.length - 2;
  const curve = full
    ? [
        { from: 1, to: 1 + last },
        { from: side.length + 3, to: side.length + 3 + last },
      ]
    : [{ from: 1, to: 1 + last }];

  const centres = windowCentres(side);
  const windows = [...centres, ...(full ? centres.map(({ x, y }) => ({ x: -x, y })) : [])].map((centre) =>
    reversed(circle(centre, size.window / 2)),
  );
  const places = [
    { at: inner, text: 'INNER', onRight: true },
    { at: rim, text: 'RIM', onRight: false },
  ];
  const ends = full
    ? [...places, ...places.map(({ at, text, onRight }) => ({ at: { x: -at.x, y: at.y }, text, onRight: !onRight }))]
    : places;
  const lines = ends.map(({ at }) => lineMark(contourFromPoints([at, { x: at.x, y: at.y + 0.7 * size.back }])));
  const titleFrom = full ? element(top, 1) : cyclic(top, -1);
  const angle = Math.atan2(element(top, 0).y - titleFrom.y, element(top, 0).x - titleFrom.x);
  const height = 7;
  const letters = 5;
  const inset = 0.1 * (element(top, 0).x - titleFrom.x);
  return {
    outline,
    windows,
    marks: [
      ...lines,
      textMark(
        title,
        {
          x: titleFrom.x + inset * Math.cos(angle) + 2 * height * Math.sin(angle),
          y: titleFrom.y + inset * Math.sin(angle) - 2 * height * Math.cos(angle),
        },
        height,
        angle,
      ),
      ...ends.map(({ at, text, onRight }) =>
        textMark(
          text,
          {
            x: onRight ? at.x + 2 : at.x - 2 - strokeTextWidth(text, letters),
            y: at.y + 0.7 * size.back - letters - 2,
          },
          letters,
        ),
      ),
    ],
    curve,
  };
}
