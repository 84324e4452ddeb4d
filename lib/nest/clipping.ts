/** The clipping library on a grid fine enough for exact contact: integer multiples of 2^-34 mm, about 6e-11 mm. */
import { Clipper64, ClipType, FillRule, type Path64, type Paths64 } from 'clipper2-ts';
import { cyclic, element, type Point, type Polygon } from '../geometry/index.js';

const SCALE = 2 ** 34;

/** Rings narrower than this (mm) are rounding: some steps of the grid across, however long. */
const MIN_WIDTH = 4e-9;

const onGrid = (ring: Polygon): Path64 =>
  ring.map(({ x, y }) => ({ x: Math.round(x * SCALE), y: Math.round(y * SCALE) }));

function area(ring: readonly Point[]): number {
  let twice = 0;
  const origin = ring[0];
  if (!origin) return 0;
  for (let i = 1; i + 1 < ring.length; i++) {
    const p = element(ring, i);
    const q = element(ring, i + 1);
    twice += (p.x - origin.x) * (q.y - origin.y) - (q.x - origin.x) * (p.y - origin.y);
  }
  return twice / 2;
}

function perimeter(ring: readonly Point[]): number {
  return ring.reduce((sum, p, i) => {
    const q = cyclic(ring, i + 1);
    return sum + Math.hypot(q.x - p.x, q.y - p.y);
  }, 0);
}

/** How often closed curves wind about a point, anticlockwise positive. */
function windings(curves: readonly Polygon[], px: number, py: number): number {
  let turns = 0;
  for (const curve of curves) {
    let p = cyclic(curve, -1);
    for (const q of curve) {
      if (p.y > py !== q.y > py && px < p.x + ((py - p.y) * (q.x - p.x)) / (q.y - p.y)) turns += q.y > p.y ? 1 : -1;
      p = q;
    }
  }
  return turns;
}

/** Points within a ring, beside the middles of its edges. */
function pointsWithin(ring: Polygon): Point[] {
  const off = area(ring) / perimeter(ring) / 2;
  return ring.flatMap((p, i) => {
    const q = cyclic(ring, i + 1);
    const share = off / Math.hypot(q.x - p.x, q.y - p.y);
    const point = { x: (p.x + q.x) / 2 - (q.y - p.y) * share, y: (p.y + q.y) / 2 + (q.x - p.x) * share };
    return windings([ring], point.x, point.y) === 0 ? [] : [point];
  });
}

/**
 * The ring without spikes: runs that go out and come back upon themselves, which the library leaves where edges all
 * but coincide. True passages are wider.
 */
function withoutSpikes(ring: Polygon): Polygon {
  const points = [...ring];
  let still = 0;
  for (let i = 0; points.length > 2 && still <= points.length;) {
    const n = points.length;
    const p = cyclic(points, i - 1);
    const q = cyclic(points, i);
    const r = cyclic(points, i + 1);
    const [ax, ay, bx, by] = [p.x - q.x, p.y - q.y, r.x - q.x, r.y - q.y];
    const long = Math.max(Math.hypot(ax, ay), Math.hypot(bx, by));
    const near = Math.hypot(ax, ay) < MIN_WIDTH || Math.hypot(bx, by) < MIN_WIDTH;
    if (near || (ax * bx + ay * by > 0 && Math.abs(ax * by - ay * bx) < MIN_WIDTH * long)) {
      points.splice(i % n, 1);
      i = Math.max(0, (i % n) - 1);
      still = 0;
    } else {
      i = (i + 1) % n;
      still++;
    }
  }
  return points;
}

/**
 * The rings that are true: among edges that all but coincide the library now and then leaves a hole that is none, or a
 * solid within a solid.
 */
function trueRings(rings: readonly Polygon[], curves: readonly Polygon[]): Polygon[] {
  const kept: Polygon[] = [];
  // a ring lies within larger ones only
  for (const ring of [...rings].sort((a, b) => Math.abs(area(b)) - Math.abs(area(a)))) {
    const points = pointsWithin(ring);
    const around = area(ring) < 0 ? curves : kept;
    if (points.length > 0 && points.every(({ x, y }) => windings(around, x, y) === 0)) kept.push(ring);
  }
  return kept;
}

/**
 * The rings round what the given closed curves wind about: at all (`nonzero`), anticlockwise (`positive`) or clockwise
 * (`negative`). Outer rings anticlockwise, holes clockwise. Coordinates up to 1e5 mm.
 */
export function unionByFillRule(rings: readonly Polygon[], rule: 'nonzero' | 'positive' | 'negative'): Polygon[] {
  const clipper = new Clipper64();
  clipper.preserveCollinear = false;
  clipper.addSubject(rings.map(onGrid));
  const solution: Paths64 = [];
  const fill = { nonzero: FillRule.NonZero, positive: FillRule.Positive, negative: FillRule.Negative }[rule];
  clipper.execute(ClipType.Union, fill, solution);
  const found = solution
    .map((path) => path.map(({ x, y }) => ({ x: x / SCALE, y: y / SCALE })))
    .map((ring) => (rule === 'nonzero' ? withoutSpikes(ring) : ring))
    .filter((ring) => ring.length > 2 && 2 * Math.abs(area(ring)) > MIN_WIDTH * perimeter(ring));
  return rule === 'nonzero' && found.length > 1 ? trueRings(found, rings) : found;
}

export { area as ringArea };
