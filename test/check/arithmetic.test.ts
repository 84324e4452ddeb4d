/** The proof's own arithmetic of lines and arcs, held against plain sampling, which knows no formulas. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { farthestFrom } from '../../lib/check/deviation.js';
import { nearest } from '../../lib/check/edge-distance.js';
import { EdgeSet } from '../../lib/check/edge-set.js';
import { distanceFrom, type Edge, edgeBetween, edgesOf, pointAt } from '../../lib/check/edge.js';
import { inside, signedArea } from '../../lib/check/ring.js';

const coordinate = fc.double({ min: -100, max: 100, noNaN: true });
const bulge = fc.oneof(fc.constant(0), fc.double({ min: -3, max: 3, noNaN: true }));
const vertex = fc.record({ x: coordinate, y: coordinate, bulge });
const edge = fc
  .tuple(vertex, vertex)
  .filter(([a, b]) => Math.hypot(a.x - b.x, a.y - b.y) > 0.1)
  .map(([a, b]) => edgeBetween(a, b));
const ring = fc
  .array(vertex, { minLength: 3, maxLength: 9 })
  .map((vertices) => edgesOf(vertices, true))
  .filter((edges) => edges.every(({ length }) => length > 0.1));

const samples = 400;
const sampled = (one: Edge): { x: number; y: number }[] =>
  Array.from({ length: samples + 1 }, (_, i) => pointAt(one, i / samples));

function sampledDistance(points: readonly { x: number; y: number }[], x: number, y: number): number {
  return points.reduce((least, point) => Math.min(least, Math.hypot(point.x - x, point.y - y)), Infinity);
}

describe('an edge', () => {
  it('starts and ends where it should, and keeps its radius', () => {
    fc.assert(
      fc.property(edge, (one) => {
        const size = one.sweep === 0 ? 1 : 1 + one.radius;
        const start = pointAt(one, 0);
        const end = pointAt(one, 1);
        expect(Math.hypot(start.x - one.ax, start.y - one.ay)).toBeLessThan(1e-9 * size);
        expect(Math.hypot(end.x - one.bx, end.y - one.by)).toBeLessThan(1e-9 * size);
        for (const { x, y } of sampled(one)) {
          expect(x).toBeGreaterThanOrEqual(one.minX - 1e-9 * size);
          expect(x).toBeLessThanOrEqual(one.maxX + 1e-9 * size);
          expect(y).toBeGreaterThanOrEqual(one.minY - 1e-9 * size);
          expect(y).toBeLessThanOrEqual(one.maxY + 1e-9 * size);
        }
      }),
    );
  });

  it('is as far from a point as its nearest sample', () => {
    fc.assert(
      fc.property(edge, coordinate, coordinate, (one, x, y) => {
        const exact = distanceFrom(one, x, y);
        const rough = sampledDistance(sampled(one), x, y);
        expect(exact).toBeLessThanOrEqual(rough + 1e-7);
        expect(exact).toBeGreaterThanOrEqual(rough - one.length / samples);
      }),
    );
  });

  it('is as far from another as the nearest of their samples', () => {
    fc.assert(
      fc.property(edge, edge, (one, other) => {
        const exact = nearest(one, other);
        const points = sampled(other);
        const rough = sampled(one).reduce(
          (least, { x, y }) => Math.min(least, sampledDistance(points, x, y)),
          Infinity,
        );
        expect(exact.distance).toBeLessThanOrEqual(rough + 1e-6);
        expect(exact.distance).toBeGreaterThanOrEqual(rough - (one.length + other.length) / samples);
      }),
      { numRuns: 60 },
    );
  });
});

describe('a ring', () => {
  it('has the area and the inside of its samples', () => {
    fc.assert(
      fc.property(ring, coordinate, coordinate, (edges, x, y) => {
        const points = edges.flatMap((one) => sampled(one).slice(0, -1));
        // shoelace formula; a ray to the right for the point (both in any handbook of computational geometry)
        let area = 0;
        let turns = 0;
        points.forEach((a, i) => {
          const b = points[(i + 1) % points.length]!;
          area += (a.x * b.y - b.x * a.y) / 2;
          const side = (b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x);
          if (a.y <= y && b.y > y && side > 0) turns += 1;
          if (a.y > y && b.y <= y && side < 0) turns -= 1;
        });
        const length = edges.reduce((sum, one) => sum + one.length, 0);
        const flatness = edges.reduce(
          (most, one) => Math.max(most, one.length ** 2 / samples ** 2 / (one.sweep === 0 ? Infinity : one.radius)),
          0,
        );
        expect(Math.abs(signedArea(edges) - area)).toBeLessThanOrEqual(length * flatness + 1e-6);
        const near = edges.reduce((least, one) => Math.min(least, distanceFrom(one, x, y)), Infinity);
        // a ring that crosses itself may go round twice; the proof only asks inside or not
        // nearer than rounding it lies on the ring
        if (near > flatness + 1e-9 && Math.abs(turns) <= 1) expect(inside(edges, { x, y })).toBe(turns !== 0);
      }),
    );
  });
});

describe('the greatest distance of one ring from another', () => {
  it('stands at most half a micrometre above that of the samples and never below', () => {
    fc.assert(
      fc.property(ring, ring, (edges, others) => {
        const set = new EdgeSet(others);
        const { most } = farthestFrom(edges, set, Infinity);
        let rough = 0;
        for (const one of edges)
          for (const { x, y } of sampled(one)) rough = Math.max(rough, set.nearestTo(x, y).distance);
        const step = Math.max(...edges.map(({ length }) => length)) / samples;
        expect(most).toBeGreaterThanOrEqual(rough - 1e-7);
        expect(most).toBeLessThanOrEqual(rough + step / 2 + 0.0005);
      }),
      { numRuns: 40 },
    );
  });
});
