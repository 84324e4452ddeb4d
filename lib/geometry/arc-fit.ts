/**
 * Curves as chains of arcs that share their tangents.
 *
 * A curve whose curvature changes at the rate κ' leaves an arc of length h by a cubic in the length. With the
 * tangents of the curve itself at the joints (the usual biarc: Meek and Walton, Approximation of discrete data by G1
 * arc splines, Computer-Aided Design 24, 1992; Approximating smooth planar curves by arc splines, Journal of
 * Computational and Applied Mathematics 59, 1995; both from memory) an arc of length h strays by κ'h³/40.5. Letting
 * the joints' tangents lean by κ'h²/12 balances the two humps of the cubic to κ'h³/124.7, so that arcs are 1.45
 * times as long. Here the joints lie on the curve; a search over their places and leans finds the fewest arcs.
 */
import { f64 } from './typed-arrays.js';
import { element } from './element.js';
import { type Curve, sampleCurve, type SampledCurve } from './sampled-curve.js';
import type { FittedPath, Vertex } from './types.js';

/** Samples of the curve along its whole length, at first. */
const SAMPLES = 1025;
/** With fewer samples an arc than this, on average, the curve is sampled more finely. */
const SAMPLES_AN_ARC = 40;
/** Finest sampling; a tolerance that needs more is out of reach of double precision for any part. */
const MAX_SAMPLES = 1 << 18;
/** Points of each arc at which the finished fit is measured. */
const MEASURES = 256;
/** Samples that are looked at when the deviation of one arc is judged in the search. */
const PROBES = 24;
/** The search keeps this much below the tolerance, as the greatest deviation lies between probes. */
const SEARCH_SHARE = 0.985;
/** An arc turns by at most this much, so that it cannot lap itself. */
const MAX_TURN = 1.8 * Math.PI;
/** Leans of a joint's tangent off the curve's are distinguished in steps of this times (tolerance / length of the arc). */
const LEAN_STEP = 0.7;
/** Larger leans than this many steps either way cannot be within the tolerance for any useful length. */
const MAX_LEAN = 24;
/** Lengths of an arc that are tried, as shares of the longest that holds: a shorter arc can leave a better tangent. */
const SHARES = [1, 0.97, 0.94, 0.91, 0.88, 0.85, 0.81, 0.77, 0.72, 0.66, 0.59, 0.5, 0.4];
/** One arc with the curve's own tangent that strays by less than this share of the tolerance is the curve itself. */
const PLAIN_SHARE = 1e-3;
/** A bulge below this is written as straight (see `edgeArc`). */
const STRAIGHT_BULGE = 1e-8;

/** A joint that a chain of arcs can reach: the sample it lies at, the direction there, and the joint before it. */
interface Joint {
  readonly sample: number;
  readonly direction: number;
  readonly before: Joint | null;
}

/** Half the turn of the arc that starts at sample i in `direction` and ends at sample j. */
function halfTurn(c: SampledCurve, i: number, j: number, direction: number): number {
  const half = Math.atan2(f64(c.y, j) - f64(c.y, i), f64(c.x, j) - f64(c.x, i)) - direction;
  return half - 2 * Math.PI * Math.round(half / (2 * Math.PI));
}

/** Signed distance of a point from a circle through the origin, given along and left of the circle's direction there. */
function offCircle(curvature: number, along: number, left: number): number {
  const f = curvature * (along * along + left * left) - 2 * left;
  return f / (1 + Math.sqrt(Math.max(0, 1 + curvature * f)));
}

/** True when the arc from sample i in `direction` to sample j stays within `tolerance` of the curve. */
function arcHolds(c: SampledCurve, i: number, j: number, direction: number, tolerance: number): boolean {
  if (Math.abs(f64(c.direction, j) - f64(c.direction, i)) > MAX_TURN) return false;
  const cos = Math.cos(direction);
  const sin = Math.sin(direction);
  const dx = f64(c.x, j) - f64(c.x, i);
  const dy = f64(c.y, j) - f64(c.y, i);
  const curvature = (2 * (dy * cos - dx * sin)) / (dx * dx + dy * dy);
  const step = Math.max(1, (j - i) / PROBES);
  for (let k = i + step; k < j; k += step) {
    const s = Math.round(k);
    const x = f64(c.x, s) - f64(c.x, i);
    const y = f64(c.y, s) - f64(c.y, i);
    if (!(Math.abs(offCircle(curvature, x * cos + y * sin, y * cos - x * sin)) <= tolerance)) return false;
  }
  return Math.abs(halfTurn(c, i, j, direction)) < MAX_TURN / 2;
}

