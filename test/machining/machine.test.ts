import { diagnosticText } from '../../lib/diagnostic/index.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bounds,
  circle,
  clockwise,
  closestOfContours,
  contourFromPoints,
  fillet,
  rectangle,
  reversed,
  signedArea,
} from '../../lib/geometry/index.js';
import { type CutOperation, cutProblems, machine, type Process, spacingFor } from '../../lib/machining/index.js';
import { bentRing } from '../geometry/rings.js';
import { plateAt, cut, hand, laser, router, sheetOf } from './plates.js';
import { faults } from './sweep.js';
import { holds } from '../helpers/seeds.js';
import { lineMark, type PartShape, throughHole } from '../../lib/part/index.js';
import { plainPart } from '../helpers/plain-part.js';

describe('compensation', () => {
  it('leaves the nominal part within 0.02 mm wherever the tool can reach', () => {
    holds(
      fc.property(bentRing, fc.constantFrom(0.2, 3, 6, 8), (outline, tool) => {
        const process: Process = { kind: 'router', toolDiameter: tool, web: 4, relief: 'none' };
        const { overcut, left } = faults([outline], cut(plainPart('part', outline), process), tool);
        expect(overcut).toBeLessThan(1e-4);
        expect(left).toBeLessThan(1e-4);
      }),
      { numRuns: 60 },
    );
  });

  it('does so inside openings too', () => {
    holds(
      fc.property(bentRing, fc.constantFrom(0.2, 3, 6), (ring, tool) => {
        const plate = rectangle(-150, -150, 150, 150);
        const hole = clockwise(ring);
        const part = plainPart('plate', plate, {
          openings: [clockwise(hole)],
        });
        const process: Process = { kind: 'router', toolDiameter: tool, web: 4, relief: 'none' };
        fc.pre(cutProblems([part], process).length === 0);
        const { overcut, left } = faults([plate, hole], cut(part, process), tool);
        expect(overcut).toBeLessThan(1e-4);
        expect(left).toBeLessThan(1e-4);
      }),
      { numRuns: 60 },
    );
  });

  it('would be caught if the path were a twentieth of a millimetre off', () => {
    const plate = rectangle(0, 0, 100, 60);
    const path = cut(plainPart('plate', plate), router);
    const inward = cut(plainPart('plate', plate), { ...router, toolDiameter: 5.9 });
    const outward = cut(plainPart('plate', plate), { ...router, toolDiameter: 6.1 });
    expect(faults([plate], path, 6)).toEqual({ overcut: 0, left: 0 });
    expect(faults([plate], inward, 6).overcut).toBeGreaterThan(5);
    expect(faults([plate], outward, 6).left).toBeGreaterThan(5);
  });

  it('runs outlines anticlockwise outside, openings clockwise inside, by half the width of the cut', () => {
    const plate = rectangle(0, 0, 100, 60);
    const part = plainPart('plate', plate, {
      openings: [clockwise(rectangle(20, 20, 80, 40))],
    });
    const [inner, outer] = cut(part, router);
    expect(inner!.operation).toBe('opening');
    expect(signedArea(inner!.vertices)).toBeCloseTo(-54 * 14, 9);
    expect(signedArea(outer!.vertices)).toBeCloseTo(6000 + 320 * 3 + Math.PI * 9, 9);
    const [innerBeam, outerBeam] = cut(part, laser);
    const edges = (one: CutOperation): number[] => {
      const { minX, minY, maxX, maxY } = bounds(one.vertices);
      return [minX, minY, maxX, maxY].map((value) => Number(value.toFixed(9)));
    };
    expect(edges(innerBeam!)).toEqual([20.1, 20.1, 79.9, 39.9]);
    expect(edges(outerBeam!)).toEqual([-0.1, -0.1, 100.1, 60.1]);
  });

  it('leaves finished edges alone when not asked for, or when cut by hand', () => {
    const part = plainPart('plate', rectangle(0, 0, 100, 60));
    expect(cut(part, router, false)[0]!.vertices).toEqual(rectangle(0, 0, 100, 60));
    expect(cut(part, hand)[0]!.vertices).toEqual(rectangle(0, 0, 100, 60));
    expect(machine([sheetOf(plateAt('plate'))], [part], hand, { compensated: true })[0]!.compensated).toBe(false);
  });

  it('never touches a scribe', () => {
    const line = [
      { x: 10, y: 10, bulge: 0.2 },
      { x: 60, y: 30, bulge: 0 },
    ];
    const plate = rectangle(0, 0, 100, 60);
    const part = plainPart('plate', plate, {
      marks: [lineMark(line)],
    });
    expect(cut(part, router)[0]).toMatchObject({ operation: 'scribe', closed: false, vertices: line, depth: 0.3 });
  });

  it('follows a part that is turned, turned over and moved', () => {
    const outline = fillet(
      contourFromPoints([
        { x: 0, y: 0 },
        { x: 90, y: 0 },
        { x: 90, y: 20 },
        { x: 30, y: 20 },
        { x: 30, y: 70 },
        { x: 0, y: 70 },
      ]),
      1,
      8,
    );
    const part = plainPart('bracket', outline);
    const sheets = machine(
      [sheetOf({ part: 'bracket', copy: 1, x: 400, y: 300, rotationDeg: 33, mirrored: true })],
      [part],
      router,
      { compensated: true },
    );
    const turned = sheets[0]!.operations[0]!;
    expect(signedArea(turned.vertices)).toBeCloseTo(signedArea(cut(part, router)[0]!.vertices), 6);
  });
});

