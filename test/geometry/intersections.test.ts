import fc from 'fast-check';
import makerjs from 'makerjs';
import * as polyclip from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import {
  bulgeOfSweep,
  circle,
  closestOfContours,
  clockwise,
  type Contour,
  contourFromPoints,
  type Edge,
  edgeArc,
  edgesOf,
  flatten,
  intersectEdges,
  intersectPolygons,
  nearestOnContour,
  nearestOnEdge,
  pointOnEdge,
  pointWithin,
  type Polygon,
  polygonArea,
  rectangle,
  sideOfContour,
  signedArea,
  simplicity,
  subtractPolygons,
  tangentOnEdge,
  unionPolygons,
  unswept,
} from '../../lib/geometry/index.js';
import { bentRing, straightRing } from './rings.js';
import { holds } from '../helpers/seeds.js';

const coordinate = fc.double({ min: -100, max: 100, noNaN: true });
const point = fc.record({ x: coordinate, y: coordinate });
/** Straight, or bent enough for makerjs, which works with angles rounded to 1e-7 degrees. */
const bend = fc.double({ min: -1.5, max: 1.5, noNaN: true }).map((bulge) => (Math.abs(bulge) < 0.01 ? 0 : bulge));
/** Edges that start on one side of the origin and end about opposite, so that two of them as a rule meet. */
const edge: fc.Arbitrary<Edge> = fc
  .tuple(
    fc.integer({ min: 0, max: 6283 }),
    fc.integer({ min: -700, max: 700 }),
    fc.integer({ min: 200, max: 1000 }),
    fc.integer({ min: 200, max: 1000 }),
    bend,
  )
  .map(([angle, askew, r0, r1, bulge]) => {
    const from = { x: (r0 / 10) * Math.cos(angle / 1000), y: (r0 / 10) * Math.sin(angle / 1000), bulge };
    const far = angle / 1000 + Math.PI + askew / 1000;
    return edgeArc(from, { x: (r1 / 10) * Math.cos(far), y: (r1 / 10) * Math.sin(far) });
  });

/** The same edge as makerjs has it: arcs by degrees, always anticlockwise. */
function makerPath(e: Edge): makerjs.IPath {
  if (e.kind === 'straight') return new makerjs.paths.Line([e.from.x, e.from.y], [e.to.x, e.to.y]);
  const degrees = (angle: number): number => (angle * 180) / Math.PI;
  const ends = [degrees(e.startAngle), degrees(e.startAngle + e.sweep)] as const;
  const [start, end] = e.sweep > 0 ? ends : [ends[1], ends[0]];
  return new makerjs.paths.Arc([e.centre.x, e.centre.y], e.radius, start, end);
}

describe('intersections of edges', () => {
  it('lie on both edges, and are those that makerjs finds', () => {
    let met = 0;
    holds(
      fc.property(edge, edge, (a, b) => {
        const contact = intersectEdges(a, b);
        const points = contact.kind === 'none' ? [] : contact.points;
        for (const p of points) {
          const onA = pointOnEdge(a, p.onA);
          const onB = pointOnEdge(b, p.onB);
          expect(Math.hypot(onA.x - p.x, onA.y - p.y)).toBeLessThan(1e-7);
          expect(Math.hypot(onB.x - p.x, onB.y - p.y)).toBeLessThan(1e-7);
        }
        // makerjs rounds; leave intersections at the very ends of an edge and near touches aside
        const clear =
          [a.from, a.to].every((end) => nearestOnEdge(b, end).distance > 0.001) &&
          [b.from, b.to].every((end) => nearestOnEdge(a, end).distance > 0.001);
        const apart = points.length < 2 || Math.hypot(points[0]!.x - points[1]!.x, points[0]!.y - points[1]!.y) > 0.1;
        const steep = points.every((p) => {
          const [s, t] = [tangentOnEdge(a, p.onA), tangentOnEdge(b, p.onB)];
          return Math.abs(s.x * t.y - s.y * t.x) > 0.001;
        });
        if (!clear || !apart || !steep || points.length === 0) return;
        met++;
        const found = makerjs.path.intersection(makerPath(a), makerPath(b)).intersectionPoints;
        expect(found).toHaveLength(points.length);
        for (const p of points) {
          expect(Math.min(...found.map((q) => Math.hypot(q[0]! - p.x, q[1]! - p.y)))).toBeLessThan(1e-4);
        }
      }),
      { numRuns: 400 },
    );
    expect(met).toBeGreaterThan(150);
  });

  it('tells touching, crossing and running along each other apart', () => {
    const line = (x0: number, y0: number, x1: number, y1: number): Edge =>
      edgeArc({ x: x0, y: y0, bulge: 0 }, { x: x1, y: y1 });
    const arc = (x0: number, y0: number, x1: number, y1: number, sweep: number): Edge =>
      edgeArc({ x: x0, y: y0, bulge: bulgeOfSweep(sweep) }, { x: x1, y: y1 });
    const count = (a: Edge, b: Edge): [string, number] => {
      const contact = intersectEdges(a, b);
      return [contact.kind, contact.kind === 'none' ? 0 : contact.points.length];
    };
    const half = arc(10, 0, -10, 0, Math.PI);
    expect(count(line(-20, 10, 20, 10), half)).toEqual(['points', 1]);
    expect(count(line(-20, 5, 20, 5), half)).toEqual(['points', 2]);
    expect(count(line(-20, 11, 20, 11), half)).toEqual(['none', 0]);
    expect(count(line(0, 0, 10, 0), line(5, 0, 20, 0))).toEqual(['overlap', 2]);
    expect(count(line(0, 0, 10, 0), line(10, 0, 20, 0))).toEqual(['points', 1]);
    expect(count(line(0, 0, 10, 0), line(11, 0, 20, 0))).toEqual(['none', 0]);
    expect(count(line(0, 0, 10, 0), line(0, 1, 10, 1))).toEqual(['none', 0]);
    // the other half of the circle meets this one at both ends and nowhere else
    expect(count(half, arc(-10, 0, 10, 0, Math.PI))).toEqual(['points', 2]);
    expect(count(half, arc(0, 10, 0, -10, Math.PI))[0]).toBe('overlap');
    expect(count(half, arc(30, 0, 10, 0, Math.PI))).toEqual(['points', 1]);
  });
});

