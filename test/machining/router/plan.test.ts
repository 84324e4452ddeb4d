/** What the router's strategy promises: feeds, order, ramps, sense of cut, tabs, travel, and named problems. */
import { diagnosticText } from '../../../lib/diagnostic/index.js';
import { describe, expect, it } from 'vitest';
import { distance, nearestOnContour, rectangle, regularPolygon } from '../../../lib/geometry/index.js';
import { feedProblems } from '../../../lib/machining/router/feeds.js';
import { cuttingOf, type Cut, type Move, type RouterTool } from '../../../lib/machining/index.js';
import {
  feedingAt,
  machineData,
  type Shop,
  routerData,
  type ShopJob,
  shopPart,
  twoPlates,
} from '../../helpers/router-sheets.js';

const mill = (changes: Partial<RouterTool> = {}): RouterTool => ({
  number: 1,
  kind: 'mill',
  diameter: 6,
  flutes: 2,
  cuttingDepth: 24,
  ...changes,
});
const ply = { kind: 'plywood', thickness: 12 };
const cutsOf = ({ plan }: Shop): readonly Cut[] => plan.toolpath.runs.flatMap(({ cuts }) => cuts);
const codes = ({ plan }: Shop): string[] => plan.problems.map(({ code }) => code);

describe('speeds and feeds', () => {
  // feed = rev/min x teeth x feed a tooth: the milling formula of Machinery's Handbook, from memory; worked by hand:
  // 18000 x 2 x 0.1 = 3600 mm/min; 16000 x 3 x 0.08 = 3840 mm/min
  it.each([
    [18_000, 2, 0.1, 3600],
    [16_000, 3, 0.08, 3840],
    [10_000, 1, 0.15, 1500],
  ])('%i rev/min, %i flutes, %f mm give %i mm/min', (speed, flutes, chipLoad, feed) => {
    const data = routerData({
      chipLoad,
      machine: machineData({ spindle: { min: 5000, max: 24_000 } }),
      spindle: { speed },
    });
    expect(cuttingOf(mill({ flutes }), ply, data).feed).toBe(feed);
  });

  // Onsrud, CNC Production Routing Guide, chip load per tooth in inches, by diameter in inches: from memory
  it.each([
    ['plywood', 1 / 8, 0.004, 0.006],
    ['plywood', 1 / 4, 0.011, 0.013],
    ['plywood', 3 / 8, 0.017, 0.02],
    ['plywood', 1 / 2, 0.021, 0.023],
    ['mdf', 1 / 8, 0.004, 0.007],
    ['mdf', 1 / 4, 0.013, 0.016],
    ['mdf', 3 / 8, 0.02, 0.023],
    ['mdf', 1 / 2, 0.025, 0.027],
    ['acrylic', 1 / 4, 0.008, 0.01],
    ['acrylic', 1 / 2, 0.012, 0.016],
    ['aluminium', 1 / 8, 0.002, 0.004],
    ['aluminium', 1 / 4, 0.005, 0.007],
  ])('of %s with a bit of %f in stay within the handbook table', (kind, inches, min, max) => {
    const sheet = { kind, thickness: 12 };
    const tool = mill({ diameter: 25.4 * inches });
    const warned = (chip: number): boolean => {
      const data = routerData({ chipLoad: chip, machine: feedingAt(100_000) });
      return feedProblems([cuttingOf(tool, sheet, data)], sheet, data).length > 0;
    };
    expect([warned(25.4 * min), warned(25.4 * max)]).toEqual([false, false]);
    expect([warned(25.4 * max * 1.02), warned(25.4 * min * 0.19)]).toEqual([true, true]);
    // a bit rubs below a fifth of the table's least, column by column
    expect(warned(25.4 * min * 0.21)).toBe(false);
    const usual = routerData({ machine: feedingAt(100_000) });
    const { feed, spindle, tool: bit } = cuttingOf(tool, sheet, usual);
    const chip = feed / spindle / bit.flutes / 25.4;
    // cautious, for light machines: below the table, and far enough from rubbing not to be warned of
    expect(chip).toBeLessThan(min);
    expect(chip).toBeGreaterThan(0.4 * min);
    expect(feedProblems([cuttingOf(tool, sheet, usual)], sheet, usual)).toEqual([]);
  });

  // n = 1000 v / (pi d): 1000 x 350 / (pi x 8) = 13,926; 1000 x 75 / (pi x 3) = 7,958; 1000 x 60 / (pi x 3) = 6,366
  it('keep the edge of a bit within what aluminium bears', () => {
    const aluminium = { kind: 'aluminium', thickness: 3 };
    const { spindle, passDepth, plunge } = cuttingOf(mill({ diameter: 8 }), aluminium, routerData());
    expect([spindle, passDepth, plunge]).toEqual([13_926, 2, 150]);
    expect(cuttingOf(mill({ diameter: 8 }), ply, routerData()).passDepth).toBe(6);
    expect(cuttingOf(mill({ diameter: 2 }), ply, routerData()).passDepth).toBe(0.75);
  });

  it('give drill bits a drilling speed, and say where the spindle turns too fast for one', () => {
    const slow = routerData({ machine: machineData({ spindle: { min: 2000, max: 24_000 } }) });
    const drill = (diameter: number) => mill({ kind: 'drill', diameter });
    expect(cuttingOf(drill(3), ply, slow).spindle).toBe(7958);
    expect(cuttingOf(drill(3), { kind: 'aluminium', thickness: 3 }, slow).spindle).toBe(6366);
    const fast = routerData();
    expect(feedProblems([cuttingOf(drill(4), ply, fast)], ply, fast)).toEqual([]);
    const [doubt] = feedProblems([cuttingOf(drill(8), ply, fast)], ply, fast);
    expect(doubt?.message).toContain('drills 8 mm at 8000 rev/min in plywood, where up to 5968 is usual');
  });

  // twice the depth of a 90 degree bit is engaged: 2 x 0.3 = 0.6 mm; 0.004 in at 1/8 in is 0.0192 mm at 0.6 mm
  it('feed a V-bit by the diameter that engages', () => {
    const { feed, spindle } = cuttingOf(mill({ kind: 'v', diameter: 12 }), ply, routerData({ markDepth: 0.3 }));
    expect(feed / spindle / 2).toBeCloseTo(0.0192, 4);
    expect(cuttingOf(mill({ kind: 'v', diameter: 30 }), ply, routerData({ markDepth: 0.3 })).feed).toBe(feed);
  });

  it.each([
    ['plunging fast', { plungeFeed: 3000 }, 'plungeFeed'],
    ['a steep ramp', { rampAngleDeg: 30 }, 'rampAngleDeg'],
  ])('warn of %s by the material', (_, changes, key) => {
    const data = routerData(changes);
    const doubts = feedProblems([cuttingOf(mill(), ply, data)], ply, data);
    expect(doubts.map((one) => one.key.at(-1))).toEqual([key]);
  });

  it('turn slower rather than thin the chip where the machine is slow', () => {
    const data = routerData({ chipLoad: 0.15, machine: feedingAt(3000) });
    const { spindle, feed } = cuttingOf(mill(), ply, data);
    expect(spindle).toBe(10_000);
    expect(feed).toBe(3000);
  });

  it.each([
    ['chips too thin', { chipLoad: 0.01 }],
    ['chips too thick', { chipLoad: 0.6, machine: feedingAt(20_000) }],
    ['passes too deep', { passDepth: 2 }],
  ])('warn of %s and still write', (_, changes) => {
    const job = twoPlates({ data: routerData(changes) });
    expect(codes(job)).toContain('router-chip-load');
    expect(job.files.size).toBe(1);
  });
});

