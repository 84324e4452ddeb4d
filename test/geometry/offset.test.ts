import { Clipper, EndType, JoinType } from 'clipper2-ts';
import fc from 'fast-check';
import makerjs from 'makerjs';
import * as polyclip from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import {
  anticlockwise,
  circle,
  closestOfContours,
  clockwise,
  type Contour,
  contourFromPoints,
  edgesOf,
  fillet,
  flatten,
  nearestOnContour,
  offsetContour,
  offsetRegion,
  offsetRings,
  perimeter,
  placeVertices,
  pointOnEdge,
  polygonArea,
  rectangle,
  reversed,
  signedArea,
  simplicity,
  unionPolygons,
} from '../../lib/geometry/index.js';
import { bentRing, gridRectangles, rotated, straightRing } from './rings.js';
import { holds, saidBy } from '../helpers/seeds.js';

const areaOf = (rings: readonly Contour[]): number => rings.reduce((sum, ring) => sum + signedArea(ring), 0);
const lengthOf = (rings: readonly Contour[]): number => rings.reduce((sum, ring) => sum + perimeter(ring), 0);

/** Area that clipper2 finds for the same offset of finely flattened rings. */
function areaByClipper(rings: readonly Contour[], distance: number, tolerance: number): number {
  const flat = rings.map((ring) => flatten(ring, tolerance, 'on').map(({ x, y }) => ({ x, y })));
  const result = Clipper.inflatePathsD(flat, distance, JoinType.Round, EndType.Polygon, 2, 6, tolerance);
  return result.reduce((sum, ring) => sum + polygonArea(ring), 0);
}

/** Greatest difference between the distance of the offset's points from the source and the distance asked for. */
function worstDistance(source: readonly Contour[], offset: readonly Contour[], distance: number): number {
  let worst = 0;
  for (const edge of offset.flatMap(edgesOf)) {
    for (const t of [0, 0.001, 0.27, 0.5, 0.81, 0.999]) {
      const point = pointOnEdge(edge, t);
      const away = Math.min(...source.map((ring) => nearestOnContour(ring, point).distance));
      worst = Math.max(worst, Math.abs(away - Math.abs(distance)));
    }
  }
  return worst;
}

/** Two 20 mm squares joined by a neck 4 mm wide. */
const dumbbell = contourFromPoints(
  [
    [0, 0],
    [20, 0],
    [20, 8],
    [40, 8],
    [40, 0],
    [60, 0],
    [60, 20],
    [40, 20],
    [40, 12],
    [20, 12],
    [20, 20],
    [0, 20],
  ].map(([x, y]) => ({ x: x!, y: y! })),
);

