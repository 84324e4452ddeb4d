import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bounds,
  circle,
  clockwise,
  closestOfContours,
  type Contour,
  contourFromPoints,
  fillet,
  rectangle,
  reversed,
  signedArea,
} from '../../lib/geometry/index.js';
import {
  type CutOperation,
  cutProblems,
  machine,
  type MachinedPart,
  type MachinedSheet,
  type Process,
  spacingFor,
} from '../../lib/machining/index.js';
import { bentRing } from '../geometry/rings.js';
import { area, common, faults, flat, grown, less, swept } from './sweep.js';

const router: Process = { kind: 'router', toolDiameter: 6, web: 4, relief: 'dogbone' };
const laser: Process = { kind: 'laser', kerf: 0.2, web: 1 };
const hand: Process = { kind: 'hand', web: 5 };

function partOf(id: string, outline: Contour, more: Partial<MachinedPart> = {}): MachinedPart {
  return {
    id,
    contours: [{ operation: 'outline', closed: true, vertices: outline }],
    drills: [],
    seatCorners: [],
    ...more,
  };
}

function opening(vertices: Contour): MachinedPart['contours'][number] {
  return { operation: 'opening', closed: true, vertices: clockwise(vertices) };
}

function sheetOf(...placed: MachinedSheet['placed']): MachinedSheet {
  return { stock: 'ply', width: 2440, height: 1220, margin: 10, placed };
}

const at = (part: string, x = 0, y = 0, copy = 1): MachinedSheet['placed'][number] => ({
  part,
  copy,
  x,
  y,
  rotationDeg: 0,
  mirrored: false,
});

function cut(part: MachinedPart, process: Process, compensated = true): readonly CutOperation[] {
  return machine([sheetOf(at(part.id))], [part], process, { compensated })[0]!.operations;
}