describe('sides of a ring', () => {
  it('agree with the winding of a finely flattened ring', () => {
    holds(
      fc.property(bentRing, point, (ring, p) => {
        const polygon = flatten(ring, 0.0005, 'on');
        let turns = 0;
        polygon.forEach((a, i) => {
          const b = polygon[(i + 1) % polygon.length]!;
          turns += Math.atan2(
            (a.x - p.x) * (b.y - p.y) - (b.x - p.x) * (a.y - p.y),
            (a.x - p.x) * (b.x - p.x) + (a.y - p.y) * (b.y - p.y),
          );
        });
        fc.pre(nearestOnContour(ring, p).distance > 0.001);
        expect(sideOfContour(ring, p, 1e-6)).toBe(Math.abs(turns) > 1 ? 'inside' : 'outside');
      }),
      { numRuns: 400 },
    );
  });

  it('are told for points on the line of a chord, level with a vertex, and on the edge', () => {
    const disc = circle({ x: 0, y: 0 }, 10);
    expect(sideOfContour(disc, { x: 0, y: 0 }, 1e-6)).toBe('inside');
    expect(sideOfContour(disc, { x: 9, y: 0 }, 1e-6)).toBe('inside');
    expect(sideOfContour(disc, { x: 11, y: 0 }, 1e-6)).toBe('outside');
    expect(sideOfContour(disc, { x: -11, y: 0 }, 1e-6)).toBe('outside');
    expect(sideOfContour(disc, { x: 6, y: 8 }, 1e-6)).toBe('on');
    expect(sideOfContour(clockwise(disc), { x: 3, y: 0 }, 1e-6)).toBe('inside');
    const diamond = contourFromPoints([
      { x: 10, y: 0 },
      { x: 0, y: 10 },
      { x: -10, y: 0 },
      { x: 0, y: -10 },
    ]);
    for (const [x, side] of [
      [-15, 'outside'],
      [-5, 'inside'],
      [0, 'inside'],
      [5, 'inside'],
      [15, 'outside'],
    ] as const) {
      expect(sideOfContour(diamond, { x, y: 0 }, 1e-6)).toBe(side);
    }
  });

  it('have a point within that is inside', () => {
    holds(
      fc.property(bentRing, (ring) => {
        expect(sideOfContour(ring, pointWithin(ring), 1e-9)).toBe('inside');
      }),
    );
    const crescent: Contour = [
      { x: 0, y: -50, bulge: 1 },
      { x: 0, y: 50, bulge: -0.7 },
    ];
    expect(sideOfContour(crescent, pointWithin(crescent), 1e-6)).toBe('inside');
  });
});

