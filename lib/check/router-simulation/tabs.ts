/** What stands in the cut around a part, by exact distances: where no tool has swept the middle of the cut to a level. */
import { distanceFrom, lengthOf, type ProofEdge, pointAlong } from '../edge.js';
import { EdgeSet } from '../edge-set.js';
import type { ProofPoint } from '../types.js';
import { edgesOfMotion, placeOn } from './level.js';
import type { Motion } from './types.js';

/** Step along the middle of the cut, mm: what stands over less holds nothing. */
export const tabStep = 0.5;
/** To what the ends of a tab are found, mm. */
const exact = 0.002;

/** The part of a motion on which the tip is below a level; null where it is nowhere. */
function below(motion: Motion, level: number): Motion | null {
  const { from, to, turn } = motion;
  if (from.z < level && to.z < level) return motion;
  if (from.z >= level && to.z >= level) return null;
  const at = (level - from.z) / (to.z - from.z);
  const [start, end] = from.z < level ? [0, at] : [at, 1];
  return {
    ...motion,
    from: placeOn(motion, start),
    to: placeOn(motion, end),
    turn: turn === null ? null : { ...turn, sweep: turn.sweep * (end - start) },
  };
}

/** What the end mills sweep below a level. */
export class SweptBelow {
  readonly #sets: { readonly radius: number; readonly set: EdgeSet; guess: ProofEdge | undefined }[];

  constructor(motions: readonly Motion[], level: number) {
    const byRadius = new Map<number, ProofEdge[]>();
    for (const motion of motions) {
      if (motion.rapid || motion.tool.kind !== 'mill') continue;
      const deep = below(motion, level);
      if (deep === null) continue;
      const radius = motion.tool.diameter / 2;
      const edges = byRadius.get(radius) ?? [];
      edges.push(...edgesOfMotion(deep));
      byRadius.set(radius, edges);
    }
    this.#sets = [...byRadius].map(([radius, edges]) => ({ radius, set: new EdgeSet(edges), guess: undefined }));
  }

  has({ x, y }: ProofPoint): boolean {
    return this.#sets.some((one) => {
      const { radius, set, guess } = one;
      // what swept one place has most likely swept the next
      if (guess !== undefined && distanceFrom(guess, x, y) < radius) return true;
      const { distance, edge } = set.nearestTo(x, y, guess);
      one.guess = edge;
      return distance < radius;
    });
  }
}

/** The place `off` mm to the right (outside, the material being left) of the point at `share` of an edge. */
export function rightOf(edge: ProofEdge, share: number, off: number): ProofPoint | null {
  const at = pointAlong(edge, share);
  let dx = edge.bx - edge.ax;
  let dy = edge.by - edge.ay;
  if (edge.sweep !== 0) {
    const turn = Math.sign(edge.sweep);
    dx = -(at.y - edge.cy) * turn;
    dy = (at.x - edge.cx) * turn;
  }
  const size = lengthOf(dx, dy);
  return size > 0 ? { x: at.x + (dy / size) * off, y: at.y - (dx / size) * off } : null;
}

/** Places along a ring's edges, at most `step` apart, `off` mm to the right, in order. */
export function placesAlong(edges: readonly ProofEdge[], step: number, off: number): ProofPoint[] {
  const places: ProofPoint[] = [];
  for (const edge of edges) {
    const count = Math.max(1, Math.ceil(edge.length / step));
    for (let i = 0; i < count; i += 1) {
      const place = rightOf(edge, (i + 0.5) / count, off);
      if (place !== null) places.push(place);
    }
  }
  return places;
}

/** A stretch of the cut that stands. */
export interface StandingTab {
  /** From end to end, mm. */
  readonly width: number;
  readonly place: ProofPoint;
}

/** The last place from `swept` towards `standing` that is still swept. */
function endOf(swept: ProofPoint, standing: ProofPoint, cut: SweptBelow): ProofPoint {
  let [from, to] = [swept, standing];
  while (lengthOf(to.x - from.x, to.y - from.y) > exact) {
    const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
    if (cut.has(middle)) from = middle;
    else to = middle;
  }
  return from;
}

/** Places on either side of one that stands on the grid at which it takes a closer look: more than a cell's diagonal. */
const closer = 4;

/**
 * All that stands in the cut around a ring, if it is wider than two cells of the grid.
 * @param places along the middle of the cut, `tabStep` apart
 * @param cut what is swept below the level at which it should stand
 * @param likely whether the grid shows something standing at a place
 */
export function standingAt(
  places: readonly ProofPoint[],
  cut: SweptBelow,
  likely: (place: ProofPoint) => boolean,
): readonly StandingTab[] {
  const at = <T>(list: readonly T[], i: number): T => list[(i + list.length) % list.length]!;
  const near = new Set<number>();
  places.forEach((place, i) => {
    if (!likely(place)) return;
    for (let k = i - closer; k <= i + closer; k += 1) near.add((k + places.length) % places.length);
  });
  const stands = places.map((place, i) => near.has(i) && !cut.has(place));
  const swept = stands.indexOf(false);
  if (swept < 0) return [{ width: Infinity, place: places[0]! }];
  const found: StandingTab[] = [];
  for (let i = 1; i < stands.length; i += 1) {
    const first = swept + i;
    let run = 0;
    while (at(stands, first + run)) run += 1;
    if (run === 0) continue;
    const from = endOf(at(places, first - 1), at(places, first), cut);
    const to = endOf(at(places, first + run), at(places, first + run - 1), cut);
    found.push({ width: lengthOf(to.x - from.x, to.y - from.y), place: at(places, first) });
    i += run;
  }
  return found;
}