describe('named problems, and no file', () => {
  const cases: [string, string, Partial<ShopJob>][] = [
    [
      'a tool too short for the sheet',
      'router-tool-short',
      { data: routerData({ tools: [mill({ cuttingDepth: 10 })] }) },
    ],
    ['a drill that is not listed', 'router-tool-missing', { data: routerData({ tools: [mill()] }) }],
    ['no end mill of the diameter', 'router-tool-missing', { data: routerData({ tools: [mill({ diameter: 8 })] }) }],
    [
      'a spindle out of range',
      'router-spindle',
      { data: routerData({ spindle: { speed: 30_000 }, machine: feedingAt(50_000) }) },
    ],
    [
      'a spindle range the wrong way round',
      'router-spindle',
      { data: routerData({ machine: machineData({ spindle: { min: 24_000, max: 8000 } }) }) },
    ],
    [
      'a plunge over what the machine holds',
      'machine-feed',
      { data: routerData({ plungeFeed: 900, machine: machineData({ maxFeed: { x: 4000, y: 4000, z: 500 } }) }) },
    ],
    [
      'a place to park off the working area',
      'machine-place',
      {
        data: routerData({
          machine: machineData({ area: { width: 1000, height: 300 }, parking: { x: 500, y: 310 } }),
        }),
      },
    ],
    [
      'a tool change below the clamps',
      'machine-place',
      { data: routerData({ machine: machineData({ toolChange: 'by-hand', changeHeight: 5 }) }) },
    ],
    [
      'four decimals of an inch',
      'machine-decimals',
      { data: routerData({ machine: machineData({ programUnits: 'in', decimals: 4 }) }) },
    ],
    ['a finish too wide for the bit', 'router-finishing', { data: routerData({ finishing: 1.6 }) }],
    ['no room for tabs', 'router-no-tabs', { data: routerData({ tabs: { ...routerData().tabs, width: 300 } }) }],
    [
      'a skin as thick as the sheet',
      'router-no-tabs',
      { parts: [seats()], data: routerData({ tabs: { ...routerData().tabs, onionSkin: 12 } }) },
    ],
    ['a countersink deeper than the sheet', 'router-countersink', { thickness: 3 }],
    ['a cut over the edge of the sheet', 'router-sheet-edge', { width: 454 }],
  ];
  it.each(cases)('%s', (_, code, changes) => {
    const job = twoPlates(changes);
    const found = job.plan.problems.find((one) => one.code === code);
    expect(found?.severity).toBe('error');
    expect(diagnosticText(found!)).toMatch(/\d/);
    expect(job.files.size).toBe(0);
    expect(job.plan.toolpath.runs).toEqual([]);
  });
});

