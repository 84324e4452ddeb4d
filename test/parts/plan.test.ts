/** What stands on the board, held against polygons of a second library and against plain trigonometry. */
import { diagnosticText } from '../../lib/diagnostic/index.js';
import { describe, expect, it } from 'vitest';
import { dense, make, type Made, overlapArea, firstPart, turn } from './making.js';
import type { Point } from '../../lib/geometry/index.js';
import { linesUp } from '../../lib/part/index.js';

const rect = (x1: number, y1: number, x2: number, y2: number): Point[] => [
  { x: x1, y: y1 },
  { x: x2, y: y1 },
  { x: x2, y: y2 },
  { x: x1, y: y2 },
];

/** Plan outlines as a person would draw them from the parts, ribs and cleats by rib. */
function standing({ design, dish, cleatStart }: Made) {
  const half = dish.ribThickness / 2;
  const { length, width, perRib } = design.cleat;
  const ribs = Array.from({ length: dish.layout.ribs.length }, (_, k) => {
    const angle = (2 * Math.PI * k) / dish.layout.ribs.length;
    const at = (points: Point[]) => points.map((point) => turn(point, angle));
    return {
      rib: at(rect(dish.innerRadius, -half, dish.apertureRadius, half)),
      cleats: [
        at(rect(cleatStart, -half - width, cleatStart + length, -half)),
        ...(perRib === 2 ? [at(rect(cleatStart, half, cleatStart + length, half + width))] : []),
      ],
    };
  });
  return ribs;
}

const twoCleats = [['hub: {', 'cleat: { perRib: 2 }\nhub: {']] as const;
const cases: readonly [string, () => Made][] = [
  ['press-house', () => make('press-house')],
  ['table-top', () => make('table-top')],
  ['table-top with two cleats a rib', () => make('table-top', twoCleats)],
  ['hand-cut-inch', () => make('hand-cut-inch')],
];

describe.each(cases)('the board of %s', (_, making) => {
  const made = making();
  const { design, dish } = made;
  const items = standing(made);
  const hub = dense(firstPart(made, 'hub').outline, true);

  it('has no two things in one place (polyclip-ts)', () => {
    // a millionth smaller, so that what is made to touch does not puzzle the library
    const shrunk = (points: readonly Point[]): Point[] => {
      const middle = { x: 0, y: 0 };
      for (const { x, y } of points) {
        middle.x += x / points.length;
        middle.y += y / points.length;
      }
      return points.map(({ x, y }) => ({ x: x + 1e-6 * (middle.x - x), y: y + 1e-6 * (middle.y - y) }));
    };
    const all = [...items.map(({ rib }) => rib), ...items.flatMap(({ cleats }) => cleats), hub].map(shrunk);
    all.forEach((a, i) => {
      for (const b of all.slice(i + 1)) expect(overlapArea(a, b)).toBe(0);
    });
  });

  it('has the line for the cleat on the face of the rib on which the cleat stands', () => {
    // a rib is scribed on the face that lies up when it is cut. Its drawing is stood up without being turned over,
    // x outward and y up; the face that was up then looks along x cross y (right-handed axes)
    items.forEach(({ cleats }, k) => {
      const angle = (2 * Math.PI * k) / dish.layout.ribs.length;
      const outward = [Math.cos(angle), Math.sin(angle), 0] as const;
      const upward = [0, 0, 1] as const;
      const faceLooks = {
        x: outward[1] * upward[2] - outward[2] * upward[1],
        y: outward[2] * upward[0] - outward[0] * upward[2],
      };
      const scribed = made.parts
        .filter(({ kind }) => kind === 'board')
        .flatMap(linesUp)
        .flatMap(({ closed, vertices }) => (closed ? [dense(vertices, true)] : []));
      const [first] = cleats;
      const own = scribed.filter((ring) => overlapArea(ring, first!) > 0.9 * design.cleat.length * design.cleat.width);
      expect(own).toHaveLength(1);
      for (const { x, y } of own[0]!)
        expect(x * faceLooks.x + y * faceLooks.y).toBeGreaterThan(dish.ribThickness / 2 - 1e-6);
    });
  });

  it('keeps cleats under their ribs’ base and on the board', () => {
    const end = made.cleatStart + design.cleat.length;
    expect(end).toBeLessThanOrEqual(design.rib.toeRadius + 1e-6);
    const corner = Math.hypot(end, dish.ribThickness / 2 + design.cleat.width);
    if (design.board.shape === 'round') expect(corner).toBeLessThan(design.board.size / 2);
  });

  it('scribes each cleat and drills its pilots where the cleat’s own holes lie', () => {
    const cleat = firstPart(made, 'cleat');
    const boards = made.parts.filter(({ kind }) => kind === 'board');
    const pilots = boards
      .flatMap(({ holes }) => holes)
      .filter(({ diameter }) => diameter === design.board.pilotDiameter);
    expect(pilots).toHaveLength(dish.layout.ribs.length * design.cleat.perRib * design.cleat.downScrews);
    const wanted = items.flatMap((__, k) => {
      const angle = (2 * Math.PI * k) / dish.layout.ribs.length;
      return cleat.holes.flatMap(({ x, y }) => {
        const across = dish.ribThickness / 2 + y;
        // on the right of its rib the block lies turned half round about its middle
        const own = [{ x: made.cleatStart + design.cleat.length - x, y: -across }];
        if (design.cleat.perRib === 2) own.push({ x: made.cleatStart + x, y: across });
        return own.map((point) => turn(point, angle));
      });
    });
    for (const point of wanted)
      expect(Math.min(...pilots.map(({ x, y }) => Math.hypot(x - point.x, y - point.y)))).toBeLessThan(1e-9);
  });

  it('keeps mounting holes off all that stands there by more than their bolts’ washers', () => {
    const boards = made.parts.filter(({ kind }) => kind === 'board');
    const holes = boards
      .flatMap(({ holes }) => holes)
      .filter(({ diameter }) => diameter === design.board.mountingDiameter && diameter !== design.board.centreHole);
    if (design.board.mountingDiameter !== design.board.centreHole)
      expect(holes).toHaveLength(design.board.mountingHoles);
    for (const { x, y } of holes) {
      const washer = Array.from({ length: 90 }, (__, i) => ({
        x: x + 1.1 * design.board.mountingDiameter * Math.cos((2 * Math.PI * i) / 90),
        y: y + 1.1 * design.board.mountingDiameter * Math.sin((2 * Math.PI * i) / 90),
      }));
      for (const { rib, cleats } of items)
        for (const thing of [rib, ...cleats]) expect(overlapArea(washer, thing)).toBe(0);
      expect(overlapArea(washer, hub)).toBe(0);
    }
  });
});