describe('compensation', () => {
  it('leaves the nominal part within 0.02 mm wherever the tool can reach', () => {
    fc.assert(
      fc.property(bentRing, fc.constantFrom(0.2, 3, 6, 8), (outline, tool) => {
        const process: Process = { kind: 'router', toolDiameter: tool, web: 4, relief: 'none' };
        const { overcut, left } = faults([outline], cut(partOf('part', outline), process), tool);
        expect(overcut).toBeLessThan(1e-4);
        expect(left).toBeLessThan(1e-4);
      }),
      { numRuns: 60 },
    );
  });

  it('does so inside openings too', () => {
    fc.assert(
      fc.property(bentRing, fc.constantFrom(0.2, 3, 6), (ring, tool) => {
        const plate = rectangle(-150, -150, 150, 150);
        const hole = clockwise(ring);
        const part = partOf('plate', plate, {
          contours: [{ operation: 'outline', closed: true, vertices: plate }, opening(hole)],
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
    const path = cut(partOf('plate', plate), router);
    const inward = cut(partOf('plate', plate), { ...router, toolDiameter: 5.9 });
    const outward = cut(partOf('plate', plate), { ...router, toolDiameter: 6.1 });
    expect(faults([plate], path, 6)).toEqual({ overcut: 0, left: 0 });
    expect(faults([plate], inward, 6).overcut).toBeGreaterThan(5);
    expect(faults([plate], outward, 6).left).toBeGreaterThan(5);
  });

  it('runs outlines anticlockwise outside, openings clockwise inside, by half the width of the cut', () => {
    const plate = rectangle(0, 0, 100, 60);
    const part = partOf('plate', plate, {
      contours: [{ operation: 'outline', closed: true, vertices: plate }, opening(rectangle(20, 20, 80, 40))],
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
    const part = partOf('plate', rectangle(0, 0, 100, 60));
    expect(cut(part, router, false)[0]!.vertices).toEqual(rectangle(0, 0, 100, 60));
    expect(cut(part, hand)[0]!.vertices).toEqual(rectangle(0, 0, 100, 60));
    expect(machine([sheetOf(at('plate'))], [part], hand, { compensated: true })[0]!.compensated).toBe(false);
  });

  it('never touches a scribe', () => {
    const line = [
      { x: 10, y: 10, bulge: 0.2 },
      { x: 60, y: 30, bulge: 0 },
    ];
    const plate = rectangle(0, 0, 100, 60);
    const part = partOf('plate', plate, {
      contours: [
        { operation: 'outline', closed: true, vertices: plate },
        { operation: 'scribe', closed: false, vertices: line },
      ],
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
    const part = partOf('bracket', outline);
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
  const part: MachinedPart = {
    id: 'plate',
    contours: [{ operation: 'outline', closed: true, vertices: notched }, opening(hole)],
    drills: [],
    seatCorners: [
      { contour: 0, vertex: 4 },
      { contour: 0, vertex: 5 },
      ...[0, 1, 2, 3].map((vertex) => ({ contour: 1, vertex })),
    ],
  };
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
      const wedged: MachinedPart = {
        ...part,
        contours: [{ operation: 'outline', closed: true, vertices: rectangle(-80, -80, 200, 160) }, opening(wedge)],
        seatCorners: [{ contour: 1, vertex: tip }],
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
    const outside: MachinedPart = partOf('plate', plate, { seatCorners: [{ contour: 0, vertex: 0 }] });
    expect(cut(outside, router)).toEqual(cut({ ...outside, seatCorners: [] }, router));
    expect(cut(part, laser)).toEqual(cut({ ...part, seatCorners: [] }, laser));
  });
});

describe('material that the tool leaves', () => {
  const unreachedOf = (part: MachinedPart, process: Process) =>
    machine([sheetOf(at(part.id, 500, 200))], [part], process, { compensated: true })[0]!.unreached;

  it('is r²(1 - π/4) in a square corner, in its place', () => {
    const plate = rectangle(0, 0, 100, 60);
    const part = partOf('plate', plate, {
      contours: [{ operation: 'outline', closed: true, vertices: plate }, opening(rectangle(20, 20, 80, 40))],
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
    const outline = { operation: 'outline', closed: true, vertices: plate } as const;
    expect(unreachedOf(partOf('plate', plate, { contours: [outline, opening(rounded)] }), router)).toEqual([]);
    const seats = [0, 1, 2, 3].map((vertex) => ({ contour: 1, vertex }));
    const seated = partOf('plate', plate, {
      contours: [outline, opening(rectangle(20, 20, 80, 40))],
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
    const part = partOf('plate', plate, {
      contours: [{ operation: 'outline', closed: true, vertices: plate }, opening(dumbbell)],
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
    fc.assert(
      fc.property(bentRing, fc.constantFrom(3, 6, 10), (outline, tool) => {
        const process: Process = { kind: 'router', toolDiameter: tool, web: 4, relief: 'none' };
        const ours = unreachedOf(partOf('part', outline), process).reduce((sum, one) => sum + one.area, 0);
        const truth = flat([outline]);
        const theirs = area(grown(grown(truth, tool / 2), -tool / 2)) - area(truth);
        // what is below the least area reported, once a corner, and the flattening
        expect(Math.abs(ours - theirs)).toBeLessThan(0.05 * outline.length + 0.3);
      }),
      { numRuns: 60 },
    );
  });
});

describe('holes', () => {
  const plate = rectangle(0, 0, 100, 60);
  const holed = (diameter: number, more: object = {}): MachinedPart =>
    partOf('plate', plate, { drills: [{ x: 30, y: 20, diameter, depth: 'through', ...more }] });

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
    expect(problems[0]!.message).toMatch(/plate.*4 mm hole at 30 mm, 20 mm.*6 mm router bit.*4 mm drill bit/);
    expect(() => cut(holed(4), router)).toThrow(/plate/);
    expect(cutProblems([holed(4)], hand)).toEqual([]);
    expect(cutProblems([holed(0.15)], laser)).toHaveLength(1);
  });

  it('are cut round by a laser, half a kerf inside', () => {
    expect(signedArea(cut(holed(4), laser)[0]!.bore!)).toBeCloseTo(-Math.PI * 1.9 * 1.9, 9);
  });

  it('with a countersink go half the difference deep, as a 90 degree head does', () => {
    const operations = cut(holed(6, { countersink: 11 }), router);
    expect(operations[1]).toMatchObject({ operation: 'countersink', diameter: 11, depth: 2.5 });
  });

  it('come with a named error for an opening that the tool does not enter', () => {
    const part = partOf('board', rectangle(0, 0, 200, 100), {
      contours: [
        { operation: 'outline', closed: true, vertices: rectangle(0, 0, 200, 100) },
        opening(rectangle(20, 50, 120, 55.5)),
      ],
    });
    const [problem] = cutProblems([part], router);
    expect(problem).toMatchObject({ code: 'opening-smaller-than-tool', part: 'board', tool: 6 });
    expect(Math.abs(problem!.size - 5.5)).toBeLessThan(0.001);
    expect(problem!.message).toMatch(/board.*70, 52.8.*6 mm.*5\.(49|5) mm/);
    expect(cutProblems([part], { ...router, toolDiameter: 5 })).toEqual([]);
  });
});

describe('spacing and sheets', () => {
  it('keeps the width of the cut and a web between parts', () => {
    expect(spacingFor(router)).toBe(10);
    expect(spacingFor(laser)).toBeCloseTo(1.2, 12);
    expect(spacingFor(hand)).toBe(5);
    const part = partOf('plate', rectangle(0, 0, 50, 50));
    const [sheet] = machine([sheetOf(at('plate'), at('plate', 60, 0, 2))], [part], router, { compensated: true });
    const [a, b] = sheet!.operations;
    // between the two cuts a web stays: the centres are a tool's width further apart
    expect(closestOfContours(a!.vertices, b!.vertices).distance - 6).toBeCloseTo(router.web - 6, 9);
  });

  it('counts the sheets of each stock and refuses a part that is not given', () => {
    const part = partOf('plate', rectangle(0, 0, 50, 50));
    const sheets = [
      sheetOf(at('plate')),
      { ...sheetOf(at('plate', 0, 0, 2)), stock: 'mdf' },
      sheetOf(at('plate', 0, 0, 3)),
    ];
    expect(machine(sheets, [part], router, { compensated: true }).map((sheet) => sheet.id)).toEqual([
      'ply-1',
      'mdf-1',
      'ply-2',
    ]);
    expect(() => machine([sheetOf(at('other'))], [part], router, { compensated: true })).toThrow(/'other'/);
  });
});
