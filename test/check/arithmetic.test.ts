/** The proof's own arithmetic of lines and arcs, held against plain sampling, which knows no formulas. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { farthestFrom } from '../../lib/check/deviation.js';
import { closest } from '../../lib/check/edge-distance.js';
import { EdgeSet } from '../../lib/check/edge-set.js';
import { distanceFrom, type ProofEdge, edgeBetween, proofEdges, pointAlong } from '../../lib/check/edge.js';
import { inside, ringArea } from '../../lib/check/ring.js';
import { holds } from '../helpers/seeds.js';

const coordinate = fc.double({ min: -100, max: 100, noNaN: true });
const bulge = fc.oneof(fc.constant(0), fc.double({ min: -3, max: 3, noNaN: true }));
const vertex = fc.record({ x: coordinate, y: coordinate, bulge });
const edge = fc
  .tuple(vertex, vertex)
  .filter(([a, b]) => Math.hypot(a.x - b.x, a.y - b.y) > 0.1)
  .map(([a, b]) => edgeBetween(a, b));
const ring = fc
  .array(vertex, { minLength: 3, maxLength: 9 })
  .map((vertices) => proofEdges(vertices, true))
  .filter((edges) => edges.every(({ length }) => length > 0.1));

/** Seeds with which the arithmetic once failed, on arcs that are all but straight. */
const onceFailed = [23770, 981969, 1108673, 1623408, 71284, 15839, 269247];

const samples = 400;
const sampled = (one: ProofEdge): { x: number; y: number }[] =>
  Array.from({ length: samples + 1 }, (_, i) => pointAlong(one, i / samples));

function sampledDistance(points: readonly { x: number; y: number }[], x: number, y: number): number {
  // roots of squares only at the end: there are millions of them
  return Math.sqrt(points.reduce((min, point) => Math.min(min, (point.x - x) ** 2 + (point.y - y) ** 2), Infinity));
}

describe('an edge', () => {
  it('starts and ends where it should, and keeps its radius', () => {
    holds(
      fc.property(edge, (one) => {
        const size = one.sweep === 0 ? 1 : 1 + one.radius;
        const start = pointAlong(one, 0);
        const end = pointAlong(one, 1);
        expect(Math.hypot(start.x - one.ax, start.y - one.ay)).toBeLessThan(1e-9 * size);
        expect(Math.hypot(end.x - one.bx, end.y - one.by)).toBeLessThan(1e-9 * size);
        const beyond = sampled(one).map(({ x, y }) => Math.max(one.minX - x, x - one.maxX, one.minY - y, y - one.maxY));
        expect(Math.max(...beyond)).toBeLessThanOrEqual(1e-9 * size);
      }),
      { onceFailed },
    );
  });

  it('is as far from a point as its nearest sample', () => {
    holds(
      fc.property(edge, coordinate, coordinate, (one, x, y) => {
        const exact = distanceFrom(one, x, y);
        const rough = sampledDistance(sampled(one), x, y);
        expect(exact).toBeLessThanOrEqual(rough + 1e-7);
        expect(exact).toBeGreaterThanOrEqual(rough - one.length / samples);
      }),
      { onceFailed },
    );
  });

  it('is as far from another as the nearest of their samples', () => {
    holds(
      fc.property(edge, edge, (one, other) => {
        const exact = closest(one, other);
        const points = sampled(other);
        const rough = sampled(one).reduce((min, { x, y }) => Math.min(min, sampledDistance(points, x, y)), Infinity);
        expect(exact.distance).toBeLessThanOrEqual(rough + 1e-6);
        expect(exact.distance).toBeGreaterThanOrEqual(rough - (one.length + other.length) / samples);
      }),
      { numRuns: 60, onceFailed },
    );
  });
});

describe('a ring', () => {
  it('has the area and the inside of its samples', () => {
    holds(
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
          (max, one) => Math.max(max, one.length ** 2 / samples ** 2 / (one.sweep === 0 ? Infinity : one.radius)),
          0,
        );
        expect(Math.abs(ringArea(edges) - area)).toBeLessThanOrEqual(length * flatness + 1e-6);
        const near = edges.reduce((min, one) => Math.min(min, distanceFrom(one, x, y)), Infinity);
        // a ring that crosses itself may go round twice; the proof only asks inside or not
        // nearer than rounding it lies on the ring
        if (near > flatness + 1e-9 && Math.abs(turns) <= 1) expect(inside(edges, { x, y })).toBe(turns !== 0);
      }),
      { onceFailed },
    );
  });
});

describe('the greatest distance of one ring from another', () => {
  it('stands at most half a micrometre above that of the samples and never below', () => {
    holds(
      fc.property(ring, ring, (edges, others) => {
        const set = new EdgeSet(others);
        const { max } = farthestFrom(edges, set, Infinity);
        let rough = 0;
        for (const one of edges)
          for (const { x, y } of sampled(one)) rough = Math.max(rough, set.nearestTo(x, y).distance);
        const step = Math.max(...edges.map(({ length }) => length)) / samples;
        expect(max).toBeGreaterThanOrEqual(rough - 1e-7);
        expect(max).toBeLessThanOrEqual(rough + step / 2 + 0.0005);
      }),
      { numRuns: 40, onceFailed },
    );
  });
});

