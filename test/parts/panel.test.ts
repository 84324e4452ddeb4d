/** The panel laid flat, and rolled back onto the dish by an integration of its own. */
import { describe, expect, it } from 'vitest';
import { type Dish, facetAt } from '../../lib/dish/index.js';
import { linesUp } from '../../lib/part/index.js';
import { type FixtureName, fixtureNames } from '../helpers/fixtures.js';
import { romberg } from '../dish/shapes.js';
import { dense, make, firstPart, areaOfRing } from './making.js';

/**
 * Lengths of a layer of the panel from its inner end, by summing chords of its own points and mending the sum by
 * Richardson's rule; and the way back from a length to the mid-line radius.
 */
function layer(dish: Dish, depth: number) {
  const point = (u: number) => {
    const at = facetAt(dish, u);
    return { x: at.u + depth * Math.sin(at.slopeAngle), z: at.z - depth * Math.cos(at.slopeAngle) };
  };
  const chords = (n: number): number[] => {
    let before = point(dish.litFrom);
    let sum = 0;
    return Array.from({ length: n + 1 }, (_, i) => {
      const next = point(dish.litFrom + ((dish.litTo - dish.litFrom) * i) / n);
      sum += Math.hypot(next.x - before.x, next.z - before.z);
      before = next;
      return sum;
    });
  };
  const n = 2000;
  const [coarse, fine] = [chords(n), chords(2 * n)];
  const lengths = coarse.map((sum, i) => (4 * fine[2 * i]! - sum) / 3);
  const radiusAt = (length: number): number => {
    const i = Math.max(
      1,
      lengths.findIndex((value) => value >= length - 1e-9) === -1
        ? n
        : lengths.findIndex((value) => value >= length - 1e-9),
    );
    const share = (length - lengths[i - 1]!) / (lengths[i]! - lengths[i - 1]!);
    return dish.litFrom + ((dish.litTo - dish.litFrom) * (i - 1 + share)) / n;
  };
  return { whole: lengths.at(-1)!, radiusAt };
}

/** Distance of a place on the mirror from the middle plane of the rib on its side. */
function offRib(dish: Dish, u: number, w: number): number {
  return u * Math.sin(dish.layout.halfAngle) - Math.abs(w) * Math.cos(dish.layout.halfAngle);
}

const bothFigures = ['panel', 'rib'] as const;
const cases = fixtureNames.flatMap((name) =>
  bothFigures.map((figure): [FixtureName, (typeof bothFigures)[number]] => [name, figure]),
);

describe.each(cases)('the panel of %s, figure %s', (name, figure) => {
  const made = make(name, [['dish:\n', `dish:\n  figure: ${figure}\n`]]);
  const { design, dish } = made;
  const panel = firstPart(made, 'panel');
  const middle = layer(dish, dish.reflectorThickness + dish.panelThickness / 2);
  const vertices = panel.outline;
  const seats = panel.edges.map((run) => vertices.slice(run.from, run.to + 2));

  it('is as long as its neutral layer, to 1e-6', () => {
    const xs = vertices.map(({ x }) => x);
    expect(Math.min(...xs)).toBeCloseTo(0, 9);
    expect(Math.abs(Math.max(...xs) / middle.whole - 1)).toBeLessThan(1e-6);
  });

  it('rolled back, has its mirror edges half the gap off the ribs’ middles, within 0.01 mm', () => {
    expect(seats).toHaveLength(2);
    for (const seat of seats)
      for (const { x, y } of dense(seat, false, 120)) {
        const off = offRib(dish, middle.radiusAt(x), y);
        expect(Math.abs(off - dish.seamGap / 2)).toBeLessThan(design.dish.arcTolerance);
      }
  });

  it('marks its pins over wood, clear of edges of panel and rib, staggered between neighbours', () => {
    // the first line is the clamp line
    const ticks = linesUp(panel)
      .slice(1)
      .map(({ vertices: [a, b] }) => ({ x: a!.x, y: (a!.y + b!.y) / 2 }));
    if (design.panel.fixing === 'glue') {
      expect(ticks).toEqual([]);
      return;
    }
    expect(ticks.length).toBeGreaterThan(6);
    for (const { x, y } of ticks) {
      const off = offRib(dish, middle.radiusAt(x), Math.abs(y));
      expect(off - dish.seamGap / 2).toBeGreaterThan(1.5);
      expect(dish.ribThickness / 2 - off).toBeGreaterThan(1.5);
    }
    const row = (sign: 1 | -1) =>
      ticks
        .filter(({ y }) => sign * y > 0)
        .map(({ x }) => x)
        .sort((a, b) => a - b);
    for (const along of [row(1), row(-1)])
      along.slice(1).forEach((x, i) => {
        expect(x - along[i]!).toBeLessThanOrEqual(design.panel.fixingSpacing + 1e-9);
      });
    // both rows of a rib, from the panels on its two sides, go into one edge: never two pins at one station
    for (const x of row(1)) for (const other of row(-1)) expect(Math.abs(x - other)).toBeGreaterThan(10);
  });

  it('has a clamp line across it near the rim, a millimetre off the edges', () => {
    const [line] = linesUp(panel);
    const [a, b] = line!.vertices;
    expect(a!.x).toBe(b!.x);
    expect(middle.whole - a!.x).toBeCloseTo(20, 6);
    expect(offRib(dish, middle.radiusAt(a!.x), Math.abs(a!.y) + 1)).toBeCloseTo(dish.seamGap / 2, 4);
  });
});

describe('the panel’s area', () => {
  it('is that of its layer (Romberg integration) to 1e-6, with arcs fitted finely', () => {
    const made = make('press-house', [['dish:\n', 'dish:\n  arcTolerance: 0.001\n']]);
    const { dish } = made;
    const depth = dish.reflectorThickness + dish.panelThickness / 2;
    const f = dish.profile.focusHeight;
    const speed = (u: number): number => {
      const k = u / (2 * f);
      return Math.sqrt(1 + k * k) + depth / (2 * f * (1 + k * k));
    };
    const wanted = romberg(
      (u) =>
        ((2 * (u * Math.sin(dish.layout.halfAngle) - dish.seamGap / 2)) / Math.cos(dish.layout.halfAngle)) * speed(u),
      dish.litFrom,
      dish.litTo,
    );
    const area = areaOfRing(dense(firstPart(made, 'panel').outline, true, 400));
    expect(Math.abs(area / wanted - 1)).toBeLessThan(1e-6);
  });
});