describe('the least radius of a cleat', () => {
  // the outer inner corner of a cleat, seen from the next rib's centre line: s·sin 2α − (t/2+W)·cos 2α = t/2 + 1 mm
  const byHand = (count: number, thickness: number, width: number): number => {
    const bay = (2 * Math.PI) / count;
    return (thickness / 2 + 1 + (thickness / 2 + width) * Math.cos(bay)) / Math.sin(bay);
  };

  it('is that of plain trigonometry, and is named when a cleat is asked for further in', () => {
    const min = byHand(24, 12, 36);
    const tight = make('press-house', [
      ['board: {', `cleat: { length: 80, width: 36, start: ${min - 0.2} }\nboard: {`],
    ]);
    const problem = tight.problems.find(({ code }) => code === 'cleat-does-not-fit');
    expect(problem?.place?.path).toEqual(['cleat', 'start']);
    expect(diagnosticText(problem!)).toContain(`fit from ${Math.ceil(10 * min) / 10} mm on`);
    const just = make('press-house', [
      ['board: {', `cleat: { length: 80, width: 36, start: ${min + 0.001} }\nboard: {`],
    ]);
    expect(just.problems.filter(({ code }) => code === 'cleat-does-not-fit')).toEqual([]);
  });

  it('decides where the cleats go when there is less room', () => {
    const made = make('press-house', [['board: {', 'cleat: { width: 90, perRib: 1 }\nboard: {']]);
    expect(made.problems).toEqual([]);
    expect(made.cleatStart).toBeGreaterThanOrEqual(byHand(24, 12, 90));
    expect(made.cleatStart - byHand(24, 12, 90)).toBeLessThan(5);
  });

  it('is refused by name when there is none', () => {
    const made = make('press-house', [['board: {', 'cleat: { length: 80, width: 150 }\nboard: {']]);
    const [problem] = made.problems.filter(({ code }) => code === 'cleat-does-not-fit');
    expect(problem?.severity).toBe('error');
    expect(problem?.place?.path).toEqual(['cleat', 'width']);
    expect(diagnosticText(problem!)).toContain('does not fit anywhere on the board');
    // 622 mm by the same trigonometry, so base and board would have to reach 80 mm further
    const min = Math.ceil(byHand(24, 12, 150));
    expect(diagnosticText(problem!)).toContain(
      `they fit from ${min} mm on, which needs a board and a rib.toeRadius that reach ${min + 80} mm`,
    );
  });

  it('is refused where it would leave the base', () => {
    const made = make('press-house', [['board: {', 'cleat: { length: 80, start: 520 }\nboard: {']]);
    const [problem] = made.problems.filter(({ code }) => code === 'cleat-does-not-fit');
    expect(diagnosticText(problem!)).toContain('use at most 500 mm');
  });
});
