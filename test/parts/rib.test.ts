import { describe, expect, it } from 'vitest';
import { ribTopHeight } from '../../lib/dish/index.js';
import type { Contour, Point } from '../../lib/geometry/index.js';
import { fixtureNames } from '../helpers/fixtures.js';
import { romberg } from '../dish/shapes.js';
import { dense, make, firstPart, areaOfRing } from './making.js';

describe.each(fixtureNames.filter((name) => name !== 'classroom'))('the rib of %s', (name) => {
  const made = make(name);
  const { design, dish } = made;
  const rib = firstPart(made, 'rib');
  const points = dense(rib.outline, true, 200);
  const length = dish.apertureRadius - dish.innerRadius;

  it('stands square at its inner end, flat on its base, and ends upright at the rim', () => {
    const corners = rib.outline;
    expect(corners[0]).toMatchObject({ x: 0, y: 0 });
    expect(corners.at(-1)!.x).toBeCloseTo(0, 9);
    expect(corners[1]).toMatchObject({ x: design.rib.toeRadius - dish.innerRadius, y: 0 });
    expect(corners[2]!.x).toBeCloseTo(length, 9);
    expect(corners[3]!.x).toBeCloseTo(length, 9);
    expect(corners[3]!.y - corners[2]!.y).toBeCloseTo(design.rib.rimHeight, 9);
  });

  it('runs anticlockwise and encloses what lies under the true curve (Romberg integration)', () => {
    const under = romberg((r) => dish.baseHeight + ribTopHeight(dish, r), dish.innerRadius, dish.apertureRadius);
    const toe = design.rib.toeRadius - dish.innerRadius;
    const cutOff = ((length - toe) * (dish.rimEndHeight - design.rib.rimHeight)) / 2;
    // the curve lies within its tolerance, now on one side and now on the other
    expect(Math.abs(areaOfRing(points) - (under - cutOff))).toBeLessThan(0.5 * design.dish.arcTolerance * length);
  });

  it('marks as optical just the edges on the true curve', () => {
    const vertices = rib.outline;
    const optical = rib.edges.find(({ role }) => role === 'optical')!;
    vertices.forEach(({ x, y }, i) => {
      const off = Math.abs(y - (dish.baseHeight + ribTopHeight(dish, dish.innerRadius + Math.max(0.001, x))));
      if (i >= optical.from && i <= optical.to + 1) expect(off).toBeLessThan(0.02);
      else expect(off).toBeGreaterThan(1);
    });
  });

  it('has its pilots where the cleat’s edge holes meet it, half the cleat’s thickness up', () => {
    const cleat = firstPart(made, 'cleat');
    // the outer of two rows ends where the base does
    const rows =
      design.cleat.rows === 2 ? [made.cleatStart, design.rib.toeRadius - design.cleat.length] : [made.cleatStart];
    expect(rib.holes).toHaveLength(rows.length * design.cleat.ribScrews);
    // the block lies on the right of the rib, its own x running inward
    const holes = [...cleat.edgeHoles].sort((a, b) => b.x - a.x);
    rib.holes.forEach(({ x, y, diameter }, i) => {
      const hole = holes[i % holes.length]!;
      const start = rows[Math.floor(i / holes.length)]!;
      expect(x + dish.innerRadius).toBeCloseTo(start + design.cleat.length - hole.x, 9);
      expect(y).toBe(hole.height);
      expect(y).toBe(cleat.thickness / 2);
      expect(diameter).toBe(design.rib.pilotDiameter);
    });
  });
});

describe('the rib of the classroom, with tabs and a nose', () => {
  const made = make('classroom');
  const rib = firstPart(made, 'rib');
  // by hand: a hub of 16 mm and slots of four thicknesses end 28 mm off the axis, and 6 mm of wood follow; the base ends
  // at 150 mm, less 6 mm; two tabs of a quarter of those 110 mm each, 3 mm less 0.1 mm of play deep
  const [from, to, length] = [34 - 16, 144 - 16, 27.5];

  it('has its tabs at both ends of the base', () => {
    const corners = rib.outline.filter(({ y }) => y < 0).map(({ x, y }) => [x, y]);
    expect(corners).toEqual([from, from + length, to - length, to].map((x) => [x, -2.9]));
  });

  it('is larger than what lies under the curve by tabs and nose', () => {
    const { design, dish } = made;
    const under = romberg((r) => dish.baseHeight + ribTopHeight(dish, r), dish.innerRadius, dish.apertureRadius);
    const reach = dish.apertureRadius - dish.innerRadius;
    const cutOff = ((200 - 150) * (dish.rimEndHeight - design.rib.rimHeight)) / 2;
    // the nose: two thicknesses long, from a disc and the play up to 1 mm and a disc under the curve, by half a millimetre
    const nose = 6 * (Math.floor(2 * (dish.innerEndHeight - 4)) / 2 - 3.1);
    expect(nose).toBeGreaterThan(0);
    const expected = under - cutOff + 2 * length * 2.9 + nose;
    const area = areaOfRing(dense(rib.outline, true, 200));
    expect(Math.abs(area - expected)).toBeLessThan(0.5 * design.dish.arcTolerance * reach);
  });

  it('names the roots of tabs and nose as corners in which board and hub seat', () => {
    const roots = rib.seatCorners.map(({ vertex }) => rib.outline[vertex]!);
    expect(roots.slice(0, 4).map(({ x, y }) => [x, y])).toEqual(
      [from, from + length, to - length, to].map((x) => [x, 0]),
    );
    expect(roots.slice(4).map(({ x }) => x)).toEqual([0, 0]);
  });

  it('has no holes and no line for a cleat', () => {
    expect(rib.holes).toEqual([]);
    expect(rib.marks.every(({ kind }) => kind === 'text')).toBe(true);
    expect(made.parts.some(({ kind }) => kind === 'cleat')).toBe(false);
  });
});