function seats() {
  return shopPart('plate', rectangle(0, 0, 200, 120), { barred: [0, 1, 2, 3] });
}

describe('strategy', () => {
  const job = twoPlates();
  const cuts = cutsOf(job);

  it('drills and countersinks before it mills, and cuts the openings of a part before its outline', () => {
    const kinds = job.plan.toolpath.runs.map(({ tool }) => tool.kind);
    expect(kinds).toEqual(['drill', 'v', 'mill']);
    for (const part of ['plate 1', 'plate 2']) {
      const own = cuts.filter(({ title }) => title.replace(/ core$/, '').endsWith(part));
      expect(own.length).toBeGreaterThan(5);
      expect(own.findIndex(({ title }) => title.startsWith('outline'))).toBe(own.length - 1);
    }
  });

  it('pecks: the bit never goes deeper than its peck without coming out', () => {
    const { passDepth } = job.plan.limits.tools.find(({ kind }) => kind === 'drill')!;
    for (const { moves } of job.plan.toolpath.runs[0]!.cuts) {
      const lows = moves.filter(({ kind }) => kind === 'line').map(({ to }) => to.z);
      lows.reduce((last, z) => {
        expect(last - z).toBeLessThanOrEqual(passDepth + 1e-9);
        return z;
      }, 0);
    }
  });

  it('holds a part of which every edge mates by a skin, and says so', () => {
    const skinned = twoPlates({ parts: [seats()] });
    expect(skinned.plan.limits.holding.map(({ onionSkin }) => onionSkin)).toContain(true);
    expect(
      skinned.plan.problems.filter(({ code }) => code === 'router-onion-skin').map(({ severity }) => severity),
    ).toEqual(['warning']);
    expect(skinned.simulate().findings).toEqual([]);
  });

  it('ramps into the material at no more than the angle set', () => {
    const data = routerData({ rampAngleDeg: 3 });
    for (const { moves } of cutsOf(twoPlates({ data })).filter(({ title }) => /outline|opening/.test(title))) {
      moves.reduce<Move>((from, move) => {
        const fall = from.to.z - move.to.z;
        // over tabs the tool comes down at 45 degrees into the open cut, at the plunging feed
        if (move.kind === 'line' && move.to.z < 0 && fall > 1e-6 && move.feed > (data.plungeFeed ?? 600))
          expect(fall / distance(from.to, move.to)).toBeLessThanOrEqual(Math.tan((3 * Math.PI) / 180) + 1e-6);
        return move;
      }, moves[0]!);
    }
  });

  // seen from above, a tool that turns clockwise climbs with the material on its right (common practice, no source)
  it.each([
    ['conventional', 1],
    ['climb', -1],
  ] as const)('goes round outlines %s', (direction, turn) => {
    const { moves } = cutsOf(twoPlates({ data: routerData({ direction }) })).find(
      ({ title }) => title === 'outline plate 1',
    )!;
    let twice = 0;
    moves.reduce<Move>((from, move) => {
      if (move.to.z < 0) twice += from.to.x * move.to.y - move.to.x * from.to.y;
      return move;
    }, moves[0]!);
    expect(Math.sign(twice)).toBe(turn);
  });

  it('keeps tabs off edges that seat or reflect', () => {
    const part = shopPart('plate', regularPolygon({ x: 90, y: 90 }, 88, 6), { barred: [0, 2, 3, 5] });
    const held = twoPlates({ parts: [part], height: 240 });
    expect(held.simulate().findings).toEqual([]);
    const outline = part.outline;
    const first = cutsOf(held).find(({ title }) => title === 'outline plate 1')!;
    const lifted = first.moves.filter(({ kind, to }) => kind === 'line' && to.z === -9);
    expect(lifted.length).toBeGreaterThan(1);
    // plate 1 lies at 20, 20 as drawn
    for (const { to } of lifted) {
      const { edge } = nearestOnContour(outline, { x: to.x - 20, y: to.y - 20 });
      expect([1, 4]).toContain(edge);
    }
  });

  it('tells time, travel and wear', () => {
    const { cuttingSeconds, travelLength, toolWear } = job.plan;
    expect(toolWear.map(({ tool }) => tool)).toEqual([2, 3, 1]);
    const mm = toolWear.find(({ tool }) => tool === 1)!.length;
    expect(cuttingSeconds).toBeGreaterThan((mm / machineData().maxFeed.x) * 60);
    expect(travelLength).toBeGreaterThan(0);
  });
});
