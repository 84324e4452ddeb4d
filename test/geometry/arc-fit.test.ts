import { Bezier } from 'bezier-js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Curve,
  distance,
  edgesOfPath,
  fitArcs,
  type FittedPath,
  type Path,
  type Point,
  pathLength,
  tangentOnEdge,
} from '../../lib/geometry/index.js';
import { fewestArcs } from './arc-lower-bound.js';
import { holds } from '../helpers/seeds.js';

function parabola(f: number, from: number, to: number): Curve {
  return { from, to, at: (u) => ({ x: u, y: (u * u) / (4 * f) }), tangent: (u) => ({ x: 1, y: u / (2 * f) }) };
}

/** The parallel of a parabola at distance d on its convex side. */
function parallel(f: number, d: number, from: number, to: number): Curve {
  return {
    from,
    to,
    at: (u) => {
      const psi = Math.atan(u / (2 * f));
      return { x: u + d * Math.sin(psi), y: (u * u) / (4 * f) - d * Math.cos(psi) };
    },
    tangent: (u) => ({ x: 1, y: u / (2 * f) }),
  };
}

const wave: Curve = {
  from: 0,
  to: 400,
  at: (t) => ({ x: t, y: 40 * Math.sin(t / 50) }),
  tangent: (t) => ({ x: 1, y: 0.8 * Math.cos(t / 50) }),
};

/** Distance of a point from a path, by its edges as they are defined: not by the fit's own formula. */
function offPath(point: Point, path: Path): number {
  let min = Infinity;
  for (const edge of edgesOfPath(path)) {
    for (const end of [edge.from, edge.to]) min = Math.min(min, distance(point, end));
    if (edge.kind === 'straight') {
      const dx = edge.to.x - edge.from.x;
      const dy = edge.to.y - edge.from.y;
      const t = ((point.x - edge.from.x) * dx + (point.y - edge.from.y) * dy) / (dx * dx + dy * dy);
      if (t > 0 && t < 1) min = Math.min(min, distance(point, { x: edge.from.x + t * dx, y: edge.from.y + t * dy }));
    } else {
      const middle = edge.startAngle + edge.sweep / 2;
      const away = Math.atan2(point.y - edge.centre.y, point.x - edge.centre.x) - middle;
      const turned = Math.abs(away - 2 * Math.PI * Math.round(away / (2 * Math.PI)));
      if (turned <= Math.abs(edge.sweep) / 2) min = Math.min(min, Math.abs(distance(point, edge.centre) - edge.radius));
    }
  }
  return min;
}

function checkFit(curve: Curve, tolerance: number, { path, deviation }: FittedPath): void {
  let max = 0;
  for (let i = 0; i <= 5000; i++)
    max = Math.max(max, offPath(curve.at(curve.from + ((curve.to - curve.from) * i) / 5000), path));
  expect(max).toBeLessThanOrEqual(tolerance);
  expect(deviation).toBeLessThanOrEqual(tolerance);
  expect(Math.abs(deviation - max)).toBeLessThan(0.01 * tolerance);
  expect(distance(path[0]!, curve.at(curve.from))).toBe(0);
  expect(distance(path.at(-1)!, curve.at(curve.to))).toBe(0);
  const edges = edgesOfPath(path);
  for (let i = 1; i < edges.length; i++) {
    const a = tangentOnEdge(edges[i - 1]!, 1);
    const b = tangentOnEdge(edges[i]!, 0);
    expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeLessThan(1e-9);
  }
}

describe('fitting arcs', () => {
  const cases: [string, Curve, number][] = [
    ['rib of a 1.5 m dish', parabola(550, 160, 750), 0.01],
    ['parabola from its vertex', parabola(550, 0, 750), 0.01],
    ['small dish', parabola(220, 60, 320), 0.01],
    ['deep dish', parabola(254, 80, 660), 0.01],
    ['rough tolerance', parabola(254, 80, 660), 0.1],
    ['fine tolerance', parabola(254, 80, 660), 0.001],
    ['whole parabola', parabola(600, -600, 600), 0.01],
    ['outer parallel', parallel(550, 10, 160, 750), 0.01],
    ['inner parallel', parallel(550, -12, 160, 750), 0.01],
    ['wave', wave, 0.05],
  ];
  it.each(cases)('of a %s keeps the tolerance with tangents shared', (_, curve, tolerance) => {
    checkFit(curve, tolerance, fitArcs(curve, tolerance));
  });

  it.each(cases)('of a %s takes at most 1.5 times as many arcs as any fit needs', (_, curve, tolerance) => {
    const arcs = fitArcs(curve, tolerance).path.length - 1;
    expect(arcs).toBeLessThanOrEqual(1.5 * fewestArcs(curve, tolerance, 240));
  });

  it('keeps the length of a parabola as bezier-js has it', () => {
    // a parabola arc is a quadratic Bezier whose middle control point is where the end tangents meet
    const [f, a, b] = [550, 160, 750];
    const bezier = new Bezier([a, (a * a) / (4 * f), (a + b) / 2, (a * b) / (4 * f), b, (b * b) / (4 * f)]);
    const fitted = fitArcs(parabola(f, a, b), 0.01);
    expect(Math.abs(pathLength(fitted.path) - bezier.length())).toBeLessThan(0.01);
    for (const p of bezier.getLUT(200)) expect(offPath(p, fitted.path)).toBeLessThanOrEqual(0.01);
  });

  it('gives one straight edge for a straight curve and one arc for an arc', () => {
    const line: Curve = {
      from: 0,
      to: 1,
      at: (t) => ({ x: 3 + 500 * t, y: 7 - 90 * t }),
      tangent: () => ({ x: 500, y: -90 }),
    };
    expect(fitArcs(line, 0.01).path.map((v) => v.bulge)).toEqual([0, 0]);
    const arc: Curve = {
      from: 0.2,
      to: 2.9,
      at: (t) => ({ x: 80 * Math.cos(t), y: 80 * Math.sin(t) }),
      tangent: (t) => ({ x: -Math.sin(t), y: Math.cos(t) }),
    };
    const { path, deviation } = fitArcs(arc, 0.01);
    expect(path).toHaveLength(2);
    expect(path[0]!.bulge).toBeCloseTo(Math.tan(2.7 / 4), 9);
    expect(deviation).toBeLessThan(1e-9);
  });

  it('holds for parallels of any dish', () => {
    holds(
      fc.property(
        fc.double({ min: 80, max: 2000, noNaN: true }),
        fc.double({ min: 0.05, max: 0.4, noNaN: true }),
        fc.double({ min: 0.6, max: 1.9, noNaN: true }),
        fc.double({ min: -10, max: 20, noNaN: true }),
        fc.constantFrom(0.05, 0.01, 0.002),
        (f, inner, outer, d, tolerance) => {
          const curve = parallel(f, d, inner * f, outer * f);
          checkFit(curve, tolerance, fitArcs(curve, tolerance));
        },
      ),
      { numRuns: 25 },
    );
  });

  it('refuses what has no fit', () => {
    expect(() => fitArcs(wave, 0)).toThrow(/above 0 mm/);
    expect(() => fitArcs({ ...wave, to: 0 }, 0.01)).toThrow(/length/);
    const corner: Curve = {
      from: -10,
      to: 10,
      at: (t) => ({ x: t, y: Math.abs(t) }),
      tangent: (t) => ({ x: 1, y: Math.sign(t) }),
    };
    expect(() => fitArcs(corner, 1e-4)).toThrow(/smooth/);
  });
});
