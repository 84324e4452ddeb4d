/** A ring as it is measured: a circle, flats round a middle, or corners with what lies between them. */
import {
  bounds,
  cross,
  cyclic,
  distance,
  type Edge,
  edgesOf,
  element,
  type Path,
  type Point,
  pointOnEdge,
  rotate,
  tangentOnEdge,
  type Vertex,
} from '../../geometry/index.js';
import { directionOf } from './direction.js';

export interface MeasuredCorner extends Point {
  /** Of the arc that rounds it; null where it is sharp. */
  readonly radius: number | null;
}

export type MeasuredEdge =
  | { readonly kind: 'straight' }
  | {
      readonly kind: 'arc';
      readonly anticlockwise: boolean;
      readonly radius: number;
      readonly centre: Point;
      readonly about: 'origin' | 'measured' | 'neither';
      readonly middle: Point;
    }
  | {
      readonly kind: 'curve';
      readonly along: 'x' | 'y';
      /** From its lower end along that axis. */
      readonly path: Path;
      readonly backwards: boolean;
    };

export type MeasuredRing =
  | { readonly kind: 'circle'; readonly centre: Point; readonly diameter: number }
  /** `direction`: in which the first flat lies from the middle, radians. */
  | { readonly kind: 'regular'; readonly sides: number; readonly radius: number; readonly direction: number }
  | {
      readonly kind: 'corners';
      /** Equal parts round the origin of which these are one. */
      readonly times: number;
      readonly corners: readonly MeasuredCorner[];
      readonly edges: readonly MeasuredEdge[];
    };

/** Points closer than this are one, mm. */
const SAME = 1e-6;
/** Edges whose directions differ by less touch without a corner (sine). */
const TOUCHING = 1e-4;
/** Beyond this sweep the ends of an arc say too little of its middle, radians. */
const MAX_SWEEP = (2 * Math.PI) / 3;

const isStraight = (edge: Edge): boolean => edge.kind === 'straight';

/** Whether one edge runs on into the next without a corner. */
function touches(a: Edge, b: Edge): boolean {
  const [end, start] = [tangentOnEdge(a, 1), tangentOnEdge(b, 0)];
  return Math.abs(cross(end, start)) < TOUCHING && end.x * start.x + end.y * start.y > 0;
}

function circleOf(edges: readonly Edge[]): MeasuredRing | null {
  const first = element(edges, 0);
  if (first.kind !== 'arc' || edges.length > 4) return null;
  const alike = edges.every(
    (edge) => edge.kind === 'arc' && distance(edge.centre, first.centre) < SAME && edge.sweep * first.sweep > 0,
  );
  const sweep = edges.reduce((sum, edge) => sum + (edge.kind === 'arc' ? Math.abs(edge.sweep) : 0), 0);
  if (!alike || Math.abs(sweep - 2 * Math.PI) > 1e-6) return null;
  return { kind: 'circle', centre: first.centre, diameter: 2 * first.radius };
}

/** How often a ring repeats itself round the origin, 1 where it does not. */
function repeats(ring: readonly Vertex[]): number {
  const n = ring.length;
  for (let each = 1; each <= n / 3; each++) {
    if (n % each !== 0) continue;
    for (const turn of [(2 * Math.PI * each) / n, (-2 * Math.PI * each) / n]) {
      const alike = ring.every((vertex, i) => {
        const next = cyclic(ring, i + each);
        return distance(rotate(vertex, turn), next) < 1e-5 && Math.abs(vertex.bulge - next.bulge) < 1e-9;
      });
      if (alike) return n / each;
    }
  }
  return 1;
}

function regularOf(ring: readonly Vertex[]): MeasuredRing | null {
  const [a, b] = [element(ring, 0), element(ring, 1)];
  const middles = ring.map((v, i) => ({ x: (v.x + cyclic(ring, i + 1).x) / 2, y: (v.y + cyclic(ring, i + 1).y) / 2 }));
  const pitch = (2 * Math.PI) / ring.length;
  const direction = Math.min(...middles.map(directionOf));
  if (ring.length < 5 || a.bulge !== 0 || distance(a, b) === 0) return null;
  return {
    kind: 'regular',
    sides: ring.length,
    radius: Math.hypot(middles[0]?.x ?? 0, middles[0]?.y ?? 0),
    direction: direction > pitch - 1e-6 ? 0 : direction,
  };
}

