/** Rings that can be cut: simple, of a size, apart from one another, outlines and openings known. */
import type { DiagnosticCode } from '../../diagnostic/index.js';
import {
  anticlockwise,
  type Bounds,
  bounds,
  clockwise,
  type Contour,
  distance,
  edgeArc,
  edgeBounds,
  edgesOf,
  element,
  indexBoxes,
  intersectEdges,
  type Point,
  pointOnEdge,
  sideOfContour,
  signedArea,
  simplicity,
  type Vertex,
} from '../../geometry/index.js';
import { ExtraFault, type DrawingMessage, limits } from './drawing.js';
import type { DrawnRing } from './join.js';

/** An edge shorter than this (mm) is a slip of the drawing. */
const shortest = 1e-3;
/** Neighbouring edges meet at one point within this (mm). */
const samePoint = 1e-6;
/** A ring that encloses less (mm²) is nothing that could be cut. */
const minArea = 0.01;

/** An outline with the openings in it. */
export interface ExtraShape {
  readonly outline: Contour;
  readonly openings: readonly Contour[];
  readonly what: string;
  readonly deviation: number;
}

interface Checked extends DrawnRing {
  readonly box: Bounds;
  readonly area: number;
}

/** The ring without edges of no length, arcs of more than half a turn in halves. */
function cleaned(vertices: readonly Vertex[]): Vertex[] {
  const halved = vertices.flatMap((vertex, i) => {
    const next = element(vertices, (i + 1) % vertices.length);
    if (Math.abs(vertex.bulge) <= 1 + 1e-9) return [vertex];
    const edge = edgeArc(vertex, next);
    const middle = pointOnEdge(edge, 0.5);
    const bulge = Math.tan(Math.atan(vertex.bulge) / 2);
    return [
      { ...vertex, bulge },
      { ...middle, bulge },
    ];
  });
  const kept: Vertex[] = [];
  halved.forEach((vertex) => {
    const last = kept.at(-1);
    if (last && distance(last, vertex) < shortest) kept[kept.length - 1] = { ...last, bulge: vertex.bulge };
    else kept.push(vertex);
  });
  const [first, last] = [kept[0], kept.at(-1)];
  if (first && last && kept.length > 1 && distance(first, last) < shortest) kept.pop();
  return kept;
}

/** The ring moved so that `corner` is the origin: near it a double resolves more. */
function moved(vertices: readonly Vertex[], corner: Point): Vertex[] {
  return vertices.map(({ x, y, bulge }) => ({ x: x - corner.x, y: y - corner.y, bulge }));
}

/** Whether two boxes and areas are those of one outline drawn twice. */
function same(a: Checked, b: Checked): boolean {
  const near = (p: number, q: number): boolean => Math.abs(p - q) < 0.01;
  const [m, n] = [a.box, b.box];
  return (
    near(m.minX, n.minX) &&
    near(m.minY, n.minY) &&
    near(m.maxX, n.maxX) &&
    near(m.maxY, n.maxY) &&
    Math.abs(a.area - b.area) < 1e-3 * Math.max(a.area, b.area)
  );
}

const within = (inner: Bounds, outer: Bounds): boolean =>
  inner.minX >= outer.minX && inner.maxX <= outer.maxX && inner.minY >= outer.minY && inner.maxY <= outer.maxY;

/** Where two of the rings meet, each pair of rings once. @throws ExtraFault when there are too many edges to look */
function intersections(rings: readonly Checked[]): { first: number; second: number; place: Point }[] {
  const edges = rings.flatMap(({ vertices }, ring) => edgesOf(vertices).map((edge) => ({ edge, ring })));
  const boxes = edges.map(({ edge }) => edgeBounds(edge));
  const index = indexBoxes(boxes);
  const met = new Map<string, { first: number; second: number; place: Point }>();
  let pairs = 0;
  edges.forEach((a, i) => {
    for (const j of index.touching(element(boxes, i), 0)) {
      if (j <= i) continue;
      pairs += 1;
      // the pairs of one ring are counted here and looked at elsewhere
      if (pairs > limits.pairs)
        throw new ExtraFault(
          'extra-too-much',
          'its edges are too close together to check for crossings',
          'simplify it',
        );
      const b = element(edges, j);
      const key = `${a.ring} ${b.ring}`;
      if (a.ring === b.ring || met.has(key)) continue;
      const contact = intersectEdges(a.edge, b.edge);
      const place = contact.kind === 'none' ? undefined : contact.points[0];
      if (place) met.set(key, { first: a.ring, second: b.ring, place });
    }
  });
  return [...met.values()];
}

