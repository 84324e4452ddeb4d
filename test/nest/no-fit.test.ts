import fc from 'fast-check';
import * as polyclip from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import { NoFits } from '../../lib/nest/no-fit.js';
import { type NestShape, Shapes } from '../../lib/nest/shape.js';
import { box, type Corners, ring } from '../helpers/nest-parts.js';
import { holds } from '../helpers/seeds.js';

type Poly = [number, number][][];

const ringOf = (points: readonly { x: number; y: number }[], dx = 0, dy = 0): [number, number][] =>
  points.map(({ x, y }) => [x + dx, y + dy]);
const polyOf = ({ outline, openings }: NestShape, dx = 0, dy = 0): Poly => [
  ringOf(outline, dx, dy),
  ...openings.map((opening) => ringOf(opening, dx, dy)),
];

/** Area that two shapes share, by polyclip-ts. */
function sharedArea(a: Poly, b: Poly): number {
  const area = (points: readonly (readonly [number, number])[]): number =>
    points.reduce((sum, [x, y], i) => {
      const [u, v] = points[(i + 1) % points.length]!;
      return sum + (x * v - u * y) / 2;
    }, 0);
  return polyclip.intersection(a, b).reduce((sum, rings) => sum + rings.reduce((s, points) => s + area(points), 0), 0);
}

const notched: Corners = [
  [0, 0],
  [9, 0],
  [9, 6],
  [6, 6],
  [6, 2],
  [3, 2],
  [3, 6],
  [0, 6],
];
const star: Corners = [
  [0, 0],
  [2, 1],
  [4, 0],
  [3, 2],
  [4, 5],
  [2, 4],
  [0, 5],
  [1, 3],
];
const wedge: Corners = [
  [0, 0],
  [7, 1],
  [5, 5],
];

describe('no-fit region', () => {
  const shapes = new Shapes(0);
  const laid = [notched, star, wedge].flatMap((corners) =>
    [0, 37, 180].map((angle) => shapes.orient(ring(corners), [], angle, false).shape),
  );
  laid.push(shapes.orient(box(12, 12), [[...box(7, 7, 2, 2)].reverse()], 0, false).shape);
  const noFits = new NoFits();
  const index = fc.integer({ min: 0, max: laid.length - 1 });
  const share = fc.double({ min: -0.1, max: 1.1, noNaN: true });

  it('holds a place exactly when polyclip-ts finds a common area there', () => {
    holds(
      fc.property(index, index, share, share, (i, j, u, v) => {
        const [fixed, moving] = [laid[i]!, laid[j]!];
        const region = noFits.of(fixed, moving);
        const x = region.minX + u * (region.maxX - region.minX);
        const y = region.minY + v * (region.maxY - region.minY);
        const depth = region.depth(x, y);
        const area = sharedArea(polyOf(fixed), polyOf(moving, x, y));
        if (depth > 1e-4) expect(area).toBeGreaterThan(0);
        else if (depth === 0) expect(area).toBeLessThan(1e-3);
      }),
      { numRuns: 400 },
    );
  });

  it('bounds its depth from below, and is 0 outside for certain', () => {
    holds(
      fc.property(index, index, share, share, (i, j, u, v) => {
        const region = noFits.of(laid[i]!, laid[j]!);
        const x = region.minX + Math.min(0.999, Math.max(0.001, u)) * (region.maxX - region.minX);
        const y = region.minY + Math.min(0.999, Math.max(0.001, v)) * (region.maxY - region.minY);
        const bound = region.depthLowerBound(x, y);
        expect(bound).toBeLessThanOrEqual(region.depth(x, y) + 1e-6);
        if (bound < 0) expect(region.depth(x, y)).toBe(0);
      }),
      { numRuns: 400 },
    );
  });

  it('leads out by the shortest way, which separates the shapes', () => {
    holds(
      fc.property(index, index, share, share, (i, j, u, v) => {
        const region = noFits.of(laid[i]!, laid[j]!);
        const x = region.minX + u * (region.maxX - region.minX);
        const y = region.minY + v * (region.maxY - region.minY);
        const direction = new Float64Array(2);
        const length = region.separationVector(x, y, direction);
        expect(length).toBeCloseTo(region.depth(x, y), 9);
        if (length > 0) expect(region.depth(x + direction[0]!, y + direction[1]!)).toBeLessThan(1e-9);
      }),
      { numRuns: 300 },
    );
  });

  it('keeps a passage for a tongue that exactly fits its groove', () => {
    const exact = new Shapes(0);
    const groove = exact.orient(ring(notched), [], 0, false).shape;
    const tongue = exact.orient(box(3, 4), [], 0, false).shape;
    expect(new NoFits().of(groove, tongue).depth(3, 2)).toBeLessThan(1e-7);
    expect(new NoFits().of(groove, tongue).depth(3.1, 2)).toBeGreaterThan(0.05);
  });
});