/** Whether a path runs one way only along an axis, with its slope below 2 against it. */
function runsAlong(path: Path, axis: 'x' | 'y'): boolean {
  const other = axis === 'x' ? 'y' : 'x';
  const steps = path.slice(1).map((vertex, i) => {
    const before = element(path, i);
    return { along: vertex[axis] - before[axis], across: Math.abs(vertex[other] - before[other]) };
  });
  const sign = Math.sign(steps[0]?.along ?? 0);
  return sign !== 0 && steps.every(({ along, across }) => along * sign > 0 && across < 3 * Math.abs(along));
}

interface Run {
  readonly from: number;
  /** Number of edges. */
  readonly count: number;
}

/** Runs of arcs that go on into each other; they begin at edge `from`. */
function curveRuns(edges: readonly Edge[]): Run[] {
  const n = edges.length;
  const joins = (i: number): boolean =>
    !isStraight(cyclic(edges, i - 1)) &&
    !isStraight(cyclic(edges, i)) &&
    touches(cyclic(edges, i - 1), cyclic(edges, i));
  const runs: Run[] = [];
  for (let from = 0; from < n; from++) {
    if (isStraight(element(edges, from)) || joins(from)) continue;
    let count = 1;
    while (count < n && joins(from + count)) count++;
    if (count > 1) runs.push({ from, count });
  }
  return runs;
}

function curveOf(ring: readonly Vertex[], { from, count }: Run): MeasuredEdge | null {
  const path = Array.from({ length: count + 1 }, (_, i) => cyclic(ring, from + i));
  const box = bounds(path);
  const along = box.maxX - box.minX >= box.maxY - box.minY ? 'x' : 'y';
  if (!runsAlong(path, along)) return null;
  const backwards = cyclic(ring, from + count)[along] < cyclic(ring, from)[along];
  const forwards = backwards
    ? [...path].reverse().map((vertex, i, all) => ({ ...vertex, bulge: -(all[i + 1]?.bulge ?? 0) }))
    : path;
  return { kind: 'curve', along, path: forwards, backwards };
}

/** The sharp corner of two straight neighbours that an arc rounds; null where it rounds none. */
function sharpCorner(before: Edge, edge: Edge, after: Edge): MeasuredCorner | null {
  if (edge.kind !== 'arc' || before.kind !== 'straight' || after.kind !== 'straight') return null;
  if (!touches(before, edge) || !touches(edge, after) || Math.abs(edge.sweep) > 0.9 * Math.PI) return null;
  const direction = tangentOnEdge(before, 1);
  const reach = edge.radius * Math.tan(Math.abs(edge.sweep) / 2);
  return { x: edge.from.x + direction.x * reach, y: edge.from.y + direction.y * reach, radius: edge.radius };
}

function arcOf(edge: Edge, polar: boolean): MeasuredEdge {
  if (edge.kind === 'straight') return { kind: 'straight' };
  const { centre, radius, sweep, startAngle } = edge;
  const about =
    polar && Math.hypot(centre.x, centre.y) < 1e-4 ? 'origin' : Math.abs(sweep) > MAX_SWEEP ? 'measured' : 'neither';
  const middle = startAngle + sweep / 2;
  return {
    kind: 'arc',
    anticlockwise: sweep > 0,
    radius,
    centre,
    about,
    middle: { x: centre.x + radius * Math.cos(middle), y: centre.y + radius * Math.sin(middle) },
  };
}