describe('distances', () => {
  it('between two rings are no more than between any of their points, and come close to the least', () => {
    holds(
      fc.property(
        bentRing,
        bentRing,
        fc.double({ min: 120, max: 400, noNaN: true }),
        fc.double({ min: 0, max: 6.2, noNaN: true }),
        (a, other, away, angle) => {
          const b = other.map((v) => ({ ...v, x: v.x + away * Math.cos(angle), y: v.y + away * Math.sin(angle) }));
          const closest = closestOfContours(a, b);
          const pointsOf = (ring: Contour): Polygon =>
            edgesOf(ring).flatMap((e) => Array.from({ length: 60 }, (_, k) => pointOnEdge(e, k / 60)));
          let min = Infinity;
          for (const p of pointsOf(a))
            for (const q of pointsOf(b)) min = Math.min(min, Math.hypot(p.x - q.x, p.y - q.y));
          expect(closest.distance).toBeLessThanOrEqual(min + 1e-9);
          // neighbouring samples lie up to 5 mm apart along an edge
          expect(closest.distance).toBeGreaterThan(min - 5);
          expect(Math.hypot(closest.onA.x - closest.onB.x, closest.onA.y - closest.onB.y)).toBeCloseTo(
            closest.distance,
            9,
          );
          expect(nearestOnContour(a, closest.onB).distance).toBeCloseTo(closest.distance, 9);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('are exact with arcs', () => {
    const a = circle({ x: 0, y: 0 }, 10);
    expect(closestOfContours(a, circle({ x: 30, y: 40 }, 15)).distance).toBeCloseTo(25, 12);
    expect(closestOfContours(a, circle({ x: 3, y: 0 }, 5)).distance).toBeCloseTo(2, 12);
    expect(closestOfContours(a, rectangle(17, -50, 20, 50)).distance).toBeCloseTo(7, 12);
    expect(closestOfContours(a, rectangle(5, -50, 20, 50)).distance).toBe(0);
  });
});

describe('a ring that meets itself', () => {
  it('is found, with the place', () => {
    const bow = contourFromPoints([
      { x: 0, y: 0 },
      { x: 10, y: 10 },
      { x: 10, y: 0 },
      { x: 0, y: 10 },
    ]);
    expect(simplicity(bow, 1e-6)).toMatchObject({ kind: 'meets-itself', place: { x: 5, y: 5 } });
    const touching = contourFromPoints([
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 10, y: 10 },
      { x: 5, y: 0 },
      { x: 0, y: 10 },
    ]);
    expect(simplicity(touching, 1e-6)).toMatchObject({ kind: 'meets-itself', place: { x: 5, y: 0 } });
    expect(simplicity(circle({ x: 0, y: 0 }, 3), 1e-6)).toEqual({ kind: 'simple' });
    const bulging: Contour = rectangle(0, 0, 10, 4).map((v, i) => (i === 0 ? { ...v, bulge: -1 } : v));
    expect(simplicity(bulging, 1e-6).kind).toBe('meets-itself');
  });
});

describe('polygons combined', () => {
  const close = (ring: Polygon): [number, number][] => [...ring, ring[0]!].map(({ x, y }) => [x, y]);
  const areaOf = (rings: readonly Polygon[]): number => rings.reduce((sum, ring) => sum + polygonArea(ring), 0);
  const theirArea = (result: polyclip.Geom): number =>
    (result as [number, number][][][]).reduce(
      (sum, polygon) =>
        sum +
        polygon.reduce((s, ring, k) => {
          const size = Math.abs(polygonArea(ring.slice(1).map(([x, y]) => ({ x, y }))));
          return k === 0 ? s + size : s - size;
        }, 0),
      0,
    );

  it('have the areas that polyclip-ts finds', () => {
    holds(
      fc.property(straightRing, straightRing, point, (a, other, by) => {
        // polyclip-ts fails on edges that all but coincide
        fc.pre(Math.hypot(by.x, by.y) > 1);
        const b = other.map((v) => ({ ...v, x: v.x + by.x, y: v.y + by.y }));
        const [p, q] = [[close(a)], [close(b)]];
        expect(areaOf(unionPolygons([a, b]))).toBeCloseTo(theirArea(polyclip.union(p, q)), 2);
        expect(areaOf(subtractPolygons([a], [b]))).toBeCloseTo(theirArea(polyclip.difference(p, q)), 2);
        expect(areaOf(intersectPolygons([a], [b]))).toBeCloseTo(theirArea(polyclip.intersection(p, q)), 2);
      }),
      { numRuns: 60 },
    );
  });
});

describe('what a disc cannot sweep', () => {
  it('is r²(cot β + β - π/2) in a corner of half-angle β', () => {
    for (const degrees of [20, 45, 70]) {
      const beta = (degrees * Math.PI) / 180;
      const reach = 200;
      // an opening whose tip has the angle, its other corners far away and rounded by their own width
      const tip = clockwise(
        contourFromPoints([
          { x: 0, y: 0 },
          { x: reach * Math.cos(beta), y: -reach * Math.sin(beta) },
          { x: reach * Math.cos(beta), y: reach * Math.sin(beta) },
        ]),
      );
      const region = unswept(tip, 3).find((one) => one.some((v) => Math.hypot(v.x, v.y) < 1e-9))!;
      expect(signedArea(region)).toBeCloseTo(9 * (1 / Math.tan(beta) + beta - Math.PI / 2), 6);
    }
  });

  it('is all of an opening that the disc does not enter, and nothing of one that is as round', () => {
    expect(unswept(clockwise(rectangle(0, 0, 50, 5)), 3).map(signedArea)).toEqual([250]);
    expect(unswept(clockwise(circle({ x: 0, y: 0 }, 8)), 3)).toEqual([]);
  });
});
