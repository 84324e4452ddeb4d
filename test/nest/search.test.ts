/** The search against the same question asked by trying every corner and every crossing. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../lib/geometry/index.js';
import { NoFit } from '../../lib/nest/no-fit.js';
import { Search, TOUCHING } from '../../lib/nest/search.js';
import { holds } from '../helpers/seeds.js';

interface Placed {
  readonly ring: readonly Point[];
  readonly x: number;
  readonly y: number;
  readonly weight: number;
}

/** Star-shaped rings, so that they never cross themselves; most are not convex. */
const ring = fc.array(fc.integer({ min: 20, max: 100 }), { minLength: 3, maxLength: 9 }).map((radii) =>
  radii.map((radius, i): Point => {
    const angle = (2 * Math.PI * i) / radii.length + 0.1;
    return { x: (radius / 4) * Math.cos(angle), y: (radius / 4) * Math.sin(angle) };
  }),
);
const coordinate = fc.integer({ min: 0, max: 1000 }).map((tenths) => tenths / 10);
const placed = fc.record({ ring, x: coordinate, y: coordinate, weight: fc.integer({ min: 1, max: 9 }) });
const limits = { x0: 10, y0: 5, x1: 90, y1: 60 };

type Segment = readonly [Point, Point];

const segmentsOf = (points: readonly Point[], dx: number, dy: number): Segment[] => {
  const moved = points.map(({ x, y }) => ({ x: x + dx, y: y + dy }));
  return moved.map((p, i) => [p, moved[(i + 1) % moved.length]!]);
};

/** Where two segments cross, if they do (Cramer's rule). */
function crossing([a, b]: Segment, [c, d]: Segment): Point[] {
  const det = (b.x - a.x) * (d.y - c.y) - (b.y - a.y) * (d.x - c.x);
  if (det === 0) return [];
  const t = ((c.x - a.x) * (d.y - c.y) - (c.y - a.y) * (d.x - c.x)) / det;
  const u = ((c.x - a.x) * (b.y - a.y) - (c.y - a.y) * (b.x - a.x)) / det;
  return t < 0 || t > 1 || u < 0 || u > 1 ? [] : [{ x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) }];
}

/** How deep a point lies within a ring: 0 outside. Inside by the ray to the right, distance segment by segment. */
function depthIn(segments: readonly Segment[], { x, y }: Point): number {
  let inside = false;
  let min = Infinity;
  for (const [a, b] of segments) {
    if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
    const [ex, ey] = [b.x - a.x, b.y - a.y];
    const t = Math.max(0, Math.min(1, ((x - a.x) * ex + (y - a.y) * ey) / (ex * ex + ey * ey)));
    min = Math.min(min, Math.hypot(x - a.x - t * ex, y - a.y - t * ey));
  }
  return inside && min > TOUCHING ? min : 0;
}

/** What a depth counts for. */
type Counts = (depth: number) => number;

function everyPlace(
  things: readonly Placed[],
  counts: Counts = (depth) => depth,
): { readonly place: Point; readonly cost: number }[] {
  const { x0, y0, x1, y1 } = limits;
  const box = [
    { x: x0, y: y0 },
    { x: x1, y: y0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ];
  const edges = [segmentsOf(box, 0, 0), ...things.map((thing) => segmentsOf(thing.ring, thing.x, thing.y))];
  const places = edges.flatMap((one, i) => [
    ...one.map(([a]) => a),
    ...edges.slice(i + 1).flatMap((other) => one.flatMap((s) => other.flatMap((t) => crossing(s, t)))),
  ]);
  return places
    .filter(({ x, y }) => x >= x0 - 1e-9 && x <= x1 + 1e-9 && y >= y0 - 1e-9 && y <= y1 + 1e-9)
    .map((place) => ({
      place,
      cost: things.reduce((sum, { weight }, i) => sum + weight * counts(depthIn(edges[i + 1]!, place)), 0),
    }));
}

function searchOver(things: readonly Placed[]): Search {
  const search = new Search();
  search.start(limits.x0, limits.y0, limits.x1, limits.y1);
  for (const { ring: points, x, y, weight } of things) search.add(new NoFit([points]), x, y, weight);
  return search;
}

describe('the search for a place', () => {
  it.each([
    ['depths', false],
    ['roots of depths', true],
  ] as const)('finds the least sum of %s of all corners and crossings', (_, rooted) => {
    const counts: Counts = rooted ? Math.sqrt : (depth) => depth;
    holds(
      fc.property(
        fc.array(placed, { minLength: 1, maxLength: 30 }),
        fc.integer({ min: 0, max: 32767 }),
        (things, turn) => {
          const search = searchOver(things);
          const found = search.minCost(1e6, turn, rooted);
          const best = everyPlace(things, counts).reduce((min, { cost }) => Math.min(min, cost), Infinity);
          expect(found).toBeCloseTo(best, 6);
          // and says where: the cost there is the one that it tells
          const at = { x: search.foundX, y: search.foundY };
          const there = things.reduce(
            (sum, { ring: points, x, y, weight }) => sum + weight * counts(depthIn(segmentsOf(points, x, y), at)),
            0,
          );
          expect(there).toBeCloseTo(found, 6);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('finds the free place furthest left', () => {
    holds(
      fc.property(fc.array(placed, { minLength: 1, maxLength: 30 }), (things) => {
        const found = searchOver(things.map((thing) => ({ ...thing, weight: 1 }))).leftmost(-Infinity, Infinity);
        const free = everyPlace(things).filter(({ cost }) => cost === 0);
        const best = free.reduce((min, { place }) => Math.min(min, place.x), Infinity);
        if (best === Infinity) expect(found).toBe(Infinity);
        else expect(found).toBeCloseTo(best, 6);
      }),
      { numRuns: 300 },
    );
  });
});