/** The last sample that an arc from sample i in `direction` reaches within the tolerance; at least the next one. */
function reach(c: SampledCurve, i: number, direction: number, tolerance: number, guess: number): number {
  const last = c.count - 1;
  let good = i + 1;
  let span = Math.max(2, guess);
  let bad = last + 1;
  while (good < last) {
    const j = Math.min(last, i + span);
    if (j <= good) break;
    if (arcHolds(c, i, j, direction, tolerance)) {
      good = j;
      span *= 2;
    } else {
      bad = j;
      break;
    }
  }
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (arcHolds(c, i, middle, direction, tolerance)) good = middle;
    else bad = middle;
  }
  return good;
}

/** Number of the class of like leans that a joint belongs to, or null when it leans too far to be of use. */
function leanClass(c: SampledCurve, sample: number, direction: number, span: number, tolerance: number): number | null {
  const off = direction - f64(c.direction, sample);
  const lean = off - 2 * Math.PI * Math.round(off / (2 * Math.PI));
  const step = Math.round((lean * span) / (tolerance * LEAN_STEP));
  return Math.abs(step) > MAX_LEAN ? null : step;
}

/** Distance of two samples. */
function chordOf(c: SampledCurve, i: number, j: number): number {
  return Math.hypot(f64(c.x, j) - f64(c.x, i), f64(c.y, j) - f64(c.y, i));
}

/** The starts that are worth trying: the curve's own tangent and leans to both sides of it. */
function starts(c: SampledCurve, tolerance: number): Joint[] {
  const first = reach(c, 0, f64(c.direction, 0), tolerance, 8);
  const step = (tolerance * LEAN_STEP) / chordOf(c, 0, first);
  return Array.from({ length: 2 * MAX_LEAN + 1 }, (_, k) => ({
    sample: 0,
    direction: f64(c.direction, 0) + (k - MAX_LEAN) * step,
    before: null,
  }));
}

/**
 * The last joint of a chain of the fewest arcs, or null when more than `max` are needed. Breadth first: of all
 * joints reached by as many arcs with about the same lean, only the farthest is followed.
 */
function shortestChain(c: SampledCurve, tolerance: number, max: number): Joint | null {
  const last = c.count - 1;
  let front = starts(c, tolerance);
  let guess = 8;
  for (let arcs = 1; arcs <= max && front.length > 0; arcs++) {
    const next = new Map<number, Joint>();
    for (const joint of front) {
      const longest = reach(c, joint.sample, joint.direction, tolerance, guess) - joint.sample;
      guess = Math.max(4, Math.round(longest * 0.8));
      for (const share of SHARES) {
        const span = Math.max(1, Math.round(longest * share));
        const sample = joint.sample + span;
        const direction = joint.direction + 2 * halfTurn(c, joint.sample, sample, joint.direction);
        const lean = leanClass(c, sample, direction, chordOf(c, joint.sample, sample), tolerance);
        // whether the arc holds is asked last: it takes longest, and most arcs are not needed
        if (sample < last && (lean === null || (next.get(lean)?.sample ?? -1) >= sample)) continue;
        if (share < 1 && !arcHolds(c, joint.sample, sample, joint.direction, tolerance)) continue;
        const reached: Joint = { sample, direction, before: joint };
        if (sample === last || lean === null) return reached;
        next.set(lean, reached);
      }
    }
    front = [...next.values()];
  }
  return null;
}

/** The joints of a chain in order. */
function joints(end: Joint): Joint[] {
  const list: Joint[] = [];
  for (let joint: Joint | null = end; joint !== null; joint = joint.before) list.unshift(joint);
  return list;
}

