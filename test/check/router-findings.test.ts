/** What the proof reports of each fault of a router file, by name, at the least size that matters to a builder. */
import { describe, expect, it } from 'vitest';
import { simulate, type SimulationLimits } from '../../lib/check/router-simulation/index.js';
import { element } from '../../lib/geometry/index.js';
import { routerData, twoPlates } from '../helpers/router-sheets.js';
import { sheetFile, smallJob } from '../helpers/small-job.js';
import { verify } from '../../lib/check/index.js';

const data = routerData();
const good = twoPlates();
const placed = [
  { part: 'plate', copy: 1, x: 20, y: 20, rotationDeg: 0, mirrored: false },
  { part: 'plate', copy: 2, x: 452, y: 30, rotationDeg: 0, mirrored: true },
];
const [[name, text]] = [...good.files] as [[string, string]];

/** Names of what is found in a changed text, held against changed limits. */
function found(changed: string, more: (limits: SimulationLimits) => Partial<SimulationLimits> = () => ({})): string[] {
  const { plan, nominal } = good;
  const limits = { ...plan.limits, travelHeight: data.safeHeight };
  const sheet = { width: 480, height: 200, parts: nominal, placed };
  const { findings } = simulate([{ name, text: changed }], sheet, { ...limits, ...more(limits) });
  return [...new Set(findings.map(({ id }) => id))].filter((id) => id !== 'more-alike');
}

/** The text with the first place of `from` after a title changed. */
function after(title: string, from: string, to: string): string {
  const start = text.indexOf(title);
  const at = text.indexOf(from, start);
  expect(start).toBeGreaterThanOrEqual(0);
  expect(at).toBeGreaterThan(start);
  return text.slice(0, at) + to + text.slice(at + from.length);
}

/** The text with the last place of `from` changed. */
function atLast(from: string, to: string): string {
  const at = text.lastIndexOf(from);
  expect(at).toBeGreaterThan(0);
  return text.slice(0, at) + to + text.slice(at + from.length);
}

const bits = (cuttingDepth: number) => (limits: SimulationLimits) => ({
  tools: limits.tools.map((tool) => (tool.kind === 'mill' ? { ...tool, cuttingDepth } : tool)),
});

describe('a router file', () => {
  it('as written has none of the faults below', () => {
    expect(found(text)).toEqual([]);
  });

  it('cuts no deeper than the edges of the bit are long', () => {
    // a board of 12 mm, and 0.3 mm of the spoil board
    expect(found(text, bits(12.3))).toEqual([]);
    expect(found(text, bits(12.2))).toEqual(['cutting-depth']);
  });

  it('travels at its height, not a little below', () => {
    expect(found(after('(outline plate 1)', '\nG0 Z10\n', '\nG0 Z9.9\n'))).toEqual(['rapid-low']);
  });

  it('rises to that height from the unknown place of a tool change', () => {
    expect(found(after('T3 M6', '\nG0 Z10\n', '\nG0 Z9.9\n'))).toContain('first-moves');
  });

  it('stops the spindle before the hand is at the bit', () => {
    expect(found(text.replace('M5\nT3 M6', 'T3 M6'))).toEqual(['change-turning']);
  });

  it('ends with the tool up', () => {
    const low = found(atLast('\nG0 Z10\n', '\nG0 Z1\n'));
    expect(low).toContain('end-tool-down');
  });

  it('does not stop in mid-cut', () => {
    expect(found(after('(outline plate 1)', '\nG1 Z0', '\nG1 Z-1\nM0\nG1 Z0'))).toContain('word-tool-down');
  });

  it('opens a countersink as wide as the head: a bit of 90 degrees goes down half the width', () => {
    // a head of 8 mm asks for 4 mm, by the geometry of the right angle; 0.05 mm is the tolerance of edges
    const deep = (z: string) => found(after('(countersink plate 1)', 'G1 Z-4 ', `G1 Z${z} `));
    expect(deep('-3.97')).toEqual([]);
    expect(deep('-3.9')).toEqual(['countersink-wrong']);
    expect(deep('-4.1')).toEqual(['countersink-wrong']);
    expect(deep('-8')).toContain('countersink-wrong');
  });

  it('drills blind holes neither too deep nor too shallow', () => {
    for (const depth of ['-5.9', '-6.1'])
      expect(found(after('(drill plate 1)', 'Z-6 F', `Z${depth} F`))).toEqual(['hole-depth']);
  });

  it('drills the others right through', () => {
    expect(found(after('(drill plate 1)', 'G1 Z-12.3', 'G1 Z-11.9'))).toEqual(['hole-not-through']);
  });

  it('has tabs that a saw gets through: those of twice the width are told of', () => {
    const { tabs } = data;
    const wide = twoPlates({ data: routerData({ tabs: { ...tabs, width: tabs.width + 14 } }) });
    expect(wide.simulate().findings).toEqual([]);
    const ids = good.simulate(wide.files).findings.map(({ id }) => id);
    expect([...new Set(ids)]).toContain('tab-wide');
  });

  it('leaves the onion skin that holds a part', () => {
    const skinned = twoPlates({ data: routerData({ tabs: { ...data.tabs, onionSkinBelow: 500 } }) });
    expect(skinned.simulate().findings).toEqual([]);
    const skin = 12 - data.tabs.onionSkin;
    const through = new Map([...skinned.files].map(([file, one]) => [file, one.replaceAll(`Z-${skin}\n`, 'Z-12.3\n')]));
    expect(through).not.toEqual(skinned.files);
    expect(skinned.simulate(through).findings.map(({ id }) => id)).toContain('onion-skin-cut');
  });
});

