/**
 * Relief of inside corners: where a mating part must seat, a round tool goes on along the bisector of the corner
 * until its edge just reaches the corner (common practice, no source: the dog-bone of joinery cut on routers).
 */
import {
  add,
  type ArcEdge,
  bulgeOfSweep,
  type Contour,
  cyclic,
  distance,
  dot,
  type Edge,
  edgeArc,
  element,
  intersectEdges,
  leftOf,
  type Point,
  pointOnEdge,
  scale,
  type StraightEdge,
  tangentOnEdge,
  turnBetween,
  unit,
  type Vertex,
} from '../geometry/index.js';

/** A corner that the tool cannot square out: the corner, the way out of it into the waste, half the waste's angle. */
export interface InsideCorner {
  readonly corner: Point;
  readonly outward: Point;
  readonly halfAngle: number;
}

/** Corners closer than this (mm) are one; a turn below this (radians) is no corner. */
const SAME_POINT = 1e-6;
const MIN_TURN = 1e-3;

function edgesAt(ring: Contour, index: number): { before: Edge; after: Edge } {
  const vertex = element(ring, index);
  return {
    before: edgeArc(cyclic(ring, index - 1), vertex),
    after: edgeArc(vertex, cyclic(ring, index + 1)),
  };
}

/** The inside corner at a vertex of a ring (material to its left); null where the tool passes outside of the corner. */
export function insideCorner(ring: Contour, index: number): InsideCorner | null {
  const { before, after } = edgesAt(ring, index);
  const turn = turnBetween(before, after);
  if (turn > -MIN_TURN) return null;
  const outward = unit(add(scale(tangentOnEdge(before, 1), -1), tangentOnEdge(after, 0)));
  return { corner: element(ring, index), outward, halfAngle: (Math.PI + turn) / 2 };
}

/** Where the centre of a tool of `radius` mm stands when its edge just reaches the corner. */
function reliefCentre({ corner, outward }: InsideCorner, radius: number): Point {
  return add(corner, scale(outward, radius));
}

/**
 * The tool's path with a spur into the corner: from the path's nearest vertex to the relief's centre and back. The
 * path stays as it is when it does not come to this corner, or already reaches it.
 */
export function spurInto(path: Contour, corner: InsideCorner, radius: number): Contour {
  const expected = radius / Math.sin(corner.halfAngle);
  let nearest = -1;
  let away = 1.05 * expected;
  path.forEach((v, i) => {
    const off = distance(v, corner.corner);
    if (off < away) {
      away = off;
      nearest = i;
    }
  });
  const from = path[nearest];
  if (from === undefined || away <= radius + SAME_POINT) return path;
  const spur: Vertex[] = [
    { x: from.x, y: from.y, bulge: 0 },
    { ...reliefCentre(corner, radius), bulge: 0 },
  ];
  return [...path.slice(0, nearest), ...spur, ...path.slice(nearest)];
}

/** What the tool's spur bounds, from the side of the edge before the corner to that of the edge after it. */
interface Spur {
  readonly wallIn: StraightEdge;
  readonly end: ArcEdge;
  readonly wallOut: StraightEdge;
}

function spurOf(corner: InsideCorner, before: Edge, radius: number): Spur {
  const centre = reliefCentre(corner, radius);
  const across = leftOf(corner.outward);
  const side = dot(across, scale(tangentOnEdge(before, 1), -1)) > 0 ? 1 : -1;
  const from = add(centre, scale(across, side * radius));
  const to = add(centre, scale(across, -side * radius));
  const away = scale(corner.outward, radius / Math.sin(corner.halfAngle));
  return {
    wallIn: { kind: 'straight', from: add(from, away), to: from },
    end: {
      kind: 'arc',
      from,
      to,
      centre,
      radius,
      startAngle: Math.atan2(from.y - centre.y, from.x - centre.x),
      sweep: side * Math.PI,
    },
    wallOut: { kind: 'straight', from: to, to: add(to, away) },
  };
}

/** A place on an edge and on the wall or the round end of the spur. */
interface Gate {
  readonly onEdge: number;
  readonly point: Point;
  readonly onEnd: number | null;
}

/** The fraction of the round end that a place on a wall is, where the two run into each other; null elsewhere. */
function fractionAtEnd(place: Point, end: ArcEdge): number | null {
  if (distance(place, end.from) < SAME_POINT) return 0;
  return distance(place, end.to) < SAME_POINT ? 1 : null;
}

/** Where the spur's side leaves the edge: the place farthest from the corner. */
function gate(edge: Edge, wall: StraightEdge, end: ArcEdge, cornerAt: 0 | 1): Gate | null {
  const found: Gate[] = [];
  for (const part of [wall, end]) {
    const contact = intersectEdges(edge, part);
    if (contact.kind === 'none') continue;
    for (const m of contact.points) {
      found.push({ onEdge: m.onA, point: m, onEnd: part === end ? m.onB : fractionAtEnd(m, end) });
    }
  }
  const away = (g: Gate): number => Math.abs(g.onEdge - cornerAt);
  const best = found.reduce<Gate | null>((a, b) => (a === null || away(b) > away(a) ? b : a), null);
  return best === null || away(best) < SAME_POINT ? null : best;
}

/**
 * The finished edge with the corner at vertex `index` opened by the tool's spur: what the part really looks like
 * there. The ring as it is when an edge at the corner is too short to hold the relief.
 */
export function relieveEdge(ring: Contour, index: number, radius: number): Contour {
  const corner = insideCorner(ring, index);
  if (corner === null) return ring;
  const { before, after } = edgesAt(ring, index);
  const spur = spurOf(corner, before, radius);
  const enter = gate(before, spur.wallIn, spur.end, 1);
  const leave = gate(after, spur.wallOut, spur.end, 0);
  if (enter === null || leave === null) return ring;

  const from = enter.onEnd ?? 0;
  const to = leave.onEnd ?? 1;
  const middle: Vertex[] = enter.onEnd === null ? [{ ...pointOf(enter.point), bulge: 0 }] : [];
  middle.push({ ...pointOnEdge(spur.end, from), bulge: bulgeOfSweep(spur.end.sweep * (to - from)) });
  if (leave.onEnd === null) middle.push({ ...pointOnEdge(spur.end, 1), bulge: 0 });
  const rest = after.kind === 'arc' ? bulgeOfSweep(after.sweep * (1 - leave.onEdge)) : 0;
  const first = cyclic(ring, index - 1);
  const cut: Vertex = { ...first, bulge: before.kind === 'arc' ? bulgeOfSweep(before.sweep * enter.onEdge) : 0 };
  const turned = [...ring.slice(index), ...ring.slice(0, index)];
  const opened = [...middle, { ...pointOf(leave.point), bulge: rest }, ...turned.slice(1, -1), cut];
  // the vertex that was first stays first, so that runs of edges are found where they were
  const shift = index === 0 ? 0 : opened.length - index;
  return [...opened.slice(shift), ...opened.slice(0, shift)];
}

function pointOf({ x, y }: Point): Point {
  return { x, y };
}
