import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clockwise, type Contour, contourFromPoints, fillet, rectangle } from '../../lib/geometry/index.js';
import { machine, type Process, type Unreached } from '../../lib/machining/index.js';
import { bentRing } from '../geometry/rings.js';
import { plateAt, hand, laser, router, sheetOf } from './plates.js';
import { area, common, flat, grown, less } from './sweep.js';
import { holds } from '../helpers/seeds.js';
import type { PartShape } from '../../lib/part/index.js';
import { plainPart } from '../helpers/plain-part.js';

describe('material that the tool leaves', () => {
  const unreachedOf = (part: PartShape, process: Process): readonly Unreached[] =>
    machine([sheetOf(plateAt(part.id, 500, 200))], [part], process, { compensated: true })[0]!.unreached;

  it('is r²(1 - π/4) in a square corner, in its place', () => {
    const plate = rectangle(0, 0, 100, 60);
    const part = plainPart('plate', plate, {
      openings: [clockwise(rectangle(20, 20, 80, 40))],
    });
    const left = unreachedOf(part, router);
    expect(left).toHaveLength(4);
    for (const one of left) {
      expect(one.area).toBeCloseTo(9 * (1 - Math.PI / 4), 9);
      expect(Math.min(Math.abs(one.x - 520), Math.abs(one.x - 580))).toBeLessThan(1);
      expect(Math.min(Math.abs(one.y - 220), Math.abs(one.y - 240))).toBeLessThan(1);
    }
    expect(unreachedOf(part, hand)).toEqual([]);
    // a corner of the kerf's own radius is beneath notice
    expect(unreachedOf(part, laser)).toEqual([]);
  });

  it('is none where corners are rounded to the tool, and none where they are relieved', () => {
    let rounded: Contour = rectangle(20, 20, 80, 40);
    for (let i = 0; i < 4; i++) rounded = fillet(rounded, 2 * i, 3);
    const plate = rectangle(0, 0, 100, 60);
    expect(unreachedOf(plainPart('plate', plate, { openings: [clockwise(rounded)] }), router)).toEqual([]);
    const seats = [0, 1, 2, 3].map((vertex) => ({ ring: 1, vertex }));
    const seated = plainPart('plate', plate, {
      openings: [clockwise(rectangle(20, 20, 80, 40))],
      seatCorners: seats,
    });
    expect(unreachedOf(seated, router)).toEqual([]);
  });

  it('includes a neck between two parts of an opening', () => {
    const plate = rectangle(0, 0, 100, 60);
    const dumbbell = contourFromPoints(
      [
        [10, 10],
        [40, 10],
        [40, 28],
        [60, 28],
        [60, 10],
        [90, 10],
        [90, 50],
        [60, 50],
        [60, 32],
        [40, 32],
        [40, 50],
        [10, 50],
      ].map(([x, y]) => ({ x: x!, y: y! })),
    );
    const part = plainPart('plate', plate, {
      openings: [clockwise(dumbbell)],
    });
    const neck = unreachedOf(part, router).reduce((a, b) => (b.area > a.area ? b : a));
    expect(Math.hypot(neck.x - 550, neck.y - 230)).toBeLessThan(0.01);
    // the same area by clipper2: closing less the part, about the neck
    const truth = flat([plate, clockwise(dumbbell)]);
    const closed = grown(grown(truth, 3), -3);
    const about = flat([rectangle(35, 25, 65, 35)]);
    expect(neck.area).toBeCloseTo(area(common(less(closed, truth), about)), 1);
  });

  it('adds up to the area that clipper2 finds by closing', () => {
    holds(
      fc.property(bentRing, fc.constantFrom(3, 6, 10), (outline, tool) => {
        const process: Process = { kind: 'router', toolDiameter: tool, web: 4, relief: 'none' };
        const ours = unreachedOf(plainPart('part', outline), process).reduce((sum, one) => sum + one.area, 0);
        const truth = flat([outline]);
        const theirs = area(grown(grown(truth, tool / 2), -tool / 2)) - area(truth);
        // what is below the least area reported, once a corner, and the flattening
        expect(Math.abs(ours - theirs)).toBeLessThan(0.05 * outline.length + 0.3);
      }),
      { numRuns: 60 },
    );
  });
});