describe('what is not cut through', () => {
  const job = smallJob();
  const path = `${sheetFile}.ngc`;
  const written = job.get(path) ?? '';
  /** Messages about rib 1 of the small job, whose sheet is 6 mm thick, with stretches of its tool path changed. */
  const faults = (...changes: readonly (readonly [string, string])[]): string => {
    const changed = changes.reduce((now, [from, to]) => {
      expect(now).toContain(from);
      return now.replace(from, to);
    }, written);
    const proof = verify(new Map([...job, [path, changed]]));
    return [...proof.faults, ...proof.sheets.flatMap((sheet) => sheet.faults)].map(({ message }) => message).join('\n');
  };

  it('is found at an opening that is milled 0.1 mm short', () => {
    const short = faults(['Z-6.1906', 'Z-5.9'], ['Z-6.3 I-4.7', 'Z-5.9 I-4.7']);
    expect(short).toContain('the opening of rib 1 is not cut through');
  });

  it('is found at an opening that is milled 0.01 mm short', () => {
    const short = faults(['Z-6.1906', 'Z-5.99'], ['Z-6.3 I-4.7', 'Z-5.99 I-4.7']);
    expect(short).toContain('the opening of rib 1 is not cut through');
  });

  it('is found at a stretch of the outline where no tab is, although roughing went through', () => {
    const finish = 'X16\nG3 X13 Y56 I0 J-3\nG1 Y16\n';
    const short = faults([finish, finish.replace('G1 Y16', 'G1 Y50\nZ-5.9\nY32\nZ-6.3\nY16')]);
    expect(short).toContain('the outline of rib 1 is not cut through');
  });

  it('is found between the tabs of an outline', () => {
    const short = faults(['Y51.9968 Z-6.3', 'Y51.9968 Z-5.9'], ['Y52.862 Z-6.3', 'Y52.862 Z-5.9']);
    expect(short).toContain('the outline of rib 1 is not cut through');
  });

  it('is found over a tab that stands where the record has none', () => {
    const { tabs } = good.plan.limits;
    expect(found(text)).toEqual([]);
    for (const gone of tabs.keys()) {
      const others = (limits: SimulationLimits) => ({ tabs: limits.tabs.filter((_, i) => i !== gone) });
      expect(found(text, others)).toEqual(['edge-uncut']);
    }
    expect(element(tabs, 0)).toHaveLength(4);
  });
});
