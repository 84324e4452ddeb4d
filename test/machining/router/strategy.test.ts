/** What keeps a cut clean and a part held: each rule against what it is for, by the moves that the tool makes. */
import { describe, expect, it } from 'vitest';
import { bounds, circle, nearestOnContour, perimeter, rectangle, reversed } from '../../../lib/geometry/index.js';
import { type Cut, machine, type Move, spacingFor } from '../../../lib/machining/index.js';
import { cuttingOf } from '../../../lib/machining/router/feeds.js';
import { lineMark } from '../../../lib/part/index.js';
import { feedingAt, routerData, shop, type Shop, shopPart, twoPlates } from '../../helpers/router-sheets.js';

const cutsOf = ({ plan }: Shop): Cut[] => plan.toolpath.runs.flatMap(({ cuts }) => cuts);
const inch = 25.4;

describe('drilling', () => {
  const holes = twoPlates().plan.toolpath.runs.find(({ tool }) => tool.kind === 'drill')?.cuts ?? [];

  // NISTIR 6556 (2000), G83: after each peck the tool comes right out, then goes at travel speed "to the current hole
  // bottom, backed off a bit", which its interpreter takes as 0.010 in; from memory
  it('comes back into a hole at travel speed to just above where it was, never into the wood', () => {
    expect(holes.some(({ moves }) => moves.filter(({ kind }) => kind === 'rapid').length > 3)).toBe(true);
    for (const { moves } of holes) {
      let bottom = 0;
      for (const { kind, to } of moves) {
        if (kind === 'line') bottom = Math.min(bottom, to.z);
        if (kind !== 'rapid' || to.z >= 0) continue;
        expect(to.z - bottom).toBeGreaterThanOrEqual(0.01 * inch);
        expect(to.z - bottom).toBeLessThan(1);
      }
    }
  });

  // Koch, Utilization of the Southern Pines, Agriculture Handbook 420 (USDA 1972), boring: bits of one inch are fed to
  // chips of 0.010 to 0.030 in a lip; Machinery's Handbook: twist drills of 1/8 to 1/4 in take 0.002 in a turn and more,
  // even in metal; both from memory
  it('feeds a bit of one inch to a chip of wood boring, and a small one no thinner than in metal', () => {
    const sheet = { kind: 'plywood', thickness: 12 };
    const data = routerData({
      machine: { ...feedingAt(1e6), spindle: { min: 1000, max: 24_000 } },
      spindle: { speed: 18_000, drillSpeed: 2000 },
    });
    const chip = (diameter: number, flutes: number): number => {
      const { feed, spindle } = cuttingOf(
        { number: 1, kind: 'drill', diameter, flutes, cuttingDepth: 60 },
        sheet,
        data,
      );
      expect(spindle).toBe(2000);
      return feed / spindle / flutes / inch;
    };
    for (const flutes of [1, 2]) {
      expect(chip(inch, flutes)).toBeGreaterThan(0.0105);
      expect(chip(inch, flutes)).toBeLessThan(0.03);
    }
    for (const diameter of [inch / 8, inch / 4]) expect(2 * chip(diameter, 2)).toBeGreaterThan(0.002);
  });
});

describe('tabs', () => {
  const held = (radius: number): Shop =>
    shop({
      parts: [shopPart('disc', circle({ x: radius, y: radius }, radius))],
      placed: [{ part: 'disc', copy: 1, x: 20, y: 20, rotationDeg: 0, mirrored: false }],
      width: 2 * radius + 40,
      height: 2 * radius + 40,
      thickness: 12,
    });

  // a tab of 6 mm with a tool of 6 mm either side spans 12 mm of edge: half a radian and more of a disc of 20 mm,
  // whose edge is no longer "straight or gently curved"; a tenth of a radian of one of 120 mm
  it('stand on a gently curved edge, and not on a tight one', () => {
    expect(held(120).plan.problems).toEqual([]);
    expect(held(120).plan.limits.holding[0]?.tabs).toBeGreaterThanOrEqual(2);
    expect(held(20).plan.problems.map(({ code }) => code)).toContain('router-no-tabs');
  });
});

