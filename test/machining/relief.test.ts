import { describe, expect, it } from 'vitest';
import { circle, clockwise, contourFromPoints, rectangle, signedArea } from '../../lib/geometry/index.js';
import type { CutOperation } from '../../lib/machining/index.js';
import { cut, laser, router } from './plates.js';
import { area, common, faults, flat, grown, less, swept } from './sweep.js';
import type { PartShape } from '../../lib/part/index.js';
import { plainPart } from '../helpers/plain-part.js';

describe('relief', () => {
  const plate = rectangle(0, 0, 120, 80);
  /** A notch, and an opening, in which a square tongue must seat. */
  const notched = contourFromPoints([
    { x: 0, y: 0 },
    { x: 120, y: 0 },
    { x: 120, y: 80 },
    { x: 70, y: 80 },
    { x: 70, y: 50 },
    { x: 50, y: 50 },
    { x: 50, y: 80 },
    { x: 0, y: 80 },
  ]);
  const hole = clockwise(rectangle(30, 15, 60, 35));
  const tongues = flat([rectangle(50.02, 50.02, 69.98, 79), rectangle(30.02, 15.02, 59.98, 34.98)]);
  const part = plainPart('plate', notched, {
    openings: [hole],
    seatCorners: [
      { ring: 0, vertex: 4 },
      { ring: 0, vertex: 5 },
      ...[0, 1, 2, 3].map((vertex) => ({ ring: 1, vertex })),
    ],
  });
  /** Area of the tongues that the tool has not cleared, within 4 mm of the part. */
  const stuck = (operations: readonly CutOperation[]): number => {
    const edge = common(tongues, grown(flat([notched, hole]), 4));
    return area(less(edge, swept(operations, 6)));
  };

  it('lets a square tongue seat, which it does not without', () => {
    expect(stuck(cut(part, router))).toBeLessThan(1e-3);
    // six corners of r²(1 - π/4), each less at most a strip of 0.02 mm play along its two sides of length r
    const corner = 9 * (1 - Math.PI / 4);
    const rounded = stuck(cut(part, { ...router, relief: 'none' }));
    expect(rounded).toBeGreaterThan(6 * (corner - 2 * 3 * 0.02));
    expect(rounded).toBeLessThan(6 * corner);
  });

  it('takes from the part only the ears: for a square corner half a disc less the corner’s triangle', () => {
    const before = area(common(flat([notched, hole]), swept(cut(part, { ...router, relief: 'none' }), 6)));
    const after = area(common(flat([notched, hole]), swept(cut(part, router), 6)));
    expect(before).toBeLessThan(1e-2);
    // the disc's chord cuts the corner's two sides r·√2 from it: half a disc outside, less the triangle inside
    const ears = 9 * (Math.PI / 2 - 1);
    expect(after / 6 / ears).toBeCloseTo(1, 2);
  });

  it('shows in the finished edge as well, and is what the tool cuts', () => {
    const finished = cut(part, router, false).map((one) => one.vertices);
    const ears = 6 * 9 * (Math.PI / 2 - 1);
    const nominal = signedArea(notched) + signedArea(hole);
    expect(finished.reduce((sum, ring) => sum + signedArea(ring), 0)).toBeCloseTo(nominal - ears, 6);
    const gone = swept(cut(part, router), 6);
    expect(area(common(grown(flat(finished), -0.02), gone))).toBeLessThan(1e-4);
  });

  it('does the same for corners that are not square', () => {
    for (const apex of [12, 40, 90]) {
      // a wedge-shaped opening with its tip at the left
      const wedge = clockwise(
        contourFromPoints([
          { x: 20, y: 40 },
          { x: 90, y: 40 - apex / 2 },
          { x: 90, y: 40 + apex / 2 },
        ]),
      );
      const tip = wedge.findIndex((v) => v.x === 20);
      const wedged: PartShape = {
        ...part,
        outline: rectangle(-80, -80, 200, 160),
        openings: [clockwise(wedge)],
        seatCorners: [{ ring: 1, vertex: tip }],
      };
      const finished = cut(wedged, router, false).map((one) => one.vertices);
      const compensated = cut(wedged, router);
      const { overcut, left } = faults(finished, compensated, 6);
      expect(overcut).toBeLessThan(1e-3);
      expect(left).toBeLessThan(1e-3);
      // the tool's edge comes to the very tip
      const spot = flat([circle({ x: 20.05, y: 40 }, 0.04)]);
      expect(area(less(spot, swept(compensated, 6)))).toBeLessThan(1e-6);
    }
  });

  it('is not made where the tool passes outside of the corner, nor by a laser', () => {
    const outside: PartShape = plainPart('plate', plate, { seatCorners: [{ ring: 0, vertex: 0 }] });
    expect(cut(outside, router)).toEqual(cut({ ...outside, seatCorners: [] }, router));
    expect(cut(part, laser)).toEqual(cut({ ...part, seatCorners: [] }, laser));
  });
});
