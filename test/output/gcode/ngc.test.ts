/**
 * The text of router files against the grammar of RS-274/NGC and against an independent parser. The grammar is that of
 * NISTIR 6556 (Kramer, Proctor and Messina, The NIST RS274NGC Interpreter - Version 3, 2000), section 3.3 and its
 * tables of letters and modal groups, written down here from memory.
 */
import Toolpath from 'gcode-toolpath';
import { describe, expect, it } from 'vitest';
import { writeNgc } from '../../../lib/output/gcode/index.js';
import { machineData, routerData, twoPlates } from '../../helpers/router-sheets.js';

const { plan, files } = twoPlates();
const text = [...files.values()][0]!;
const lines = text.trimEnd().split('\n');

const number = '[+-]?(?:\\d+\\.?\\d*|\\.\\d+)';
const comment = '\\([\\x20-\\x27\\x2a-\\x7e]*\\)';
const line = new RegExp(`^(?:N\\d{1,5})?(?:\\s*(?:${comment}|[ABCDFGHIJKLMPQRSTXYZ]${number}))*$`);
const modalGroups = [
  ['G0', 'G1', 'G2', 'G3', 'G80'],
  ['G17', 'G18', 'G19'],
  ['G90', 'G91'],
  ['G93', 'G94'],
  ['G20', 'G21'],
  ['G40', 'G41', 'G42'],
  ['G43', 'G49'],
  ['G54'],
  ['G61', 'G61.1', 'G64'],
  ['G4'],
];
const mWords = ['M2', 'M3', 'M5', 'M6'];

describe('every line of a router file', () => {
  it('follows the grammar, within 256 characters of ASCII', () => {
    expect(lines[0]).toBe('%');
    expect(lines.at(-1)).toBe('%');
    for (const one of lines.slice(1, -1)) {
      expect(one).toMatch(line);
      expect(one.length).toBeLessThanOrEqual(256);
    }
  });

  it('uses only known words, one of a modal group and each letter but G and M once', () => {
    for (const one of lines.slice(1, -1)) {
      const words = one
        .replace(/\([^)]*\)/g, '')
        .split(/\s+/)
        .filter((word) => word !== '');
      const g = words.filter((word) => word.startsWith('G'));
      for (const word of g) expect(modalGroups.flat()).toContain(word);
      for (const group of modalGroups) expect(g.filter((word) => group.includes(word)).length).toBeLessThan(2);
      for (const word of words.filter((one) => one.startsWith('M'))) expect(mWords).toContain(word);
      const letters = words.map((word) => word[0]).filter((letter) => letter !== 'G' && letter !== 'M');
      expect(new Set(letters).size).toBe(letters.length);
    }
  });

  it('stays plain whatever the job is called', () => {
    const header = { job: 'Großer Spiegel (2) – “Süd” ☀', material: 'Bouleau {12}', notes: ['x'.repeat(600)] };
    const [strange] = [...writeNgc(plan.toolpath, header).values()];
    for (const one of strange!.trimEnd().split('\n').slice(1, -1)) {
      expect(one).toMatch(line);
      expect(one.length).toBeLessThanOrEqual(256);
    }
  });

  it('has no cutter compensation, canned cycle or offset of the zero point', () => {
    expect(text).not.toMatch(/\bG(?:41|42|8[1-9]|92|10|28|30)\b/);
  });

  it('keeps arcs to a half circle, their ends within 0.002 mm of one radius', () => {
    let at = { x: 0, y: 0 };
    let motion = '';
    for (const one of lines.filter((each) => !each.startsWith('('))) {
      motion = /\bG[0-3]\b/.exec(one)?.[0] ?? motion;
      const value = (letter: string, or: number): number =>
        Number(new RegExp(`${letter}(${number})`).exec(one)?.[1] ?? or);
      const to = { x: value('X', at.x), y: value('Y', at.y) };
      if (/I/.test(one)) {
        expect(['G2', 'G3']).toContain(motion);
        const [i, j] = [value('I', 0), value('J', 0)];
        const radius = Math.hypot(i, j);
        expect(Math.abs(Math.hypot(to.x - at.x - i, to.y - at.y - j) - radius)).toBeLessThan(0.002);
        expect(Math.hypot(to.x - at.x, to.y - at.y)).toBeGreaterThan(0);
      }
      at = to;
    }
  });
});

describe('the head of a file', () => {
  it('carries the cautions before the first move', () => {
    const head = text.slice(0, text.indexOf('\nG17')).replace(/\)\n\(/g, ' ');
    for (const word of [
      'Dry run first',
      'Hold the sheet down',
      'eye and ear protection',
      'dust',
      'fire',
      'come first',
      'does not avoid',
    ])
      expect(head).toContain(word);
  });
});

describe('files', () => {
  it('are one a sheet, or one a tool in the order of running', () => {
    expect([...files.keys()]).toEqual(['ply-1.ngc']);
    const each = twoPlates({ data: routerData({ machine: machineData({ toolChange: 'none' }) }) }).files;
    expect([...each.keys()]).toEqual(['ply-1-1-t2.ngc', 'ply-1-2-t3.ngc', 'ply-1-3-t1.ngc']);
    for (const one of each.values()) expect(one.match(/M6|T\d|G43|G49/g)).toBeNull();
  });

  it('are the same bytes for the same job', () => {
    expect([...twoPlates().files]).toEqual([...files]);
  });
});

describe('an independent parser (gcode-toolpath)', () => {
  interface Seen {
    readonly motion: string;
    readonly x: number;
    readonly y: number;
    readonly z: number;
    readonly centre?: { readonly x: number; readonly y: number };
  }
  const seen: Seen[] = [];
  const place = (v: { x: number; y: number; z: number }) => ({ x: v.x, y: v.y, z: v.z });
  new Toolpath({
    addLine: (modal, _, to) => seen.push({ motion: modal.motion, ...place(to) }),
    addArcCurve: (modal, _, to, centre) =>
      seen.push({ motion: modal.motion, ...place(to), centre: { x: centre.x, y: centre.y } }),
  }).loadFromStringSync(text.replace(/^%$/gm, ''));

  it('reads every move of the plan to where it goes, arcs with their centres', () => {
    const moves = plan.toolpath.runs.flatMap(({ cuts }) => cuts.flatMap((cut) => cut.moves));
    const near = (a: number, b: number) => Math.abs(a - b) < 2e-4;
    let next = 0;
    for (const move of moves) {
      // a move of no length in print is left out of the file
      const found = seen.findIndex(
        (one, i) =>
          i >= next && i < next + 4 && near(one.x, move.to.x) && near(one.y, move.to.y) && near(one.z, move.to.z),
      );
      if (found < 0) {
        const last = seen[next - 1]!;
        expect(Math.hypot(last.x - move.to.x, last.y - move.to.y, last.z - move.to.z)).toBeLessThan(3e-4);
        continue;
      }
      const one = seen[found]!;
      if (move.kind === 'arc' && one.centre) {
        expect(one.motion).toBe(move.clockwise ? 'G2' : 'G3');
        expect(Math.hypot(one.centre.x - move.centre.x, one.centre.y - move.centre.y)).toBeLessThan(2e-4);
      } else expect(one.motion).toBe(move.kind === 'rapid' ? 'G0' : 'G1');
      next = found + 1;
    }
    expect(next).toBe(seen.length);
    expect(next).toBeGreaterThan(200);
  });
});
