/** Router files by simulated cutting: good files are proven, planted faults are found. */
import type { RouterMachine } from '../../lib/machining/index.js';
import { describe, expect, it } from 'vitest';
import { regularPolygon } from '../../lib/geometry/index.js';
import type { FindingCode } from '../../lib/check/router-simulation/index.js';
import { machineData, routerData, routerProcess, shop, shopPart, twoPlates } from '../helpers/router-sheets.js';
import { throughHole } from '../../lib/part/index.js';

const good = twoPlates();
const [name, text] = [...good.files][0]!;
const lines = text.split('\n');

const found = (changed: readonly string[]): FindingCode[] => [
  ...new Set(good.simulate(new Map([[name, changed.join('\n')]])).findings.map(({ code }) => code)),
];
const edit = (at: number, ...put: string[]): string[] => [...lines.slice(0, at), ...put, ...lines.slice(at + 1)];
const indexOf = (pattern: RegExp, from = 0): number => {
  const at = lines.findIndex((line, i) => i >= from && pattern.test(line));
  expect(at).toBeGreaterThanOrEqual(from);
  return at;
};
const outlineStart = indexOf(/\(outline plate 1\)/);

describe('good files', () => {
  it.each([
    ['as they come', {}],
    ['climbing', { data: routerData({ direction: 'climb' }) }],
    ['with rounded corners allowed', { data: routerData({ machine: machineData({ pathMode: 'continuous' }) }) }],
    ['a file a tool', { data: routerData({ machine: machineData({ toolChange: 'none' }) }) }],
    ['deep in one pass', { data: routerData({ passDepth: 3 }) }],
    ['flat ramps and a wide finish', { data: routerData({ rampAngleDeg: 1, finishing: 0.8 }) }],
    ['steep ramps', { data: routerData({ rampAngleDeg: 20 }) }],
    ['without relief', { process: routerProcess({ relief: 'none' }) }],
    ['with a 4 mm bit', { process: routerProcess({ toolDiameter: 4, drills: [6] }) }],
    ['in thin hardboard', { thickness: 3.2, kind: 'hardboard', parts: [thinPlate()] }],
    ['held by an onion skin', { data: routerData({ tabs: { ...routerData().tabs, onionSkinBelow: 500 } }) }],
  ])('%s are proven', (_, changes) => {
    const job = twoPlates(changes);
    expect(job.plan.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(job.files.size).toBeGreaterThan(0);
    const { findings, worstEdge, deepestInSpoilBoard } = job.simulate();
    expect(findings).toEqual([]);
    expect(worstEdge).toBeLessThan(0.005);
    expect(deepestInSpoilBoard).toBeLessThanOrEqual(0.3001);
  });

  it('are proven with the arcs in radius form, as the standard allows', () => {
    const changed = lines.map((line) => {
      const arc = /^(.*)I(\S+) J(\S+)(.*)$/.exec(line);
      return arc ? `${arc[1]}R${Math.hypot(Number(arc[2]), Number(arc[3])).toFixed(5)}${arc[4]}` : line;
    });
    expect(changed.join('\n')).not.toContain(' I');
    expect(found(changed)).toEqual([]);
  });

  it('are proven in lower case, with blanks, line numbers and signs, as the standard allows', () => {
    const changed = lines.map((line, i) =>
      /^[%(]/.test(line) || line === ''
        ? line
        : `N${i} ${line
            .toLowerCase()
            .replace(/ /g, '\t')
            .replace(/([xyzij])(\d)/g, '$1 +$2')} (note)`,
    );
    expect(found(changed)).toEqual([]);
  });

  it('are proven in inches', () => {
    const changed = lines.map((line) =>
      line.startsWith('(')
        ? line
        : line
            .replace('G21', 'G20')
            .replace(
              /([XYZIJF])(-?[\d.]+)/g,
              (_, letter: string, value: string) => letter + (Number(value) / 25.4).toFixed(9),
            ),
    );
    // the program stays otherwise that of a machine in millimetres
    expect(found(changed)).toEqual(['modal']);
  });

  it.each([
    ['in inches', { programUnits: 'in' }],
    ['in short lines', { arcs: 'lines', lineTolerance: 0.01 }],
    ['for tools changed by hand', { toolChange: 'by-hand', changeAt: { x: 100, y: 5 }, parking: { x: 0, y: 200 } }],
    ['for one tool a file', { toolChange: 'none', coolant: 'mist', end: 'M30' }],
    ['with numbered lines and short comments', { lineNumbers: 10, commentLength: 48, commentCharacters: 'capitals' }],
    ['with three decimals and slow axes', { decimals: 3, maxFeed: { x: 2000, y: 1500, z: 300 } }],
  ] satisfies readonly (readonly [string, Partial<RouterMachine>])[])('are proven %s', (_, changes) => {
    const data = routerData({ machine: machineData(changes), plungeFeed: 300 });
    const job = twoPlates({ data });
    const { findings, worstEdge } = job.simulate();
    expect(findings.map(({ message }) => message)).toEqual([]);
    expect(worstEdge).toBeLessThan(0.02);
  });
});

function thinPlate() {
  return shopPart('plate', regularPolygon({ x: 100, y: 60 }, 60, 6), {
    holes: [throughHole({ x: 100, y: 60 }, 4)],
  });
}

describe('planted faults are found', () => {
  const at = (pattern: RegExp): number => indexOf(pattern, outlineStart);
  // a feed move at depth along the outline
  const deepLine = at(/^X[\d.]+$/);
  const z = lines.findIndex((line, i) => i > outlineStart && /Z-12\.3/.test(line));
  const plungeEnd = indexOf(/^G1 Z-12\.3$/);
  const cases: [string, FindingCode, () => string[]][] = [
    ['a rapid at depth', 'rapid', () => edit(deepLine, lines[deepLine]!.replace(/^(?:G1 )?/, 'G0 '))],
    ['a rapid down into the sheet', 'rapid', () => edit(outlineStart + 2, 'Z-6')],
    ['travel below the travel height', 'rapid', () => lines.map((line) => (line === 'G0 Z10' ? 'G0 Z2' : line))],
    ['no spindle start', 'spindle', () => lines.filter((line) => !/M3$/.test(line))],
    ['the spindle the wrong way round', 'spindle', () => lines.map((line) => line.replace(/M3$/, 'M4'))],
    ['a spindle too fast', 'spindle', () => lines.map((line) => line.replace(/^S\d+ M3/, 'S90000 M3'))],
    [
      'a wrong arc centre',
      'arc',
      () => {
        const arc = at(/I\S+ J/);
        return edit(
          arc,
          lines[arc]!.replace(/I(-?[\d.]+)/, (_, i: string) => `I${(Number(i) + 0.5).toFixed(4)}`),
        );
      },
    ],
    [
      'an arc turned the other way',
      'edge',
      () => {
        const arc = at(/^G3 /);
        return edit(arc, lines[arc]!.replace(/^G3/, 'G2'));
      },
    ],
    ['another plane', 'plane', () => lines.map((line) => line.replace('G17 ', 'G18 '))],
    ['a depth with the wrong sign', 'edge', () => lines.map((line) => line.replace('Z-12.3', 'Z12.3'))],
    ['a hole not drilled through', 'hole', () => edit(plungeEnd, 'G1 Z-11.5')],
    [
      'a hole off its place',
      'hole',
      () => {
        const hole = indexOf(/\(drill plate 1\)/) + 1;
        return edit(
          hole,
          lines[hole]!.replace(/X([\d.]+)/, (_, x: string) => `X${Number(x) + 0.2}`),
        );
      },
    ],
    ['a cut into the spoil board', 'spoil-board', () => edit(z, lines[z]!.replace('Z-12.3', 'Z-14'))],
    [
      'all in one pass',
      'pass',
      () => {
        const first = lines.findIndex((line, i) => i > outlineStart && /Z-[1-4]\.\d+/.test(line));
        return edit(first, lines[first]!.replace(/Z-[\d.]+/, 'Z-12.3'));
      },
    ],
    [
      'an outline 0.1 mm off',
      'edge',
      () =>
        lines.map((line, i) =>
          i > outlineStart ? line.replace(/Y([\d.]+)/, (_, y: string) => `Y${Number(y) + 0.1}`) : line,
        ),
    ],
    ['a tool that the job does not have', 'tool', () => lines.map((line) => line.replace(/^T1 M6/, 'T77 M6'))],
    ['another tool’s length', 'tool', () => lines.map((line) => line.replace(/^G43 H1/, 'G43 H2'))],
    ['cutter compensation', 'modal', () => lines.map((line) => line.replace('G40', 'G41'))],
    ['units left open', 'modal', () => lines.map((line) => line.replace(' G21', ''))],
    ['relative distances', 'modal', () => lines.map((line) => line.replace('G90', 'G91'))],
    ['no feed', 'feed', () => lines.map((line) => line.replace(/ F[\d.]+/, ''))],
    ['a feed beyond the machine', 'feed', () => lines.map((line) => line.replace(/F\d{4}/, 'F9000'))],
    ['no end of the program', 'end', () => lines.filter((line) => line !== 'M2')],
    ['a bracket left open', 'syntax', () => edit(outlineStart, '(outline')],
    ['a letter twice', 'syntax', () => edit(deepLine, 'G1 X10 X20')],
    ['two motions on a line', 'syntax', () => edit(deepLine, 'G1 G0 X10')],
    ['a word without a number', 'syntax', () => edit(deepLine, 'G1 X')],
    [
      'a part shifted',
      'edge',
      () => lines.map((line) => line.replace(/X([\d.]+)/, (_, x: string) => `X${Number(x) + 0.06}`)),
    ],
    ['off the sheet', 'sheet', () => edit(deepLine, lines[deepLine]!.replace(/X[\d.]+/, 'X1'))],
  ];
  it.each(cases)('%s', (_, code, change) => {
    const changed = change();
    expect(changed.join('\n')).not.toBe(text);
    expect(found(changed)).toContain(code);
  });

  it('a tab missing', () => {
    const without = twoPlates({ data: routerData({ tabs: { ...routerData().tabs, height: 0.01 } }) });
    const codes = good.simulate(without.files).findings.map(({ code }) => code);
    expect(codes).toContain('tab');
    expect(codes).toContain('loose');
  });

  it('tabs too narrow, and no complaint of those in size', () => {
    const { tabs } = routerData();
    const narrow = twoPlates({ data: routerData({ tabs: { ...tabs, width: tabs.width - 1.5 } }) });
    const findings = good.simulate(narrow.files).findings.map(({ what }) => what);
    expect(findings.filter((what) => what.includes(`tabs ${tabs.width} mm wide`))).not.toEqual([]);
    expect(narrow.simulate(narrow.files).findings).toEqual([]);
  });

  it('one tab of several missing', () => {
    // the lifts of the last passes over one tab are brought down to full depth
    const tops = lines.flatMap((line, i) => (i > outlineStart && /Z-9$/.test(line) ? [i] : []));
    expect(tops.length).toBeGreaterThan(1);
    const [first] = tops;
    const [x, y] = placeBefore(first!);
    const changed = lines.map((line, i) => {
      const [ax, ay] = placeBefore(i);
      return i > outlineStart && Math.hypot(ax - x, ay - y) < 25 ? line.replace(/Z-9$/, 'Z-12.3') : line;
    });
    expect(changed.join('\n')).not.toBe(text);
    expect(found(changed)).toContain('tab');
    expect(found(changed)).not.toContain('loose');
  });

  it('a clamp in the way', () => {
    const clamp = [
      { x: 100, y: 10 },
      { x: 130, y: 10 },
      { x: 130, y: 18 },
      { x: 100, y: 18 },
    ];
    const clamped = twoPlates({ keepOuts: [clamp] });
    expect(clamped.files.size).toBe(0);
    expect(clamped.plan.problems.map(({ code }) => code)).toContain('router-clamp');
    // the file written without knowing of the clamp, held against limits that know it
    expect(clamped.simulate(good.files).findings.map(({ code }) => code)).toContain('clamp');
  });
});

/** X and Y that hold after a line. */
function placeBefore(at: number): [number, number] {
  const last = (axis: string): number => {
    for (let i = at; i >= 0; i -= 1) {
      const value = new RegExp(`(?:^| )${axis}(-?[\\d.]+)`).exec(lines[i]!);
      if (value && !lines[i]!.startsWith('(')) return Number(value[1]);
    }
    return 0;
  };
  return [last('X'), last('Y')];
}

describe('an outline without a tab', () => {
  it('is a part that comes loose', () => {
    const disc = shopPart('disc', regularPolygon({ x: 60, y: 60 }, 50, 8));
    const job = shop({
      parts: [disc],
      placed: [{ part: 'disc', copy: 1, x: 20, y: 20, rotationDeg: 0, mirrored: false }],
      width: 200,
      height: 200,
      thickness: 9,
    });
    expect(job.simulate().findings).toEqual([]);
    const all = new Map(
      [...job.files].map(([file, one]) => [file, one.replace(/ ?Z-6\.75/g, '').replace(/^$/gm, 'G1 Z-9.3')]),
    );
    expect(job.simulate(all).findings.map(({ code }) => code)).toContain('loose');
  });
});
