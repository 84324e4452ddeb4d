/**
 * Whether two parts lie on each other although nothing keeps them apart, as by a saw: they may touch, and have whole
 * edges in common, but no more.
 */
import { candidates } from './edge-distance.js';
import { distanceFrom, type ProofEdge, pointAlong } from './edge.js';
import type { Nominal } from './nominal.js';
import { agreementTolerance } from './limits.js';
import { gap, inside } from './ring.js';
import type { ProofPoint } from './types.js';

/** What lies on the sheet: a part, or a place that parts keep off. */
export type Solid = Pick<Nominal, 'box' | 'edges' | 'outlines' | 'openings'>;

/** How far within its edge a part is looked at, mm: what overlaps by less is rounding. */
const depth = 5 * agreementTolerance;
/** Edges that come nearer than this meet, mm. */
const touching = 1e-6;

/** Whether a place is in the material of a part. */
export function holds({ outlines, openings }: Solid, place: ProofPoint): boolean {
  return outlines.some(({ edges }) => inside(edges, place)) && !openings.some(({ edges }) => inside(edges, place));
}

/** How far along an edge a place on it is, 0 to 1. */
function shareOf(edge: ProofEdge, { x, y }: ProofPoint): number {
  const chord = Math.hypot(x - edge.ax, y - edge.ay);
  if (edge.sweep === 0) return chord / edge.length;
  // the angle at the centre is twice that between the tangent and the chord
  const along = (x - edge.ax) * edge.tax + (y - edge.ay) * edge.tay;
  const aside = ((y - edge.ay) * edge.tax - (x - edge.ax) * edge.tay) * Math.sign(edge.sweep);
  return chord === 0 ? 0 : (2 * Math.atan2(aside, along)) / Math.abs(edge.sweep);
}

/** Shares of an edge at which it meets edges of another part, with those of its ends. */
function cutsOf(edge: ProofEdge, other: Solid): number[] {
  const met = other.edges.edges.filter((one) => gap(edge, one) <= touching);
  const places = met.flatMap((one) => [
    ...candidates(edge, one).filter(({ x, y }) => distanceFrom(one, x, y) <= touching),
    ...[
      { x: one.ax, y: one.ay },
      { x: one.bx, y: one.by },
    ].filter(({ x, y }) => distanceFrom(edge, x, y) <= touching),
  ]);
  return [0, ...places.map((place) => shareOf(edge, place)).sort((a, b) => a - b), 1];
}

/** The place `depth` to the left of an edge, where the material is. */
function insideOf(edge: ProofEdge, share: number): ProofPoint {
  const { x, y } = pointAlong(edge, share);
  const turn = edge.sweep * share;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const tx = edge.tax * cos - edge.tay * sin;
  const ty = edge.tax * sin + edge.tay * cos;
  return { x: x - depth * ty, y: y + depth * tx };
}

/** Where the edge of `a`, with the material along it, lies on `b`; null where it does not. */
function overlapAlong(a: Solid, b: Solid): ProofPoint | null {
  for (const edge of a.edges.edges) {
    if (edge.length === 0 || gap(edge, b.box) > depth) continue;
    const cuts = cutsOf(edge, b);
    for (let i = 1; i < cuts.length; i += 1) {
      // at a corner that touches an edge rounding leaves a hair between two cuts
      if ((cuts[i]! - cuts[i - 1]!) * edge.length < depth) continue;
      const place = insideOf(edge, (cuts[i - 1]! + cuts[i]!) / 2);
      // where the cuts are close together the place may be off the part itself
      if (holds(b, place) && holds(a, place)) return place;
    }
  }
  return null;
}

/** A place that two parts both take; null where there is none. Between two places where edges meet, one is enough. */
export function overlapOf(a: Solid, b: Solid): ProofPoint | null {
  return overlapAlong(a, b) ?? overlapAlong(b, a);
}