describe('the greatest distance of an arc from another that runs along it', () => {
  const shift = fc.double({ min: -0.05, max: 0.05, noNaN: true });
  const along = fc.record({
    radius: fc.double({ min: 2, max: 3000, noNaN: true }),
    sweep: fc.double({ min: -6, max: 6, noNaN: true }).filter((sweep) => Math.abs(sweep) > 0.01),
    off: fc.oneof(fc.constant(0), fc.double({ min: -1, max: 3, noNaN: true })),
    shifts: fc.tuple(shift, shift, shift, shift),
    turned: shift,
  });
  class Counted extends EdgeSet {
    asked = 0;
    override nearestTo(...args: Parameters<EdgeSet['nearestTo']>): ReturnType<EdgeSet['nearestTo']> {
      this.asked += 1;
      return super.nearestTo(...args);
    }
  }
  const arcOf = (radius: number, from: number, sweep: number, [ax, ay, bx, by] = [0, 0, 0, 0]) =>
    edgeBetween(
      { x: radius * Math.cos(from) + ax, y: radius * Math.sin(from) + ay, bulge: Math.tan(sweep / 4) },
      { x: radius * Math.cos(from + sweep) + bx, y: radius * Math.sin(from + sweep) + by },
    );

  it('is that of the samples, and found by few', () => {
    let asked = 0;
    let arcs = 0;
    holds(
      fc.property(along, ({ radius, sweep, off, shifts, turned }) => {
        const set = new Counted([arcOf(radius + off, turned / 10, sweep, shifts)]);
        const one = arcOf(radius, 0, sweep);
        const { max } = farthestFrom([one], set, Infinity);
        asked += set.asked;
        arcs += 1;
        const rough = Math.max(...sampled(one).map(({ x, y }) => set.nearestTo(x, y).distance));
        expect(max).toBeGreaterThanOrEqual(rough - 1e-7);
        expect(max).toBeLessThanOrEqual(rough + one.length / samples / 2 + 0.0005);
      }),
      { numRuns: 300 },
    );
    // by halves down to where an arc leaves its chord by half a micrometre it would take hundreds
    expect(asked / arcs).toBeLessThan(30);
  });
});

describe('the greatest distance of a line from an arc', () => {
  // a half circle about the origin, open to the right; its ends are at 0, 10 and 0, -10
  const arc = new EdgeSet([edgeBetween({ x: 0, y: 10, bulge: 1 }, { x: 0, y: -10 })]);
  const line = (ax: number, ay: number, bx: number, by: number) => [
    edgeBetween({ x: ax, y: ay, bulge: 0 }, { x: bx, y: by }),
  ];

  it('is met between the ends of the line where another end of the arc becomes the nearer one', () => {
    // by Pythagoras: the middle of the line is at 24, 0, and 26 from both ends of the arc
    expect(farthestFrom(line(24, -5, 24, 5), arc, Infinity).max).toBeCloseTo(26, 3);
  });

  it('is the radius where the line passes through the centre', () => {
    expect(farthestFrom(line(-6, -8, 0, 0), arc, Infinity).max).toBeCloseTo(10, 3);
  });

  it('is taken at an end of the line that lies outside the circle', () => {
    expect(farthestFrom(line(-13, 0, -10, 1), arc, Infinity).max).toBeCloseTo(3, 3);
  });
});

describe('an arc whose centre is a thousand kilometres off', () => {
  // rise 1e-5 above a chord of 100 by the sagitta, s = c²/8r
  const flat = edgeBetween({ x: 0, y: 0, bulge: -2.2e-7 }, { x: 100, y: 0 });

  it('keeps its middle, its ends and its box to a picometre', () => {
    expect(flat.radius).toBeGreaterThan(1e8);
    expect(pointAlong(flat, 0.5).y).toBeCloseTo(1.1e-5, 12);
    expect(pointAlong(flat, 0)).toEqual({ x: 0, y: 0 });
    expect(pointAlong(flat, 1)).toEqual({ x: 100, y: 0 });
    expect(flat.maxY).toBeCloseTo(1.1e-5, 12);
  });

  it('is as far from a point as from its end, just past it', () => {
    expect(distanceFrom(flat, 100.001, 0)).toBeCloseTo(0.001, 12);
    expect(distanceFrom(flat, 50, 1)).toBeCloseTo(1 - 1.1e-5, 12);
  });

  it('adds the area of its segment, two thirds of chord times rise', () => {
    const back = edgeBetween({ x: 100, y: 0, bulge: 0 }, { x: 0, y: 0 });
    expect(ringArea([flat, back])).toBeCloseTo((-2 / 3) * 100 * 1.1e-5, 10);
  });
});
