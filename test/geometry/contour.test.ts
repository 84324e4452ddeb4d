import fc from 'fast-check';
import makerjs from 'makerjs';
import { describe, expect, it } from 'vitest';
import {
  arcThrough,
  bounds,
  bulgeOfSweep,
  circle,
  type Contour,
  contourFromPoints,
  edgeArc,
  edgesOf,
  fillet,
  flatten,
  perimeter,
  placeVertices,
  pointOnEdge,
  type Polygon,
  rectangle,
  regularPolygon,
  reversed,
  signedArea,
  tangentOnEdge,
} from '../../lib/geometry/index.js';
import { holds } from '../helpers/seeds.js';

/** A slot with round ends, 40 mm between centres, 10 mm wide. */
const slot: Contour = [
  { x: -20, y: -5, bulge: 0 },
  { x: 20, y: -5, bulge: 1 },
  { x: 20, y: 5, bulge: 0 },
  { x: -20, y: 5, bulge: 1 },
];

function shoelace(polygon: Polygon): number {
  let twice = 0;
  polygon.forEach((p, i) => {
    const q = polygon[(i + 1) % polygon.length]!;
    twice += p.x * q.y - q.x * p.y;
  });
  return twice / 2;
}

const place = fc.record({
  x: fc.double({ min: -1000, max: 1000, noNaN: true }),
  y: fc.double({ min: -1000, max: 1000, noNaN: true }),
  rotationDeg: fc.double({ min: -360, max: 360, noNaN: true }),
  mirrored: fc.boolean(),
});

/** Star-shaped rings about the origin with gently bent edges, anticlockwise. */
const ring = fc
  .array(
    fc.record({
      radius: fc.double({ min: 20, max: 100, noNaN: true }),
      bulge: fc.double({ min: -0.2, max: 0.2, noNaN: true }),
    }),
    { minLength: 4, maxLength: 12 },
  )
  .map((corners): Contour =>
    corners.map(({ radius, bulge }, k) => {
      const angle = (2 * Math.PI * k) / corners.length;
      return { x: radius * Math.cos(angle), y: radius * Math.sin(angle), bulge };
    }),
  );

describe('measures of a ring', () => {
  it('follow the closed forms of the circle and the slot', () => {
    expect(signedArea(circle({ x: 3, y: -7 }, 25))).toBeCloseTo(Math.PI * 625, 9);
    expect(perimeter(circle({ x: 3, y: -7 }, 25))).toBeCloseTo(Math.PI * 50, 9);
    expect(signedArea(slot)).toBeCloseTo(400 + Math.PI * 25, 9);
    expect(perimeter(slot)).toBeCloseTo(80 + Math.PI * 10, 9);
    expect(bounds(slot)).toEqual({ minX: -25, minY: -5, maxX: 25, maxY: 5 });
  });

  it('agree with makerjs on the box and length of an arc', () => {
    holds(
      fc.property(
        fc.double({ min: 1, max: 500, noNaN: true }),
        fc.double({ min: 0, max: 359, noNaN: true }),
        fc.double({ min: 1, max: 350, noNaN: true }),
        (radius, startDeg, sweepDeg) => {
          const other = new makerjs.paths.Arc([10, 20], radius, startDeg, startDeg + sweepDeg);
          const [from, to] = makerjs.point.fromArc(other);
          const ours = [
            { x: from![0]!, y: from![1]!, bulge: bulgeOfSweep((sweepDeg * Math.PI) / 180) },
            { x: to![0]!, y: to![1]!, bulge: 0 },
          ];
          const box = bounds(ours);
          const theirs = makerjs.measure.pathExtents(other);
          // makerjs rounds the ends of an arc to 1e-7
          expect(box.minX).toBeCloseTo(theirs.low[0]!, 4);
          expect(box.minY).toBeCloseTo(theirs.low[1]!, 4);
          expect(box.maxX).toBeCloseTo(theirs.high[0]!, 4);
          expect(box.maxY).toBeCloseTo(theirs.high[1]!, 4);
        },
      ),
    );
  });

  it('keep their digits for an arc that is nearly straight', () => {
    // area between chord c and arc of rise h tends to 2/3 · c · h
    const c = 100;
    const b = 1e-7;
    const flat: Contour = [
      { x: 0, y: 0, bulge: 0 },
      { x: c, y: 0, bulge: b },
      { x: 0, y: 0, bulge: 0 },
    ];
    expect(signedArea(flat) / ((2 / 3) * c * (b * c * 0.5))).toBeCloseTo(1, 6);
  });

  it('change only in sign when the ring is reversed, and not at all when it is placed', () => {
    holds(
      fc.property(ring, place, (contour, placement) => {
        const area = signedArea(contour);
        expect(signedArea(reversed(contour))).toBeCloseTo(-area, 6);
        expect(reversed(reversed(contour))).toEqual(contour.map((v) => ({ ...v, bulge: v.bulge === 0 ? 0 : v.bulge })));
        const placed = placeVertices(contour, placement);
        expect(signedArea(placed)).toBeCloseTo(area, 4);
        expect(perimeter(placed)).toBeCloseTo(perimeter(contour), 6);
      }),
    );
  });
});

describe('placing', () => {
  it('mirrors first, then turns, then moves, and keeps the sense of the ring', () => {
    const contour: Contour = [
      { x: 1, y: 0, bulge: 0.5 },
      { x: 4, y: 0, bulge: 0 },
      { x: 4, y: 2, bulge: 0 },
    ];
    const placed = placeVertices(contour, { x: 10, y: 20, rotationDeg: 90, mirrored: true });
    expect(placed).toEqual([
      { x: 8, y: 16, bulge: 0 },
      { x: 10, y: 16, bulge: 0.5 },
      { x: 10, y: 19, bulge: 0 },
    ]);
    expect(Math.sign(signedArea(placed))).toBe(1);
  });
});

