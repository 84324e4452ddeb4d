/**
 * What the tool leaves: for each edge of a part, the band that a tool or beam sweeps along the paths, held against the
 * nominal edge. A path that keeps half the cut's width from the edge everywhere, on the side of the waste, sweeps up
 * to the edge and no farther; so the errors are found as distances between lines and arcs, without polygons.
 */
import { farthestFrom } from './deviation.js';
import { type ProofEdge, pointAlong } from './edge.js';
import { EdgeSet } from './edge-set.js';
import { type FaultList, mm } from './faults.js';
import { cutTolerance, measureSlack } from './limits.js';
import type { HoleCut, RingCut } from './match.js';
import { nameOf } from './nominal.js';
import { toolPlaces } from './reach.js';
import { insideCorners, isSpur } from './relief.js';
import { inside } from './ring.js';
import type { CutError, ProofPoint } from './types.js';

export interface Swept {
  readonly outward: CutError;
  readonly inward: CutError;
}

interface CutDepth extends ProofPoint {
  readonly mm: number;
}

const none = (place: ProofPoint): CutDepth => ({ mm: 0, x: place.x, y: place.y });
const worse = (a: CutDepth, b: CutDepth): CutDepth => (b.mm > a.mm ? b : a);

/** Samples along a piece in which material may stay, to distinguish an inside corner from a fault. */
const cornerSamples = 100;

/** A hole and a pocket have no edge but their own: all else of the part is their surroundings. */
const standsAlone = ({ operation }: RingCut): boolean => operation === 'hole' || operation === 'pocket';

/** Whether a point lies in the material of the cut's part. A hole is cut out of its surroundings. */
function inMaterial(cut: RingCut, place: ProofPoint): boolean {
  const { nominal, ring } = cut;
  if (standsAlone(cut)) return !inside(ring.edges, place);
  const within = nominal.outlines.some(({ edges }) => inside(edges, place));
  return within && !nominal.openings.some(({ edges }) => inside(edges, place));
}

/** How far the sweep eats into the part: half the cut's width less the distance of the path, or more on the wrong side. */
function gouge(cut: RingCut, width: number): CutDepth {
  const radius = width / 2;
  const edges = standsAlone(cut) ? new EdgeSet(cut.ring.edges) : cut.nominal.edges;
  const corners = width > 0 ? insideCorners(cut.ring) : [];
  let worst = none({ x: cut.ring.edges[0]!.ax, y: cut.ring.edges[0]!.ay });
  for (const path of cut.paths) {
    for (const edge of path.line.edges) {
      if (corners.some((corner) => isSpur(edge, corner, radius))) continue;
      const near = edges.nearestWithin(edge, radius);
      if (near) worst = worse(worst, { mm: radius - near.distance, x: near.x, y: near.y });
      for (const place of [pointAlong(edge, 0), pointAlong(edge, 0.5)]) {
        if (!inMaterial(cut, place)) continue;
        const depth = edges.nearestTo(place.x, place.y).distance;
        worst = worse(worst, { mm: radius + depth, ...place });
      }
    }
  }
  return worst;
}

/** Material that the paths leave at the edge although a tool of this width could take it. */
function left(cut: RingCut, paths: EdgeSet, width: number): CutDepth {
  const radius = width / 2;
  const { max, place, beyond } = farthestFrom(cut.ring.edges, paths, radius + cutTolerance / 2);
  if (beyond.length === 0) return { mm: Math.max(0, max - radius), ...place };
  // a hole has no inside corners, a pocket has round ones, and a line without width reaches everything
  const reachable = standsAlone(cut) || width === 0 ? null : toolPlaces(cut.nominal, radius);
  if (reachable === null) return { mm: max - radius, ...place };
  let worst = none(place);
  let guess: ProofEdge | undefined;
  for (const piece of beyond) {
    for (let i = 0; i <= cornerSamples; i += 1) {
      const { x, y } = pointAlong(piece.edge, piece.from + ((piece.to - piece.from) * i) / cornerSamples);
      const could = reachable.nearestTo(x, y, guess);
      guess = could.edge;
      const away = paths.nearestTo(x, y).distance;
      worst = worse(worst, { mm: away - Math.max(radius, could.distance), x, y });
    }
  }
  return worst;
}

/** How far the path strays into the waste, beyond half the cut's width from the edge. */
function stray(cut: RingCut, edges: readonly ProofEdge[], width: number): CutDepth {
  const { max, place } = farthestFrom(edges, new EdgeSet(cut.ring.edges), width / 2 + cutTolerance);
  return { mm: Math.max(0, max - width / 2), ...place };
}

/** Errors of one edge of a part. A scribed line is no cut: it has to lie on its line. */
export function sweepRing(cut: RingCut, width: number): Swept {
  const { part, copy } = cut.nominal;
  const edges = cut.paths.flatMap(({ line }) => line.edges);
  const named = (error: CutDepth): CutError => ({ ...error, part, copy });
  if (cut.operation === 'scribe') {
    const off = worse(left(cut, new EdgeSet(edges), 0), stray(cut, edges, 0));
    return { outward: named(off), inward: named(none(off)) };
  }
  const inward = gouge(cut, width);
  const outward = worse(left(cut, new EdgeSet(edges), width), stray(cut, edges, width));
  return { outward: named(outward), inward: named(inward) };
}

/** Errors of a hole that is drilled in one go: off its place, or of another size, it takes on one side and leaves on the other. */
export function sweepHole({ nominal, hole, diameter, circle }: HoleCut): Swept {
  const { part, copy } = nominal;
  const off = Math.hypot(circle.x - hole.x, circle.y - hole.y);
  const larger = (circle.diameter - diameter) / 2;
  const error = (value: number): CutError => ({ mm: Math.max(0, value), x: circle.x, y: circle.y, part, copy });
  return { outward: error(off - larger), inward: error(off + larger) };
}

const words = {
  outline: 'outline',
  opening: 'an opening',
  pocket: 'a pocket',
  hole: 'a hole',
  scribe: 'a scribed line',
} as const;

/** Reports errors beyond the tolerance. */
export function reportErrors(cut: RingCut, { outward, inward }: Swept, file: string, faults: FaultList): void {
  const part = nameOf(cut.nominal);
  const what = words[cut.operation];
  if (!(inward.mm <= cutTolerance + measureSlack))
    faults.add('cut-into', file, { depth: mm(inward.mm), what, part }, inward);
  if (outward.mm <= cutTolerance + measureSlack) return;
  if (cut.operation === 'scribe') faults.add('scribe-off', file, { off: mm(outward.mm), part }, outward);
  else faults.add('cut-leaves', file, { depth: mm(outward.mm), what, part }, outward);
}