/** Corners and edges of a run of edges, from edge `first` on. */
function cornersOf(
  ring: readonly Vertex[],
  edges: readonly Edge[],
  polar: boolean,
): { corners: MeasuredCorner[]; edges: MeasuredEdge[] } {
  const runs = new Map(curveRuns(edges).map((run) => [run.from, run]));
  const n = edges.length;
  // begin where no run of arcs is cut in two
  const inRun = new Set([...runs.values()].flatMap(({ from, count }) => range(from + 1, count - 1).map((i) => i % n)));
  const start = Math.max(
    0,
    edges.findIndex((_, i) => !inRun.has(i)),
  );
  const corners: MeasuredCorner[] = [];
  const between: MeasuredEdge[] = [];
  for (let k = 0; k < n;) {
    const i = (start + k) % n;
    const edge = element(edges, i);
    const rounded = roundingAt(edges, i);
    const run = runs.get(i);
    const curve = run ? curveOf(ring, run) : null;
    if (rounded) {
      // the corner stands for its arc and for the start of the straight edge behind it
      corners.push(rounded);
      between.push({ kind: 'straight' });
    } else if (!roundingAt(edges, i - 1)) {
      corners.push({ x: edge.from.x, y: edge.from.y, radius: null });
      between.push(curve ?? arcOf(edge, polar));
    }
    k += curve && run ? run.count : 1;
  }
  return { corners, edges: between };
}

const range = (from: number, count: number): number[] => Array.from({ length: Math.max(0, count) }, (_, i) => from + i);

function roundingAt(edges: readonly Edge[], i: number): MeasuredCorner | null {
  return sharpCorner(cyclic(edges, i - 1), cyclic(edges, i), cyclic(edges, i + 1));
}

/**
 * How a ring is measured.
 * @param ring in the drawing's own axes
 * @param polar the origin is the middle that a person measures from
 */
export function measureRing(ring: readonly Vertex[], polar: boolean): MeasuredRing {
  const edges = edgesOf(ring);
  const circle = circleOf(edges);
  if (circle) return circle;
  const times = polar ? repeats(ring) : 1;
  if (times === ring.length) {
    const regular = regularOf(ring);
    if (regular) return regular;
  }
  if (times >= 3) {
    const each = ring.length / times;
    const pitch = (2 * Math.PI) / times;
    // the part that lies about the x axis, its first corner the lowest in turn
    const angles = ring.map(({ x, y }) => Math.atan2(y, x));
    const start = angles.reduce(
      (best, angle, i) =>
        angle > -pitch / 2 - 1e-6 && angle < pitch / 2 && angle < (angles[best] ?? 9) - 1e-9 ? i : best,
      angles.findIndex((angle) => angle > -pitch / 2 - 1e-6 && angle < pitch / 2),
    );
    const turned = [...ring.slice(start), ...ring.slice(0, start)];
    const whole = cornersOf(turned, edgesOf(turned), polar);
    if (whole.corners.length === turned.length)
      return { kind: 'corners', times, corners: whole.corners.slice(0, each), edges: whole.edges.slice(0, each) };
  }
  return { kind: 'corners', times: 1, ...cornersOf(ring, edges, polar) };
}

/** Point of a path at a place along an axis that it runs along; exact on its arcs. */
export function pointAlong(path: Path, axis: 'x' | 'y', at: number): Point {
  const other = axis === 'x' ? 'y' : 'x';
  const edges = path.slice(1).map((to, i) => edgesOf([element(path, i), { ...to, bulge: 0 }])[0]);
  const edge = edges.find((one) => one !== undefined && at <= one.to[axis] + SAME) ?? element(edges, edges.length - 1);
  if (edge === undefined) throw new RangeError('a path without edges');
  let across: number;
  if (edge.kind === 'straight') {
    const run = edge.to[axis] - edge.from[axis];
    across =
      run === 0
        ? edge.to[other]
        : edge.from[other] + ((edge.to[other] - edge.from[other]) * (at - edge.from[axis])) / run;
  } else {
    const { centre, radius } = edge;
    const rise = Math.sqrt(Math.max(0, radius ** 2 - (at - centre[axis]) ** 2));
    across = centre[other] + (pointOnEdge(edge, 0.5)[other] < centre[other] ? -rise : rise);
  }
  return axis === 'x' ? { x: at, y: across } : { x: across, y: at };
}