describe('offset of known shapes', () => {
  it('of a convex ring follows Steiner: A + P·d + π·d²', () => {
    holds(
      fc.property(fc.integer({ min: 3, max: 40 }), fc.double({ min: 0.05, max: 50, noNaN: true }), (sides, d) => {
        const ring = Array.from({ length: sides }, (_, k) => {
          const a = (2 * Math.PI * k) / sides;
          return { x: 80 * Math.cos(a), y: 30 * Math.sin(a), bulge: 0 };
        });
        const grown = offsetContour(ring, d);
        expect(grown).toHaveLength(1);
        const expected = signedArea(ring) + perimeter(ring) * d + Math.PI * d * d;
        expect(Math.abs(areaOf(grown) - expected)).toBeLessThan(1e-6);
        expect(lengthOf(grown)).toBeCloseTo(perimeter(ring) + 2 * Math.PI * d, 6);
      }),
    );
  });

  it('grows and shrinks circles, and an opening the other way', () => {
    expect(areaOf(offsetContour(circle({ x: 4, y: 5 }, 10), 3))).toBeCloseTo(Math.PI * 169, 9);
    expect(areaOf(offsetContour(circle({ x: 4, y: 5 }, 10), -3))).toBeCloseTo(Math.PI * 49, 9);
    expect(areaOf(offsetContour(reversed(circle({ x: 4, y: 5 }, 10)), 3))).toBeCloseTo(-Math.PI * 49, 9);
    expect(areaOf(offsetContour(reversed(circle({ x: 4, y: 5 }, 10)), -3))).toBeCloseTo(-Math.PI * 169, 9);
  });

  it('vanishes when nothing is left', () => {
    expect(offsetContour(rectangle(0, 0, 10, 4), -2)).toEqual([]);
    expect(offsetContour(rectangle(0, 0, 10, 4), -7)).toEqual([]);
    expect(offsetContour(circle({ x: 0, y: 0 }, 5), -5)).toEqual([]);
    expect(offsetContour(circle({ x: 0, y: 0 }, 5), -8)).toEqual([]);
    expect(offsetContour(reversed(circle({ x: 0, y: 0 }, 5)), 5)).toEqual([]);
  });

  it('parts a neck that is too narrow, and keeps one that is not', () => {
    expect(offsetContour(dumbbell, -1.999)).toHaveLength(1);
    expect(offsetContour(dumbbell, -2)).toHaveLength(2);
    const parted = offsetContour(dumbbell, -2.5);
    expect(parted).toHaveLength(2);
    expect(areaOf(parted)).toBeGreaterThan(2 * 15 * 15);
  });

  it('closes a bay and keeps the hole that it leaves', () => {
    // a 30 mm square chamber behind a mouth 4 mm wide
    const bay = contourFromPoints(
      [
        [0, 0],
        [50, 0],
        [50, 23],
        [40, 23],
        [40, 10],
        [10, 10],
        [10, 40],
        [40, 40],
        [40, 27],
        [50, 27],
        [50, 50],
        [0, 50],
      ].map(([x, y]) => ({ x: x!, y: y! })),
    );
    const grown = offsetContour(bay, 3);
    expect(grown.map((ring) => Math.sign(signedArea(ring))).sort()).toEqual([-1, 1]);
    expect(Math.abs(areaOf(grown) - areaByClipper([bay], 3, 1e-4))).toBeLessThan(0.05);
  });

  it('trims an outline against its opening when they run into each other', () => {
    const plate = rectangle(0, 0, 100, 50);
    const hole = reversed(circle({ x: 20, y: 25 }, 20));
    const rings = offsetRegion(plate, [hole], -3);
    expect(Math.abs(areaOf(rings) - areaByClipper([plate, hole], -3, 1e-4))).toBeLessThan(0.05);
    // the plate to the right of the hole and the two corners to its left
    expect(rings).toHaveLength(3);
  });

  it('brings a fillet of the tool radius back to a sharp corner', () => {
    const sharp = rectangle(0, 0, 40, 20);
    let rounded: Contour = sharp;
    for (let i = 0; i < 4; i++) rounded = fillet(rounded, 2 * i, 3);
    const shrunk = offsetContour(rounded, -3);
    expect(shrunk).toHaveLength(1);
    expect(shrunk[0]).toHaveLength(4);
    expect(areaOf(shrunk)).toBeCloseTo(34 * 14, 9);
    expect(areaOf(offsetContour(shrunk[0]!, 3))).toBeCloseTo(signedArea(rounded), 6);
  });
});

