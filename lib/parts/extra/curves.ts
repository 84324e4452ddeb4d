/** The curves of drawings: ellipses, Béziers, B-splines. */
import {
  add,
  bulgeOfSweep,
  cross,
  dot,
  element,
  type FittedPath,
  type Point,
  scale,
  subtract,
  type Vertex,
} from '../../geometry/index.js';
import { ExtraFault, limits } from './drawing.js';
import { type DrawnCurve, followCurve } from './follow-curve.js';

/** The points `centre + u·cos t + v·sin t` for t between `from` and `to` (radians, either way). */
export interface EllipticArc {
  readonly centre: Point;
  readonly u: Point;
  readonly v: Point;
  readonly from: number;
  readonly to: number;
}

const roundness = 1e-9;
const half = Math.PI;

function joined(pieces: readonly FittedPath[]): FittedPath {
  const last = pieces.at(-1)?.path.at(-1);
  const path = pieces.flatMap((piece) => piece.path.slice(0, -1));
  return {
    path: last ? [...path, last] : path,
    deviation: pieces.reduce((worst, piece) => Math.max(worst, piece.deviation), 0),
  };
}

/** Steps of equal parameter, ends exact. */
function steps(from: number, to: number, longest: number): number[] {
  const count = Math.max(1, Math.ceil(Math.abs(to - from) / longest - 1e-9));
  return Array.from({ length: count + 1 }, (_, k) => (k === count ? to : from + ((to - from) * k) / count));
}

/** The arc of an ellipse as arcs of circles: exact where it is one of a circle. @throws ExtraFault as `followCurve` */
export function followEllipse(arc: EllipticArc, tolerance: number): FittedPath {
  const { centre, u, v, from, to } = arc;
  const at = (t: number): Point => add(centre, add(scale(u, Math.cos(t)), scale(v, Math.sin(t))));
  const size = dot(u, u) + dot(v, v);
  if (Math.abs(dot(u, v)) <= roundness * size && Math.abs(dot(u, u) - dot(v, v)) <= roundness * size) {
    const places = steps(from, to, half);
    const bulge = bulgeOfSweep((to - from) / (places.length - 1)) * (cross(u, v) < 0 ? -1 : 1);
    const path = places.map((t, i): Vertex => ({ ...at(t), bulge: i < places.length - 1 ? bulge : 0 }));
    return { path, deviation: 0 };
  }
  const tangent = (t: number): Point => {
    const along = add(scale(u, -Math.sin(t)), scale(v, Math.cos(t)));
    return to < from ? scale(along, -1) : along;
  };
  const places = steps(from, to, half / 2);
  return joined(
    places
      .slice(0, -1)
      .map((t, i) => followCurve({ from: t, to: element(places, i + 1), at, tangent }, tolerance, limits.ringEdges)),
  );
}

/** A Bézier curve by its control points (any degree from 1). @throws ExtraFault as `followCurve` */
export function followBezier(points: readonly Point[], tolerance: number): FittedPath {
  // de Casteljau's way, in place: thousands of curves are looked at in many places each
  const blend = (list: readonly Point[], t: number): Point => {
    const x = list.map((p) => p.x);
    const y = list.map((p) => p.y);
    for (let count = list.length - 1; count > 0; count--)
      for (let i = 0; i < count; i++) {
        x[i] = element(x, i) * (1 - t) + element(x, i + 1) * t;
        y[i] = element(y, i) * (1 - t) + element(y, i + 1) * t;
      }
    return { x: element(x, 0), y: element(y, 0) };
  };
  const slopes = points.slice(1).map((p, i) => scale(subtract(p, element(points, i)), points.length - 1));
  const curve: DrawnCurve = { from: 0, to: 1, at: (t) => blend(points, t), tangent: (t) => blend(slopes, t) };
  return followCurve(curve, tolerance, limits.ringEdges);
}

