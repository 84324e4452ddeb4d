/** Where a path has to stay above the tabs. */
import { type Bounds, cyclic, distance, edgeBounds, element, type Point } from '../../geometry/index.js';
import { nearestLength } from './lead.js';
import { pointAt, type RingPath } from './ring.js';
import type { Tab } from './tabs.js';
import { clearOfLifts, type Lift } from './walk.js';

/** Step along the path, mm; a stretch is widened by one step at both ends, so that no tab comes out narrower. */
export const liftStep = 0.5;

function fromSegment(p: Point, a: Point, b: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / square));
  return distance(p, { x: a.x + t * dx, y: a.y + t * dy });
}

/** Distance of a point from a convex quadrilateral; 0 within. */
function fromTab(p: Point, { corners }: Tab): number {
  let min = Infinity;
  let left = 0;
  corners.forEach((a, i) => {
    const b = cyclic(corners, i + 1);
    if ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x) > 0) left += 1;
    min = Math.min(min, fromSegment(p, a, b));
  });
  return left === 0 || left === 4 ? 0 : min;
}

/** The box of some corners, wider by `by` all round. */
function grown(corners: Tab['corners'], by: number): Bounds {
  const xs = corners.map(({ x }) => x);
  const ys = corners.map(({ y }) => y);
  return {
    minX: Math.min(...xs) - by,
    minY: Math.min(...ys) - by,
    maxX: Math.max(...xs) + by,
    maxY: Math.max(...ys) + by,
  };
}

/** The stretches of a closed path on which a tool of this radius would touch a tab; merged, in order. */
export function liftsOn(ring: RingPath, tabs: readonly Tab[], radius: number): Lift[] {
  const near = tabs.map((tab) => ({ tab, box: grown(tab.corners, radius) }));
  if (near.length === 0) return [];
  const tabsAt = ring.edges.map((edge) => {
    const { minX, minY, maxX, maxY } = edgeBounds(edge);
    return near.filter(({ box }) => box.minX < maxX && box.maxX > minX && box.minY < maxY && box.maxY > minY);
  });
  const count = Math.max(1, Math.ceil(ring.length / liftStep));
  const size = ring.length / count;
  let edge = 0;
  const touched = Array.from({ length: count }, (_, i) => {
    while ((ring.starts[edge + 1] ?? Infinity) <= i * size) edge += 1;
    const here = element(tabsAt, edge);
    if (here.length === 0) return false;
    const p = pointAt(ring, i * size);
    return here.some(
      ({ tab, box }) =>
        p.x > box.minX && p.x < box.maxX && p.y > box.minY && p.y < box.maxY && fromTab(p, tab) < radius,
    );
  });
  if (touched.every(Boolean)) return [{ from: 0, to: ring.length }];
  const lifts: Lift[] = [];
  for (let i = 0; i < count; i += 1) {
    if (!element(touched, i) || cyclic(touched, i - 1)) continue;
    let run = 1;
    while (cyclic(touched, i + run)) run += 1;
    lifts.push({ from: (i - 1) * size, to: (i + run) * size });
  }
  return lifts;
}

/** Whether one path stays above the tabs wherever the one along it does: where it does not, the wall stands there. */
export function liftsAlike(
  one: { readonly ring: RingPath; readonly lifts: readonly Lift[] },
  other: { readonly ring: RingPath; readonly lifts: readonly Lift[] },
): boolean {
  return other.lifts.every((lift) =>
    [lift.from, (lift.from + lift.to) / 2, lift.to].every((s) => {
      const along = nearestLength(one.ring, pointAt(other.ring, s));
      // on a stretch, or as near to one as the steps that found it
      return clearOfLifts(one.ring, one.lifts, along, 2 * liftStep) !== along;
    }),
  );
}

/** The stretches, longer by `by` mm at both ends. */
export function widened(lifts: readonly Lift[], by: number): Lift[] {
  return lifts.map(({ from, to }) => ({ from: from - by, to: to + by }));
}