describe('offset of any ring', () => {
  const distances = fc
    .oneof(fc.double({ min: -8, max: 8, noNaN: true }), fc.double({ min: -60, max: 60, noNaN: true }))
    .filter((d) => Math.abs(d) > 0.001);

  it('lies at the distance within 1e-6 mm, and has the area that clipper2 finds', () => {
    holds(
      fc.property(bentRing, distances, (ring, d) => {
        const offset = offsetContour(ring, d);
        expect(worstDistance([ring], offset, d)).toBeLessThan(1e-6);
        const tolerance = 0.001;
        const space = 2 * tolerance * (perimeter(ring) + lengthOf(offset) + 1);
        expect(Math.abs(areaOf(offset) - areaByClipper([ring], d, tolerance))).toBeLessThan(space);
      }),
      { numRuns: 300 },
    );
  });

  it('gives rings that neither cross themselves nor each other', () => {
    holds(
      fc.property(bentRing, distances, (ring, d) => {
        const offset = offsetContour(ring, d);
        for (const part of offset) expect(simplicity(part, 1e-5)).toEqual({ kind: 'simple' });
        offset.forEach((a, i) =>
          offset.slice(i + 1).forEach((b) => expect(closestOfContours(a, b).distance).toBeGreaterThan(0)),
        );
      }),
    );
  });

  it('does not depend on the first vertex, the place, the side up, or which of the two rings is meant', () => {
    holds(
      fc.property(
        bentRing,
        distances,
        fc.nat(13),
        fc.record({
          x: fc.double({ min: -2000, max: 2000, noNaN: true }),
          y: fc.double({ min: -2000, max: 2000, noNaN: true }),
          rotationDeg: fc.double({ min: 0, max: 360, noNaN: true }),
          mirrored: fc.boolean(),
        }),
        (ring, d, by, placement) => {
          const area = areaOf(offsetContour(ring, d));
          const space = 1e-5 * (1 + perimeter(ring));
          const others = [
            offsetContour(rotated(ring, by % ring.length), d),
            offsetContour(placeVertices(ring, placement), d),
            // the same edge seen from the waste's side
            offsetContour(reversed(ring), -d).map(reversed),
          ];
          for (const other of others) expect(Math.abs(areaOf(other) - area)).toBeLessThan(space);
        },
      ),
    );
  });

  it('holds where an edge and an arc meet at next to no angle', () => {
    const ring = (turn: number): Contour => [
      { x: 0, y: 0, bulge: 0 },
      { x: 50, y: 0, bulge: Math.tan((Math.atan2(8, 30) - turn) / 2) },
      { x: 80, y: 8, bulge: 0 },
      { x: 80, y: 60, bulge: 0 },
      { x: 0, y: 60, bulge: 0 },
    ];
    for (const d of [-20, -3, 3, 20]) {
      const smooth = areaOf(offsetContour(ring(0), d));
      for (let turn = 1e-9; turn < 1e-3; turn *= 1.3) {
        for (const sign of [-1, 1]) {
          const area = areaOf(offsetContour(ring(sign * turn), d));
          expect(Math.abs(area - smooth)).toBeLessThan(1e-4 + 2000 * turn);
        }
      }
    }
  });

  it('is the same when edges are split anywhere, down to specks', () => {
    const cut = fc.oneof(
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 1e-5, noNaN: true }),
      fc.double({ min: 0, max: 1e-9, noNaN: true }),
    );
    holds(
      fc.property(
        bentRing,
        distances,
        fc.array(fc.array(cut, { maxLength: 3 }), { minLength: 14, maxLength: 14 }),
        (ring, d, cuts) => {
          const far = ring.map((v) => ({ ...v, x: v.x + 1500, y: v.y + 700 }));
          const split = edgesOf(far).flatMap((edge, i) => {
            const at = [0, ...cuts[i]!.sort((a, b) => a - b), 1];
            return at.slice(0, -1).map((t, k) => ({
              ...pointOnEdge(edge, t),
              bulge: edge.kind === 'arc' ? Math.tan((edge.sweep * (at[k + 1]! - t)) / 4) : 0,
            }));
          });
          const whole = areaOf(offsetContour(far, d));
          expect(Math.abs(areaOf(offsetContour(split, d)) - whole)).toBeLessThan(1e-6 * (1000 + perimeter(far)));
        },
      ),
      { numRuns: 300 },
    );
  });

  it('shrunk again after growing covers the ring and rounds only its inside corners', () => {
    holds(
      fc.property(bentRing, fc.double({ min: 0.1, max: 10, noNaN: true }), (ring, d) => {
        const closed = offsetRings(offsetContour(ring, d), -d);
        expect(areaOf(closed)).toBeGreaterThan(signedArea(ring) - 1e-4);
        const opened = offsetRings(offsetContour(ring, -d), d);
        expect(areaOf(opened)).toBeLessThan(signedArea(ring) + 1e-4);
      }),
    );
  });

  it('holds where edges line up, touch and run along each other', () => {
    holds(
      fc.property(gridRectangles, fc.constantFrom(0.5, 1, 2, 3, -0.5, -1, -2, -3), (rectangles, d) => {
        const rings = unionPolygons(rectangles).map(contourFromPoints);
        fc.pre(rings.every((ring) => simplicity(ring, 1e-6).kind === 'simple'));
        const offset = offsetRings(rings, d);
        expect(worstDistance(rings, offset, d)).toBeLessThan(1e-6);
        expect(Math.abs(areaOf(offset) - areaByClipper(rings, d, 1e-4))).toBeLessThan(1e-3 * (lengthOf(rings) + 1));
      }),
      { numRuns: 300 },
    );
  });

  it('agrees with makerjs on the outline of a grown polygon', () => {
    holds(
      fc.property(straightRing, fc.double({ min: 0.5, max: 5, noNaN: true }), (ring, d) => {
        const ours = offsetContour(ring, d)[0]!;
        const points = ring.map(({ x, y }): [number, number] => [x, y]);
        // its outline has no extents now and then: seed 221745
        const model = new makerjs.models.ConnectTheDots(true, points);
        const theirs = saidBy(() => makerjs.measure.modelExtents(makerjs.model.outline(model, d)));
        for (const point of flatten(ours, 0.01, 'on')) {
          expect(point.x).toBeGreaterThan(theirs.low[0]! - 1e-4);
          expect(point.x).toBeLessThan(theirs.high[0]! + 1e-4);
          expect(point.y).toBeGreaterThan(theirs.low[1]! - 1e-4);
          expect(point.y).toBeLessThan(theirs.high[1]! + 1e-4);
        }
      }),
      { numRuns: 20, onceFailed: [221_745] },
    );
  });

  it('is the union of the ring with a disc about every corner and a strip along every edge, by polyclip-ts', () => {
    holds(
      fc.property(straightRing, fc.double({ min: 0.5, max: 6, noNaN: true }), (ring, d) => {
        const close = (points: { x: number; y: number }[]): [number, number][] => {
          const all = points.map(({ x, y }): [number, number] => [x, y]);
          return [...all, all[0]!];
        };
        const parts = ring.flatMap((v, i) => {
          const w = ring[(i + 1) % ring.length]!;
          const length = Math.hypot(w.x - v.x, w.y - v.y);
          const n = { x: ((w.y - v.y) / length) * d, y: (-(w.x - v.x) / length) * d };
          const strip = [v, { x: v.x + n.x, y: v.y + n.y }, { x: w.x + n.x, y: w.y + n.y }, w];
          return [[close(strip)], [close(flatten(circle(v, d), 0.001, 'on') as { x: number; y: number }[])]];
        });
        const ours = offsetContour(ring, d);
        // it loses a ring now and then: "Unable to complete output ring" at seed 50
        const union = saidBy(() => polyclip.union([close([...ring])], ...parts));
        const area = union.reduce(
          (sum, polygon) =>
            sum +
            polygon.reduce((s, r, k) => {
              const size = Math.abs(polygonArea(r.slice(1).map(([x, y]) => ({ x, y }))));
              return k === 0 ? s + size : s - size;
            }, 0),
          0,
        );
        expect(Math.abs(areaOf(ours) - area)).toBeLessThan(0.003 * (lengthOf(ours) + 1));
      }),
      { numRuns: 25, onceFailed: [50] },
    );
  });

  it('keeps the senses of an outer ring and its opening', () => {
    const outer = anticlockwise(rectangle(-50, -50, 50, 50));
    const opening = clockwise(rectangle(-20, -20, 20, 20));
    const grown = offsetRegion(outer, [opening], 2);
    expect(grown.map(signedArea).map((a) => Math.round(a * 1000) / 1000)).toEqual(
      [10000 + 800 + 4 * Math.PI, -(36 * 36)].map((a) => Math.round(a * 1000) / 1000),
    );
  });

  it('refuses a distance that is no number', () => {
    expect(() => offsetContour(rectangle(0, 0, 1, 1), Number.NaN)).toThrow(/distance in mm/);
  });
});