/** Points of a ring at most 1 mm apart: straight edges by their ends alone are too coarse. */
function finely(ring: Contour): Point[] {
  return dense(ring, true, 400).flatMap((point, i, all) => {
    const next = all[(i + 1) % all.length]!;
    const steps = Math.ceil(Math.hypot(next.x - point.x, next.y - point.y));
    return Array.from({ length: steps }, (_, k) => ({
      x: point.x + ((next.x - point.x) * k) / steps,
      y: point.y + ((next.y - point.y) * k) / steps,
    }));
  });
}

const apart = (a: readonly Point[], b: readonly Point[]): number =>
  Math.min(...a.map((p) => Math.min(...b.map((q) => Math.hypot(p.x - q.x, p.y - q.y)))));

describe('the clamp hole', () => {
  it.each(['press-house', 'table-top', 'hand-cut-inch'] as const)(
    'of %s is near the rim, with 20 mm of wood all round',
    (name) => {
      const rib = firstPart(make(name), 'rib');
      expect(rib.openings).toHaveLength(1);
      const hole = dense(rib.openings[0]!, true, 180);
      expect(areaOfRing(hole)).toBeLessThan(0);
      expect(apart(hole, finely(rib.outline))).toBeGreaterThan(19.98);
      const length = Math.max(...rib.outline.map(({ x }) => x));
      expect(length - Math.max(...hole.map(({ x }) => x))).toBeLessThan(length / 3);
      // hole saws are sold in 30 mm and in 1-1/4 in: common practice, no source
      const across = Math.max(...hole.map(({ x }) => x)) - Math.min(...hole.map(({ x }) => x));
      expect(across).toBeCloseTo(name === 'hand-cut-inch' ? 31.75 : 30, 2);
    },
  );

  it('is left out where it is not wanted, the rib is slender, or its top and underside are about parallel', () => {
    const none = [
      make('press-house', [['rib: { material: birch12 }', 'rib: { material: birch12, clampHole: 0 }']]),
      make('classroom'),
      // a toe cut as steep as the curve at the rim
      make('press-house', [
        ['rib: { material: birch12 }', 'rib: { material: birch12, toeRadius: 420, rimHeight: 110 }'],
      ]),
    ];
    for (const made of none) expect(firstPart(made, 'rib').openings).toEqual([]);
  });
});

describe('lightening holes', () => {
  const made = make('press-house', [['rib: { material: birch12 }', 'rib: { material: birch12, lightening: true }']]);
  const rib = firstPart(made, 'rib');
  const holes = rib.openings.map((opening) => dense(opening, true, 90));
  const web = made.design.rib.minWeb;

  it('are there, and run clockwise', () => {
    expect(holes.length).toBeGreaterThan(2);
    for (const hole of holes) expect(areaOfRing(hole)).toBeLessThan(0);
  });

  it('keep the least web to every edge, to each other and to the pilots', () => {
    const outline = finely(rib.outline);
    holes.forEach((hole, i) => {
      expect(apart(hole, outline)).toBeGreaterThan(web - 0.02);
      for (const other of holes.slice(i + 1)) expect(apart(hole, other)).toBeGreaterThan(web - 0.02);
      expect(apart(hole, rib.holes)).toBeGreaterThan(web - 0.02);
    });
  });
});

describe('two cleats on a rib', () => {
  it.each([
    [1, 1],
    [2, 1],
    [1, 2],
    [2, 2],
    [3, 2],
    [2, 3],
    [4, 3],
  ])('have screws that never meet inside it: %d into the rib, %d down', (ribScrews, downScrews) => {
    const made = make('press-house', [
      ['board: {', `cleat: { perRib: 2, length: 160, ribScrews: ${ribScrews}, downScrews: ${downScrews} }\nboard: {`],
    ]);
    const xs = firstPart(made, 'rib')
      .holes.map(({ x }) => x)
      .sort((a, b) => a - b);
    expect(xs).toHaveLength(2 * ribScrews);
    xs.slice(1).forEach((x, i) => {
      expect(x - xs[i]!).toBeGreaterThan(made.design.cleat.screwDiameter);
    });
    expect(made.problems.filter(({ code }) => code === 'cleat-crowded')).toEqual([]);
  });
});