describe('the end of a ring', () => {
  const outline = rectangle(0, 0, 300, 200);
  const job = shop({
    parts: [shopPart('plate', outline)],
    placed: [{ part: 'plate', copy: 1, x: 20, y: 20, rotationDeg: 0, mirrored: false }],
    width: 340,
    height: 240,
    thickness: 3,
  });
  const { moves } = cutsOf(job).find(({ title }) => title === 'outline plate 1') ?? { moves: [] };
  const radius = 3;

  /** Whether the edge of the tool stands on the edge of the plate, which lies at 20, 20. */
  const onEdge = ({ to: { x, y } }: Move): boolean =>
    Math.abs(nearestOnContour(outline, { x: x - 20, y: y - 20 }).distance - radius) < 1e-6;

  function levelLength(from: Move, move: Move): number {
    const chord = Math.hypot(move.to.x - from.to.x, move.to.y - from.to.y);
    return move.kind === 'arc' ? 2 * radius * Math.asin(Math.min(1, chord / 2 / radius)) : chord;
  }

  // common practice, no source: the last pass goes on past the place where it began, so that no ridge is left there
  it('overlaps its beginning along the finished edge, a little', () => {
    const run = moves.slice(1).reduce((sum, move, i) => {
      const from = moves[i] ?? move;
      return onEdge(from) && onEdge(move) ? sum + levelLength(from, move) : sum;
    }, 0);
    const once = perimeter(outline) + 2 * Math.PI * radius;
    expect(run - once).toBeGreaterThan(0.5);
    expect(run - once).toBeLessThan(3);
  });
});

describe('parts that touch, at spacing 0', () => {
  it('are drawn where they lie, each with its own outline', () => {
    const hand = { kind: 'hand', web: 0 } as const;
    expect(spacingFor(hand)).toBe(0);
    const part = shopPart('plate', rectangle(0, 0, 100, 50));
    const placed = [0, 100].map((x, i) => ({ part: 'plate', copy: i + 1, x, y: 0, rotationDeg: 0, mirrored: false }));
    const sheets = machine([{ stock: 'ply', width: 200, height: 50, margin: 0, placed }], [part], hand, {
      compensated: false,
    });
    const boxes = sheets.flatMap(({ operations }) => operations.map(({ vertices }) => bounds(vertices)));
    expect(boxes.map(({ minX, maxX }) => [minX, maxX]).sort()).toEqual([
      [0, 100],
      [100, 200],
    ]);
  });
});

describe('low hops between marks', () => {
  // an upright mark at each x, in a plate of 300 x 80 with an opening between 140 and 160
  const plateWith = (xs: readonly number[], y = 35, length = 10) =>
    shopPart('plate', rectangle(0, 0, 300, 80), {
      openings: [reversed(rectangle(140, 20, 160, 60))],
      marks: xs.map((x) =>
        lineMark([
          { x, y, bulge: 0 },
          { x, y: y + length, bulge: 0 },
        ]),
      ),
    });
  const travels = (xs: readonly number[], data = routerData(), ...where: readonly number[]): number[] => {
    const made = shop({
      parts: [plateWith(xs, ...where)],
      placed: [
        { part: 'plate', copy: 1, x: 20, y: 20, rotationDeg: 0, mirrored: false },
        { part: 'plate', copy: 2, x: 20, y: 120, rotationDeg: 0, mirrored: false },
      ],
      width: 340,
      height: 220,
      thickness: 12,
      data,
    });
    expect(made.simulate().findings).toEqual([]);
    const v = made.plan.toolpath.runs.find(({ tool }) => tool.kind === 'v');
    return (v?.cuts ?? []).slice(1).map(({ moves }) => moves[0]!.to.z);
  };

  it.each([
    ['lie near each other', [40, 60], [3, 10, 3]],
    ['have an opening between them', [120, 180], [10, 10, 10]],
    ['lie further apart than a sheet lies flat', [10, 115], [10, 10, 10]],
  ])('are made, or not, where they %s', (_, xs, heights) => {
    expect(travels(xs)).toEqual(heights);
  });

  it('are not made along the edge, where a clamp may stand beside the part', () => {
    expect(travels([40, 60], routerData(), 1, 4)).toEqual([10, 10, 10]);
  });

  it('are not made where the bit travels as low anyway', () => {
    expect(travels([40, 60], routerData({ safeHeight: 2 }))).toEqual([2, 2, 2]);
  });
});
