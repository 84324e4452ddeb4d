/** A part as its drawing shows it: turned and moved so that measures begin at the origin. */
import {
  bounds,
  type Contour,
  type Path,
  placePoint,
  type Placement,
  placeVertices,
  type Point,
} from '../../geometry/index.js';
import { directionOf } from './direction.js';
import { type EdgeHole, type Hole, type LineMark, type Part, ringsOf, type TextMark } from '../../part/index.js';

export interface View {
  readonly turnDeg: number;
  readonly datum: Point;
  /** Measures begin at a middle, and what repeats round it is given by its pitch. */
  readonly polar: boolean;
  /** Alike above and below the x axis. */
  readonly symmetric: boolean;
  /** Outline, then openings, then pockets. */
  readonly rings: readonly Contour[];
  /** How deep each pocket is, by its place among the rings. */
  readonly depths: ReadonlyMap<number, number>;
  readonly holes: readonly Hole[];
  readonly edgeHoles: readonly EdgeHole[];
  readonly lines: readonly (LineMark & { readonly vertices: Path })[];
  readonly texts: readonly (TextMark & Point)[];
  /** Direction of the first scribed line that points at the origin, radians; 0 where none does. */
  readonly base: number;
}

/** Vertices closer than this are one, mm. */
const SAME = 1e-4;

const isOrigin = ({ x, y }: Point): boolean => Math.hypot(x, y) < SAME;

/** Alike above and below a level line: every vertex has its mirror image. */
function isSymmetric(ring: Contour): boolean {
  return ring.every(({ x, y }) => ring.some((other) => Math.abs(other.x - x) < SAME && Math.abs(other.y + y) < SAME));
}

const isDisc = (ring: Contour): boolean => {
  const radius = Math.hypot(ring[0]?.x ?? 0, ring[0]?.y ?? 0);
  return radius > SAME && ring.every((v) => Math.abs(Math.hypot(v.x, v.y) - radius) < SAME && v.bulge > 0.5);
};

/** Whether a part is measured from the dish's axis. */
function isPolar({ kind, outline }: Part): boolean {
  return kind === 'hub' || kind === 'board' || isDisc(outline);
}

/** A segment of the board begins on the axis, and its first edge is what it is set out from. */
function turnOf({ kind, outline }: Part): number {
  const [first, next] = outline;
  if (kind !== 'board' || first === undefined || next === undefined || !isOrigin(first)) return 0;
  return (-Math.atan2(next.y, next.x) * 180) / Math.PI;
}

function baseOf(lines: readonly LineMark[]): number {
  for (const { vertices } of lines) {
    const [a, b, more] = vertices;
    if (a === undefined || b === undefined || more !== undefined) continue;
    if (Math.abs(a.x * b.y - a.y * b.x) < SAME * Math.hypot(b.x, b.y) && a.x * b.x + a.y * b.y > 0)
      return directionOf(b);
  }
  return 0;
}

/** The part as its front is seen. */
export function viewOf(part: Part): View {
  const polar = isPolar(part);
  const turnDeg = turnOf(part);
  const turn: Placement = { x: 0, y: 0, rotationDeg: turnDeg, mirrored: false };
  const turned = placeVertices(part.outline, turn);
  const box = bounds(turned);
  const curved = part.outline.filter(({ bulge }) => bulge !== 0).length > 1;
  const symmetric = !polar && curved && isSymmetric(turned);
  const datum = polar ? { x: 0, y: 0 } : { x: box.minX, y: symmetric ? 0 : box.minY };
  const place: Placement = { ...turn, x: -datum.x, y: -datum.y };
  const lines = part.marks.flatMap((mark) =>
    mark.kind === 'line' ? [{ ...mark, vertices: placeVertices(mark.vertices, place) }] : [],
  );
  const through = ringsOf(part);
  return {
    turnDeg,
    datum,
    polar,
    symmetric,
    rings: [...through, ...part.pockets.map(({ ring }) => ring)].map((ring) => placeVertices(ring, place)),
    depths: new Map(part.pockets.map(({ depth }, i) => [through.length + i, depth])),
    holes: part.holes.map((hole) => ({ ...hole, ...placePoint(hole, place) })),
    edgeHoles: part.edgeHoles.map((hole) => ({
      ...hole,
      ...placePoint(hole, place),
      direction: hole.direction + (turnDeg * Math.PI) / 180,
    })),
    lines,
    texts: part.marks.flatMap((mark) => (mark.kind === 'text' ? [{ ...mark, ...placePoint(mark, place) }] : [])),
    base: polar ? baseOf(lines) : 0,
  };
}