describe('edges', () => {
  it('pass through the point they were made from', () => {
    holds(
      fc.property(
        fc.double({ min: 0.5, max: 500, noNaN: true }),
        fc.double({ min: -6.2, max: 6.2, noNaN: true }).filter((s) => Math.abs(s) > 0.01),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        (radius, sweep, part) => {
          const at = (a: number) => ({ x: radius * Math.cos(a) + 5, y: radius * Math.sin(a) - 3 });
          expect(arcThrough(at(1), at(1 + sweep * part), at(1 + sweep)) / bulgeOfSweep(sweep)).toBeCloseTo(1, 6);
          const edge = edgeArc({ ...at(1), bulge: bulgeOfSweep(sweep) }, at(1 + sweep));
          const p = pointOnEdge(edge, part);
          expect(Math.hypot(p.x - at(1 + sweep * part).x, p.y - at(1 + sweep * part).y)).toBeLessThan(1e-6);
          const t = tangentOnEdge(edge, part);
          expect(t.x * (p.x - 5) + t.y * (p.y + 3)).toBeCloseTo(0, 5);
        },
      ),
    );
  });

  it('refuse an arc through three points in line with the middle one outside', () => {
    expect(() => arcThrough({ x: 0, y: 0 }, { x: 2, y: 0 }, { x: 1, y: 0 })).toThrow(RangeError);
    expect(arcThrough({ x: 0, y: 0 }, { x: 1, y: 0 }, { x: 2, y: 0 })).toBeCloseTo(0, 12);
  });
});

describe('flattening', () => {
  it('stays on the stated side of the material and within the tolerance', () => {
    holds(
      fc.property(ring, fc.constantFrom(1, 0.1, 0.01), (contour, tolerance) => {
        const area = signedArea(contour);
        const outside = shoelace(flatten(contour, tolerance, 'outside'));
        const inside = shoelace(flatten(contour, tolerance, 'inside'));
        expect(outside).toBeGreaterThanOrEqual(area - 1e-6);
        expect(inside).toBeLessThanOrEqual(area + 1e-6);
        const space = perimeter(contour) * tolerance * 1.01;
        expect(outside - area).toBeLessThan(space);
        expect(area - inside).toBeLessThan(space);
        expect(Math.abs(shoelace(flatten(contour, tolerance, 'on')) - area)).toBeLessThan(space);
      }),
    );
  });

  it('shrinks the waste of a clockwise opening when the material is to be covered', () => {
    const opening = reversed(circle({ x: 0, y: 0 }, 50));
    const covered = flatten(opening, 0.1, 'outside');
    for (const p of covered) expect(Math.hypot(p.x, p.y)).toBeLessThanOrEqual(50 + 1e-9);
    for (const p of flatten(opening, 0.1, 'inside')) expect(Math.hypot(p.x, p.y)).toBeGreaterThanOrEqual(50 - 1e-9);
  });

  it('refuses a tolerance of nothing', () => {
    expect(() => flatten(slot, 0, 'on')).toThrow(/0 mm/);
  });
});

describe('rounding a corner', () => {
  it('takes r²(1 - π/4) from a square corner', () => {
    const square = rectangle(0, 0, 100, 50);
    const rounded = fillet(square, 2, 10);
    expect(signedArea(rounded)).toBeCloseTo(5000 - 100 * (1 - Math.PI / 4), 9);
    expect(rounded).toHaveLength(5);
  });

  it('turns a hexagon into the known shape: circle, rectangles and core', () => {
    let contour: Contour = regularPolygon({ x: 0, y: 0 }, 50, 6);
    for (let i = 0; i < 6; i++) contour = fillet(contour, 2 * i, 8);
    // area of a rounded polygon: that of the polygon less r²(n·tan(π/n) - π)
    const whole = ((6 * 50 * 50) / 2) * Math.sin(Math.PI / 3);
    expect(signedArea(contour)).toBeCloseTo(whole - 64 * (6 * Math.tan(Math.PI / 6) - Math.PI), 8);
  });

  it('is tangent to arcs as well as to straight edges', () => {
    // half a disc of radius 50 whose two corners are rounded: the radius of a circle that touches the straight edge
    // and the arc from inside has its centre r above the one and 50 - r from the middle of the other
    const half: Contour = [
      { x: -50, y: 0, bulge: 0 },
      { x: 50, y: 0, bulge: 1 },
    ];
    const rounded = fillet(fillet(half, 1, 10), 0, 10);
    expect(rounded).toHaveLength(4);
    const away = Math.sqrt(40 * 40 - 10 * 10);
    expect(rounded.map((v) => v.x).sort((a, b) => a - b)).toEqual(
      [-away * 1.25, -away, away, away * 1.25].map((x): unknown => expect.closeTo(x, 9)),
    );
    const edges = edgesOf(rounded);
    edges.forEach((edge, i) => {
      const a = tangentOnEdge(edge, 1);
      const b = tangentOnEdge(edges[(i + 1) % edges.length]!, 0);
      expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeLessThan(1e-9);
    });
    expect(() => fillet(half, 0, 26)).toThrow(RangeError);
  });

  it('says so when the radius is too large', () => {
    expect(() => fillet(rectangle(0, 0, 10, 10), 0, 11)).toThrow(/too short for a corner of 11 mm/);
    expect(() => fillet(contourFromPoints([]), 0, 1)).toThrow(/no vertex 0/);
  });
});