/** Rings as outlines with the openings in them: the depth of nesting decides, an island in an opening is an outline. */
function shapesOf(rings: readonly Checked[]): ExtraShape[] {
  const order = [...rings.keys()].sort((a, b) => element(rings, b).area - element(rings, a).area || a - b);
  const around = new Map<number, number | null>();
  const depth = new Map<number, number>();
  order.forEach((ring, rank) => {
    const own = element(rings, ring);
    // rings do not meet, so any vertex decides; the smallest ring round it is looked for first
    let parent: number | null = null;
    for (let i = rank - 1; i >= 0 && parent === null; i--) {
      const other = element(rings, element(order, i));
      if (within(own.box, other.box) && sideOfContour(other.vertices, element(own.vertices, 0), 0) === 'inside')
        parent = element(order, i);
    }
    around.set(ring, parent);
    depth.set(ring, parent === null ? 0 : (depth.get(parent) ?? 0) + 1);
  });
  return rings.flatMap((ring, i): ExtraShape[] => {
    if ((depth.get(i) ?? 0) % 2 !== 0) return [];
    const corner = { x: ring.box.minX, y: ring.box.minY };
    const inner = [...rings.keys()].filter((j) => around.get(j) === i);
    return [
      {
        outline: anticlockwise(moved(ring.vertices, corner)),
        openings: inner.map((j) => clockwise(moved(element(rings, j).vertices, corner))),
        what: ring.what,
        deviation: Math.max(ring.deviation, ...inner.map((j) => element(rings, j).deviation)),
      },
    ];
  });
}

/**
 * The shapes that rings make, each with the lower left corner of its outline at the origin, in the order drawn; and
 * what is wrong with the others.
 * @throws ExtraFault for more than can be checked in reasonable time
 */
export function makeShapes(
  rings: readonly DrawnRing[],
  shown: (point: Point) => string,
): { readonly shapes: readonly ExtraShape[]; readonly findings: readonly DrawingMessage[] } {
  const findings: DrawingMessage[] = [];
  const error = (code: DiagnosticCode, message: string, remedy: string): number =>
    findings.push({ code, severity: 'error', message, remedy });
  if (rings.length > limits.outlines)
    throw new ExtraFault(
      'extra-too-much',
      `it has ${rings.length} outlines, but at most ${limits.outlines} are read from a file`,
      'split it into several files',
    );
  const [start] = rings.flatMap(({ vertices }) => vertices);
  if (!start) return { shapes: [], findings };
  const origin = { x: start.x, y: start.y };
  const there = ({ x, y }: Point): string => shown({ x: x + origin.x, y: y + origin.y });
  const checked: Checked[] = [];
  for (const ring of rings) {
    const vertices = cleaned(moved(ring.vertices, origin));
    const [first] = vertices;
    const area = Math.abs(signedArea(vertices));
    // a figure of eight may enclose nothing on balance: its crossing is reported
    if (!first || vertices.length < 2 || (vertices.length <= 3 && !(area >= minArea))) {
      const at = first ?? moved(ring.vertices.slice(0, 1), origin)[0];
      error('extra-no-area', `${ring.what} encloses nothing${at ? ` at ${there(at)}` : ''}`, 'delete it or redraw it');
      continue;
    }
    if (vertices.length > limits.ringEdges) {
      error(
        'extra-too-much',
        `${ring.what} has ${vertices.length} edges, but at most ${limits.ringEdges} can be nested`,
        'simplify it',
      );
      continue;
    }
    const box = bounds(vertices);
    if (Math.max(box.maxX - box.minX, box.maxY - box.minY) > limits.size) {
      error('extra-too-large', `${ring.what} is larger than 100 m`, 'check the unit of the drawing');
      continue;
    }
    checked.push({ ...ring, vertices, box, area });
  }
  const crossings = intersections(checked);
  checked.forEach(({ what, vertices, area }) => {
    const simple = simplicity(vertices, samePoint);
    if (simple.kind === 'meets-itself')
      error(
        'extra-crossing',
        `${what} crosses or touches itself at ${there(simple.place)}`,
        'redraw it so that it does not',
      );
    else if (!(area >= minArea))
      error(
        'extra-no-area',
        `${what} encloses next to nothing at ${there(element(vertices, 0))}`,
        'delete it or redraw it',
      );
  });
  for (const { first, second, place } of crossings) {
    const [a, b] = [element(checked, first), element(checked, second)];
    if (same(a, b)) error('extra-twice', `${a.what} and ${b.what} are the same outline drawn twice`, 'delete one');
    else
      error(
        'extra-crossing',
        `${a.what} and ${b.what} meet at ${there(place)}`,
        'draw outlines with a gap between them',
      );
  }
  return { shapes: findings.length > 0 ? [] : shapesOf(checked), findings };
}

/** Diameter and centre of a ring that is a circle; null for any other. */
export function asCircle(ring: Contour): { readonly centre: Point; readonly diameter: number } | null {
  if (ring.some(({ bulge }) => bulge === 0)) return null;
  const edges = edgesOf(ring);
  const [first] = edges;
  if (first?.kind !== 'arc') return null;
  const off = (edge: (typeof edges)[number]): boolean =>
    edge.kind !== 'arc' ||
    distance(edge.centre, first.centre) > 1e-4 ||
    Math.abs(edge.radius - first.radius) > 1e-4 ||
    edge.sweep > 0 !== first.sweep > 0;
  return edges.some(off) ? null : { centre: first.centre, diameter: 2 * first.radius };
}
