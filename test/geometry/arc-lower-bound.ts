/**
 * A count that no path of arcs can beat: each stretch of sampled points gets the best circle it can have, alone,
 * with no regard to the tangents or places of its neighbours (only the two ends of the whole are held). Any
 * tangent-continuous fit within the tolerance is also such a cover, so the optimum is at least this many arcs.
 */
import type { Curve, Point } from '../../lib/geometry/index.js';

/** Least value of a function with one valley between two bounds (golden section). */
function minOf(f: (v: number) => number, low: number, high: number, steps: number): number {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let c = high - ratio * (high - low);
  let d = low + ratio * (high - low);
  let fc = f(c);
  let fd = f(d);
  for (let i = 0; i < steps; i++) {
    if (fc < fd) {
      high = d;
      d = c;
      fd = fc;
      c = high - ratio * (high - low);
      fc = f(c);
    } else {
      low = c;
      c = d;
      fc = fd;
      d = low + ratio * (high - low);
      fd = f(d);
    }
  }
  return Math.min(fc, fd);
}

/** Distance of the points from the circle that passes e0 and e1 beside the first and last point with rise s. */
function spread(points: readonly Point[], e0: number, e1: number, s: number): number {
  const a = points[0]!;
  const b = points.at(-1)!;
  const chord = Math.hypot(b.x - a.x, b.y - a.y);
  const [ux, uy] = [(b.x - a.x) / chord, (b.y - a.y) / chord];
  const p = { x: a.x - uy * e0, y: a.y + ux * e0 };
  const q = { x: b.x - uy * e1, y: b.y + ux * e1 };
  const length = Math.hypot(q.x - p.x, q.y - p.y);
  const radius = (length * length) / 4 / (2 * s) + s / 2;
  const [vx, vy] = [(q.x - p.x) / length, (q.y - p.y) / length];
  const centre = { x: (p.x + q.x) / 2 - vy * (s - radius), y: (p.y + q.y) / 2 + vx * (s - radius) };
  let max = 0;
  for (const point of points) {
    max = Math.max(max, Math.abs(Math.hypot(point.x - centre.x, point.y - centre.y) - Math.abs(radius)));
  }
  return max;
}

function bestCircle(points: readonly Point[], tolerance: number, holdStart: boolean, holdEnd: boolean): number {
  if (points.length < 3) return 0;
  const a = points[0]!;
  const b = points.at(-1)!;
  const chord = Math.hypot(b.x - a.x, b.y - a.y);
  const middle = points[points.length >> 1]!;
  const rise = ((b.x - a.x) * (middle.y - a.y) - (b.y - a.y) * (middle.x - a.x)) / chord;
  const space = 4 * tolerance;
  const overRise = (e0: number, e1: number): number =>
    minOf((s) => spread(points, e0, e1, s === 0 ? 1e-12 : s), rise - 2 * space, rise + 2 * space, 24);
  const overEnd = (e0: number): number =>
    holdEnd ? overRise(e0, 0) : minOf((e1) => overRise(e0, e1), -space, space, 16);
  return holdStart ? overEnd(0) : minOf(overEnd, -space, space, 16);
}

/** Lower bound of the number of arcs within `tolerance` of the curve, by `samples` points of it. */
export function fewestArcs(curve: Curve, tolerance: number, samples: number): number {
  const points = Array.from({ length: samples + 1 }, (_, i) =>
    curve.at(curve.from + ((curve.to - curve.from) * i) / samples),
  );
  let count = 0;
  for (let start = 0; start <= samples; count++) {
    // the search for the best circle ends a little above the true best
    const holds = (end: number): boolean =>
      bestCircle(points.slice(start, end + 1), tolerance, start === 0, end === samples) <= tolerance * 1.002;
    let good = start;
    let bad = samples + 1;
    while (bad - good > 1) {
      const middle = (good + bad) >> 1;
      if (holds(middle)) good = middle;
      else bad = middle;
    }
    // the next arc may start anywhere before the point that this one cannot reach
    start = good + 1;
  }
  return count;
}