export interface Spline {
  readonly degree: number;
  readonly knots: readonly number[];
  readonly points: readonly Point[];
  /** One a point; all 1 for a plain spline. */
  readonly weights: readonly number[];
}

/** A weighted point: x·w, y·w, w. */
type Weighted = readonly [number, number, number];

/** De Boor's algorithm on one span of knots (de Boor, A Practical Guide to Splines, 1978). */
function deBoor(points: readonly Weighted[], knots: readonly number[], degree: number, span: number, t: number) {
  const row = points.slice(span - degree, span + 1).map(([x, y, w]): [number, number, number] => [x, y, w]);
  for (let r = 1; r <= degree; r++)
    for (let j = degree; j >= r; j--) {
      const low = element(knots, span - degree + j);
      const high = element(knots, span + 1 + j - r);
      const share = high > low ? (t - low) / (high - low) : 0;
      const [a, b] = [element(row, j - 1), element(row, j)];
      row[j] = [0, 1, 2].map((k) => element(a, k) * (1 - share) + element(b, k) * share) as [number, number, number];
    }
  return element(row, degree);
}

/** A B-spline, plain or weighted. @throws ExtraFault for one that is not whole, or as `followCurve` */
export function followSpline({ degree, knots, points, weights }: Spline, tolerance: number): FittedPath {
  const wrong = (what: string): never => {
    throw new ExtraFault('extra-spline', what, 'redraw it, or export it as polylines');
  };
  if (!(degree >= 1 && degree <= 10)) wrong(`a spline of degree ${degree} is not supported (degrees 1 to 10 are)`);
  if (points.length > limits.ringEdges)
    wrong(`a spline has ${points.length} control points; at most ${limits.ringEdges} are supported`);
  if (points.length <= degree) wrong(`a spline of degree ${degree} needs more than ${points.length} control points`);
  if (knots.length !== points.length + degree + 1)
    wrong(`a spline has ${knots.length} knots instead of ${points.length + degree + 1}`);
  if (knots.some((knot, i) => i > 0 && knot < element(knots, i - 1)))
    wrong('the knots of a spline are not in ascending order');
  if (weights.length !== points.length || weights.some((w) => !(w > 0)))
    wrong('a spline needs a weight above 0 for each control point');
  const weighted = points.map((p, i): Weighted => [
    p.x * element(weights, i),
    p.y * element(weights, i),
    element(weights, i),
  ]);
  // control points of the derivative; the quotient rule brings the weights back in
  const slopes = weighted.slice(1).map((p, i): Weighted => {
    const wide = element(knots, i + degree + 1) - element(knots, i + 1);
    const share = wide > 0 ? degree / wide : 0;
    return [0, 1, 2].map((k) => (element(p, k) - element(element(weighted, i), k)) * share) as unknown as Weighted;
  });
  const slopeKnots = knots.slice(1, -1);
  const pieces: FittedPath[] = [];
  let edges = 0;
  for (let span = degree; span < points.length; span++) {
    const [from, to] = [element(knots, span), element(knots, span + 1)];
    if (!(to > from)) continue;
    const at = (t: number): Point => {
      const [x, y, w] = deBoor(weighted, knots, degree, span, t);
      return { x: x / w, y: y / w };
    };
    const tangent = (t: number): Point => {
      const [x, y, w] = deBoor(weighted, knots, degree, span, t);
      const [dx, dy, dw] = deBoor(slopes, slopeKnots, degree - 1, span - 1, t);
      return { x: (dx - (x / w) * dw) / w, y: (dy - (y / w) * dw) / w };
    };
    const piece = followCurve({ from, to, at, tangent }, tolerance, limits.ringEdges);
    edges += piece.path.length - 1;
    if (edges > limits.ringEdges)
      throw new ExtraFault('extra-too-much', `a spline needs more than ${limits.ringEdges} arcs`, 'simplify it');
    pieces.push(piece);
  }
  if (pieces.length === 0) wrong('a spline has no length');
  return joined(pieces);
}
