/**
 * Arcs along a curve, quickly: pairs of arcs that share a tangent (biarcs: Bolton, Biarc curves, Computer-Aided Design
 * 7, 1975, from memory), the curve halved until they are within the tolerance. A drawing may hold thousands of curves,
 * some with cusps: the search for the fewest arcs that ribs deserve would take a tenth of a second for each.
 */
import {
  add,
  cross,
  distance,
  dot,
  edgeArc,
  element,
  type FittedPath,
  nearestOnEdge,
  type Point,
  scale,
  subtract,
  type Vertex,
} from '../../geometry/index.js';
import { ExtraFault } from './drawing.js';

/** A curve with the direction of travel (any length); it may stand still or turn back at single places. */
export interface DrawnCurve {
  readonly from: number;
  readonly to: number;
  readonly at: (t: number) => Point;
  readonly tangent: (t: number) => Point;
}

/** Places of a piece at which its distance from the arcs is measured. */
const probes = 17;
/** A chord this close to the curve, as a share of the tolerance, is taken as straight. */
const straightShare = 1e-3;
/** Halvings after which a chord within the tolerance will do. */
const chordFrom = 8;
const maxHalvings = 20;

/** Direction of length 1 at a parameter; where the curve stands still, that of the secant towards `inward`. */
function directionAt(curve: DrawnCurve, t: number, inward: number): Point | null {
  const span = inward - t;
  for (const share of [0, 1e-4, 1e-2]) {
    const step =
      share === 0 ? curve.tangent(t) : scale(subtract(curve.at(t + span * share), curve.at(t)), Math.sign(span));
    const length = Math.hypot(step.x, step.y);
    const size = distance(curve.at(t), curve.at(inward));
    if (length > (share === 0 ? 1e-6 : 1e-9) * size && length > 0) return scale(step, 1 / length);
  }
  return null;
}

/** The two arcs from a to b with these directions at the ends, as the vertices of their starts; null when none do. */
function biarc(a: Point, atA: Point, b: Point, atB: Point): [Vertex, Vertex] | null {
  const v = subtract(b, a);
  const along = dot(v, add(atA, atB));
  const square = dot(v, v);
  const bend = 2 * (1 - dot(atA, atB));
  // the equal-length biarc: bend·d² + 2·along·d − v² = 0, in the form that stays exact for next to no bend
  const d = square / (along + Math.sqrt(along * along + bend * square));
  if (!(d > 0 && Number.isFinite(d))) return null;
  const joint = scale(add(add(a, b), scale(subtract(atA, atB), d)), 0.5);
  const first = subtract(joint, a);
  const second = subtract(b, joint);
  const bulge = (from: Point, to: Point): number => Math.tan(Math.atan2(cross(from, to), dot(from, to)) / 2);
  return [
    { ...a, bulge: bulge(atA, first) },
    { ...joint, bulge: bulge(second, atB) },
  ];
}

/** Greatest distance of the places from a run of edges. */
function distanceFrom(places: readonly Point[], path: readonly Vertex[]): number {
  const edges = path.slice(0, -1).map((vertex, i) => edgeArc(vertex, element(path, i + 1)));
  let worst = 0;
  for (const place of places) {
    let min = Infinity;
    for (const edge of edges) min = Math.min(min, nearestOnEdge(edge, place).distance);
    worst = Math.max(worst, min);
  }
  return worst;
}

/** Whether the places run on along the chord of the first and the last. */
function runsOn(places: readonly Point[]): boolean {
  const [a, b] = [element(places, 0), places.at(-1)!];
  const chord = subtract(b, a);
  let last = 0;
  for (const place of places) {
    const along = dot(subtract(place, a), chord);
    if (along < last) return false;
    last = along;
  }
  return true;
}

/**
 * Arcs that follow a curve from end to end, tangents shared, and the greatest distance as measured.
 * @param tolerance mm, above 0
 * @throws ExtraFault for a curve that arcs cannot follow, or that needs more than `maxEdges`
 */
export function followCurve(curve: DrawnCurve, tolerance: number, maxEdges: number): FittedPath {
  const path: Vertex[] = [];
  let deviation = 0;
  const take = (vertices: readonly Vertex[], off: number): void => {
    path.push(...vertices);
    deviation = Math.max(deviation, off);
    if (path.length > maxEdges)
      throw new ExtraFault('extra-too-much', `a curve needs more than ${maxEdges} arcs`, 'simplify it');
  };
  const piece = (from: number, to: number, halvings: number): void => {
    const a = curve.at(from);
    const b = curve.at(to);
    if (!(Number.isFinite(a.x + a.y + b.x + b.y) && halvings <= maxHalvings))
      throw new ExtraFault('extra-curve', 'a curve cannot be followed by arcs', 'redraw it with lines and arcs');
    const end = { ...b, bulge: 0 };
    const chord = [{ ...a, bulge: 0 }, end];
    const places = Array.from({ length: probes - 1 }, (_, k) => curve.at(from + ((to - from) * (k + 1)) / probes));
    const off = distanceFrom(places, chord);
    // once it is short a chord within the tolerance will do: only cusps get so far
    if (off <= tolerance * (halvings >= chordFrom ? 1 : straightShare) && runsOn([a, ...places, b])) {
      take(chord.slice(0, 1), off);
      return;
    }
    const atA = directionAt(curve, from, to);
    const atB = directionAt(curve, to, from);
    const arcs = atA && atB && biarc(a, atA, b, atB);
    if (arcs) {
      const stray = distanceFrom(places, [...arcs, end]);
      // the greatest distance lies between probes
      if (stray <= 0.9 * tolerance && arcs.every(({ bulge }) => Math.abs(bulge) < 1)) {
        take(arcs, stray);
        return;
      }
    }
    const middle = (from + to) / 2;
    piece(from, middle, halvings + 1);
    piece(middle, to, halvings + 1);
  };
  piece(curve.from, curve.to, 0);
  path.push({ ...curve.at(curve.to), bulge: 0 });
  return { path, deviation };
}