/** The chain at the least tolerance, to 2 %, that as many arcs still keep: evens the deviation out over the arcs. */
function evenOut(c: SampledCurve, chain: readonly Joint[], tolerance: number): readonly Joint[] {
  let best = chain;
  let holds = tolerance;
  let fails = 0;
  while (holds - fails > 0.02 * tolerance) {
    const middle = (holds + fails) / 2;
    const closer = shortestChain(c, middle, chain.length - 1);
    if (closer === null) fails = middle;
    else {
      best = joints(closer);
      holds = middle;
    }
  }
  return best;
}

/** The vertices of a chain, and its greatest distance from the curve, looked for at many points of each arc. */
function trace(curve: Curve, c: SampledCurve, chain: readonly Joint[]): FittedPath {
  const path: Vertex[] = [];
  let deviation = 0;
  for (let n = 0; n + 1 < chain.length; n++) {
    const { sample: i, direction } = element(chain, n);
    const j = element(chain, n + 1).sample;
    const half = halfTurn(c, i, j, direction);
    const bulge = Math.tan(half / 2);
    const x0 = f64(c.x, i);
    const y0 = f64(c.y, i);
    path.push({ x: x0, y: y0, bulge: Math.abs(bulge) < STRAIGHT_BULGE ? 0 : bulge });
    const curvature = (2 * Math.sin(half)) / chordOf(c, i, j);
    const cos = Math.cos(direction);
    const sin = Math.sin(direction);
    for (let k = 1; k < MEASURES; k++) {
      const p = curve.at(f64(c.t, i) + ((f64(c.t, j) - f64(c.t, i)) * k) / MEASURES);
      const x = p.x - x0;
      const y = p.y - y0;
      deviation = Math.max(deviation, Math.abs(offCircle(curvature, x * cos + y * sin, y * cos - x * sin)));
    }
  }
  path.push({ x: f64(c.x, c.count - 1), y: f64(c.y, c.count - 1), bulge: 0 });
  return { path, deviation };
}

/** The fit of a curve that is itself an arc or a straight run; null for any other. */
function asOneArc(curve: Curve, c: SampledCurve, tolerance: number): FittedPath | null {
  const start: Joint = { sample: 0, direction: f64(c.direction, 0), before: null };
  const last = c.count - 1;
  if (!arcHolds(c, 0, last, start.direction, tolerance * PLAIN_SHARE)) return null;
  const fitted = trace(curve, c, [start, { sample: last, direction: f64(c.direction, last), before: start }]);
  return fitted.deviation <= tolerance * PLAIN_SHARE ? fitted : null;
}

/**
 * The curve as a path of arcs, each tangent to the next, from end point to end point. The ends and the joints lie on
 * the curve; `deviation` is the greatest distance from it as measured. A straight curve gives one straight edge.
 *
 * @param curve smooth, without corners; may change the sense of its bend
 * @param tolerance greatest distance allowed, mm, above 0
 * @throws RangeError for a tolerance of 0 or less, a curve of no length, or a tolerance that arcs cannot reach
 */
export function fitArcs(curve: Curve, tolerance: number): FittedPath {
  if (!(tolerance > 0)) throw new RangeError(`arcs are fitted to a tolerance above 0 mm, not ${tolerance}`);
  let sampled = sampleCurve(curve, SAMPLES);
  const plain = asOneArc(curve, sampled, tolerance);
  if (plain !== null) return plain;
  let target = tolerance * SEARCH_SHARE;
  for (;;) {
    const end = shortestChain(sampled, target, Math.ceil(sampled.count / SAMPLES_AN_ARC));
    if (end === null) {
      const finer = (sampled.count - 1) * 4 + 1;
      if (finer > MAX_SAMPLES) break;
      sampled = sampleCurve(curve, finer);
      continue;
    }
    const fitted = trace(curve, sampled, evenOut(sampled, joints(end), target));
    if (fitted.deviation <= tolerance) return fitted;
    target *= 0.98;
    if (target < tolerance / 2) break;
  }
  throw new RangeError(`no chain of arcs comes within ${tolerance} mm of this curve; is it smooth?`);
}
