/** Arc fits and offsets, judged by the proof's own arithmetic, which shares nothing with theirs. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitArcs, offsetContour, type Vertex } from '../../lib/geometry/index.js';
import { type ProofEdge, proofEdges, pointAlong } from '../../lib/check/edge.js';
import { EdgeSet } from '../../lib/check/edge-set.js';
import { farthestFrom } from '../../lib/check/deviation.js';
import { inside } from '../../lib/check/ring.js';
import { holds } from '../helpers/seeds.js';

const numRuns = 60;
const night = 1000;

/** Angle by which the way turns from one edge into the next, radians. */
function turn(before: ProofEdge, after: ProofEdge): number {
  const a = pointAlong(before, 1 - 1e-6);
  const b = pointAlong(after, 1e-6);
  const [ux, uy] = [after.ax - a.x, after.ay - a.y];
  const [vx, vy] = [b.x - after.ax, b.y - after.ay];
  return Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
}

describe('arc fits of parabolas', () => {
  it('keep to the tolerance, say their deviation, and have no corners', () => {
    holds(
      fc.property(
        fc.double({ min: 50, max: 3000, noNaN: true }),
        fc.double({ min: 0.1, max: 1, noNaN: true }),
        fc.double({ min: 0.002, max: 0.1, noNaN: true }),
        (focalLength, share, tolerance) => {
          const to = 2 * focalLength * share;
          const from = to * 0.05;
          const at = (u: number) => ({ x: u, y: (u * u) / (4 * focalLength) });
          const tangent = (u: number) => ({ x: 1, y: u / (2 * focalLength) });
          const { path, deviation } = fitArcs({ from, to, at, tangent }, tolerance);
          const edges = proofEdges(path, false);
          const set = new EdgeSet(edges);
          let worst = 0;
          for (let i = 0; i <= 2000; i += 1) {
            const { x, y } = at(from + ((to - from) * i) / 2000);
            worst = Math.max(worst, set.nearestTo(x, y).distance);
          }
          expect(worst).toBeLessThanOrEqual(tolerance * 1.001);
          expect(worst).toBeLessThanOrEqual(deviation * 1.01 + 1e-6);
          edges.slice(1).forEach((edge, i) => {
            expect(Math.abs(turn(edges[i]!, edge))).toBeLessThan(1e-3);
          });
        },
      ),
      { numRuns, night },
    );
  });
});

/** Star-shaped rings: they never cross themselves. Arcs are kept shallow for the same reason. */
const spoke = fc.record({
  radius: fc.double({ min: 30, max: 100, noNaN: true }),
  bulge: fc.double({ min: -0.05, max: 0.05, noNaN: true }),
});
const star = fc.array(spoke, { minLength: 3, maxLength: 12 }).map((spokes): Vertex[] =>
  spokes.map(({ radius, bulge }, i) => {
    const angle = (2 * Math.PI * i) / spokes.length;
    return { x: radius * Math.cos(angle), y: radius * Math.sin(angle), bulge };
  }),
);

describe('offsets', () => {
  it.each([1, -1])('stand off by the distance asked for, everywhere and on the right side (%i)', (side) => {
    holds(
      fc.property(star, fc.double({ min: 0.1, max: 12, noNaN: true }), (ring, distance) => {
        const edges = proofEdges(ring, true);
        const set = new EdgeSet(edges);
        for (const path of offsetContour(ring, side * distance)) {
          const own = proofEdges(path, true);
          // nowhere farther: certified to half a micrometre
          expect(farthestFrom(own, set, Infinity).max).toBeLessThanOrEqual(distance + 0.0006);
          for (const edge of own) {
            // nowhere nearer: exact
            const near = set.nearestWithin(edge, distance);
            if (near) expect(distance - near.distance).toBeLessThan(1e-5);
            expect(inside(edges, pointAlong(edge, 0.5))).toBe(side < 0);
          }
        }
      }),
      { numRuns: 2 * numRuns, night: 2 * night },
    );
  });
});