describe('holes', () => {
  const plate = rectangle(0, 0, 100, 60);
  const holed = (diameter: number, more: object = {}): PartShape =>
    plainPart('plate', plate, { holes: [{ ...throughHole({ x: 30, y: 20 }, diameter), ...more }] });

  it('are a drill point for a bit of their size, and bored when larger than the tool', () => {
    expect(cut(holed(6), router)[0]).not.toHaveProperty('bore');
    const bored = cut(holed(16), router)[0]!;
    expect(bored).toMatchObject({ operation: 'drill', diameter: 16, depth: 'through' });
    expect(bored.vertices).toEqual([{ x: 30, y: 20, bulge: 0 }]);
    expect(signedArea(bored.bore!)).toBeCloseTo(-Math.PI * 25, 9);
    expect(faults([plate, reversed(circle({ x: 30, y: 20 }, 8))], cut(holed(16), router), 6)).toMatchObject({
      left: 0,
    });
    expect(cut(holed(4), { ...router, drills: [4] })[0]).not.toHaveProperty('bore');
  });

  it('smaller than the tool are an error that names the part and what would do', () => {
    const problems = cutProblems([holed(4)], router);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ code: 'hole-smaller-than-tool', part: 'plate', size: 4, tool: 6 });
    expect(diagnosticText(problems[0]!)).toMatch(/plate.*4 mm hole at 30 mm, 20 mm.*6 mm router bit.*4 mm drill bit/);
    expect(() => cut(holed(4), router)).toThrow(/plate/);
    expect(cutProblems([holed(4)], hand)).toEqual([]);
    expect(cutProblems([holed(0.15)], laser)).toHaveLength(1);
    // of a hole exactly as wide as the kerf of 0.2 mm nothing is left to follow
    const [exact] = cutProblems([holed(0.2)], laser);
    expect(diagnosticText(exact!)).toMatch(/the 0\.2 mm hole .* is no wider than the laser's kerf of 0\.2 mm/);
    expect(cut(holed(0.21), laser)[0]).toHaveProperty('bore');
  });

  it('are cut round by a laser, half a kerf inside', () => {
    expect(signedArea(cut(holed(4), laser)[0]!.bore!)).toBeCloseTo(-Math.PI * 1.9 * 1.9, 9);
  });

  it('with a countersink go half the difference deep, as a 90 degree head does', () => {
    const operations = cut(holed(6, { countersink: 11 }), router);
    expect(operations[1]).toMatchObject({ operation: 'countersink', diameter: 11, depth: 2.5 });
  });

  it('come with a named error for an opening that the tool does not enter', () => {
    const part = plainPart('board', rectangle(0, 0, 200, 100), {
      openings: [clockwise(rectangle(20, 50, 120, 55.5))],
    });
    const [problem] = cutProblems([part], router);
    expect(problem).toMatchObject({ code: 'opening-smaller-than-tool', part: 'board', tool: 6 });
    expect(Math.abs(problem!.size - 5.5)).toBeLessThan(0.001);
    expect(diagnosticText(problem!)).toMatch(/board.*70, 52.8.*6 mm.*5\.(49|5) mm/);
    expect(cutProblems([part], { ...router, toolDiameter: 5 })).toEqual([]);
  });
});

describe('spacing and sheets', () => {
  it('keeps the width of the cut and a web between parts', () => {
    expect(spacingFor(router)).toBe(16);
    expect(spacingFor(laser)).toBeCloseTo(1.4, 12);
    expect(spacingFor(hand)).toBe(5);
    const part = plainPart('plate', rectangle(0, 0, 50, 50));
    const [sheet] = machine([sheetOf(plateAt('plate'), plateAt('plate', 60, 0, 2))], [part], router, {
      compensated: true,
    });
    const [a, b] = sheet!.operations;
    // between the two cuts a web stays: the centres are a tool's width further apart
    expect(closestOfContours(a!.vertices, b!.vertices).distance - 6).toBeCloseTo(router.web - 6, 9);
  });

  it('counts the sheets of each stock and refuses a part that is not given', () => {
    const part = plainPart('plate', rectangle(0, 0, 50, 50));
    const sheets = [
      sheetOf(plateAt('plate')),
      { ...sheetOf(plateAt('plate', 0, 0, 2)), stock: 'mdf' },
      sheetOf(plateAt('plate', 0, 0, 3)),
    ];
    expect(machine(sheets, [part], router, { compensated: true }).map((sheet) => sheet.id)).toEqual([
      'ply-1',
      'mdf-1',
      'ply-2',
    ]);
    expect(() => machine([sheetOf(plateAt('other'))], [part], router, { compensated: true })).toThrow(/'other'/);
  });
});
