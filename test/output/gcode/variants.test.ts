/**
 * Router files for every kind of machine, by an independent parser and by the words of NISTIR 6556 (Kramer, Proctor and
 * Messina, The NIST RS274NGC Interpreter - Version 3, 2000), cited from memory: table 5 has G20 inches, G61 exact path,
 * G61.1 exact stop and G64 continuous mode; table 7 has M0 program stop, M7 mist, M8 flood, M9 both off and M30.
 */
import Toolpath from 'gcode-toolpath';
import { describe, expect, it } from 'vitest';
import type { RouterMachine } from '../../../lib/machining/index.js';
import { machineData, routerData, type Shop, twoPlates } from '../../helpers/router-sheets.js';

const jobFor = (changes: Partial<RouterMachine>): Shop =>
  twoPlates({ data: routerData({ machine: machineData(changes) }) });
const textOf = (changes: Partial<RouterMachine>): string => [...jobFor(changes).files.values()].join('');
/** Lines without comments and the marks of the ends. */
const codeOf = (text: string): string[] => text.split('\n').filter((line) => line !== '' && !/^[(%]/.test(line));

/** Every place that the parser sees the tool go to, mm. */
function placesIn(text: string): { x: number; y: number; z: number }[] {
  const seen: { x: number; y: number; z: number }[] = [];
  const take = (_: unknown, __: unknown, { x, y, z }: { x: number; y: number; z: number }) => seen.push({ x, y, z });
  new Toolpath({ addLine: take, addArcCurve: take }).loadFromStringSync(text.replace(/^%$/gm, ''));
  return seen;
}

describe('an independent parser (gcode-toolpath) reads a file', () => {
  it.each([
    ['in inches', { programUnits: 'in' }],
    ['in short lines', { arcs: 'lines' }],
    ['in inches and short lines', { programUnits: 'in', arcs: 'lines', decimals: 6 }],
    ['with three decimals and numbered lines', { decimals: 3, lineNumbers: 5 }],
    ['for tools changed by hand', { toolChange: 'by-hand', changeAt: { x: 90, y: 10 } }],
    [
      'with rounded corners, air, a parking place and M30',
      { pathMode: 'continuous', coolant: 'mist', parking: { x: 5, y: 150 }, end: 'M30' },
    ],
    [
      'with exact stops, a coolant and no tool lengths',
      { pathMode: 'exact-stop', coolant: 'flood', lengthOffsets: false },
    ],
    ['for one tool a file', { toolChange: 'none', commentCharacters: 'capitals' }],
  ] satisfies readonly (readonly [string, Partial<RouterMachine>])[])('%s to where the plan goes', (_, changes) => {
    const { plan, files } = jobFor(changes);
    const seen = placesIn([...files.values()].join(''));
    // half the last decimal
    const near = 'decimals' in changes && changes.decimals === 3 ? 6e-4 : 2e-4;
    let at = 0;
    for (const { to } of plan.toolpath.runs.flatMap(({ cuts }) => cuts.flatMap(({ moves }) => moves))) {
      const found = seen.findIndex(
        (one, i) => i + 1 >= at && Math.hypot(one.x - to.x, one.y - to.y, one.z - to.z) < 2 * near,
      );
      expect(found).toBeGreaterThanOrEqual(0);
      // an arc in short lines is at most a few hundred of them
      expect(found - at).toBeLessThan(400);
      at = Math.max(at, found);
    }
    expect(at).toBeGreaterThan(200);
  });
});

describe('short lines', () => {
  it('stand off their arcs by no more than is set, and hold none', () => {
    const coarse = codeOf(textOf({ arcs: 'lines', lineTolerance: 0.015 }));
    const fine = codeOf(textOf({ arcs: 'lines', lineTolerance: 0.00375 }));
    expect([...coarse, ...fine].filter((line) => /\bG[23]\b|[IJ]/.test(line))).toEqual([]);
    // a chord's height falls with the square of its length: a quarter of it takes twice as many
    expect(fine.length).toBeGreaterThan(1.4 * coarse.length);
    expect(fine.length).toBeLessThan(2.1 * coarse.length);
  });
});

describe('the words of a file', () => {
  it('hold no tool change where the machine has none, and one tool a file', () => {
    const { files, plan } = jobFor({ toolChange: 'none' });
    expect(files.size).toBe(plan.toolpath.runs.length);
    for (const text of files.values()) {
      expect(codeOf(text).join('\n')).not.toMatch(/M0?6|T\d|G43|G49|M0\b/);
      expect(text.match(/^\(tool \d+:/gm)).toHaveLength(1);
    }
  });

  it('pause with the spindle stopped, high up at the place of the change, with the cautions of it', () => {
    const text = textOf({ toolChange: 'by-hand', changeAt: { x: 90, y: 10 }, changeHeight: 75 });
    const lines = text.split('\n');
    const pauses = lines.flatMap((line, i) => (line === 'M0' ? [i] : []));
    expect(pauses).toHaveLength(2);
    for (const pause of pauses) {
      const before = codeOf(lines.slice(0, pause).join('\n'));
      expect(before.slice(-3)).toEqual(['M5', 'G0 Z75', 'X90 Y10']);
      const after = codeOf(lines.slice(pause + 1).join('\n'));
      expect(after.slice(0, 3).map((line) => line.replace(/\d{4,}/, 'n'))).toEqual(['Sn M3', 'G4 P3', 'G0 Z10']);
    }
    const said = text.replace(/\)\n\(/g, ' ');
    for (const word of ['cut its power', 'take the key out', 'set Z to zero']) expect(said).toContain(word);
    expect(codeOf(text).join('\n')).not.toMatch(/M6|T\d|G43/);
  });

  it.each([
    [{ pathMode: 'exact' }, 'G61'],
    [{ pathMode: 'exact-stop' }, 'G61.1'],
    [{ pathMode: 'continuous', pathTolerance: 0.03 }, 'G64 P0.03'],
  ] satisfies readonly (readonly [Partial<RouterMachine>, string])[])(
    'state the path mode %o as %s',
    (changes, word) => {
      expect(codeOf(textOf(changes))[1]).toBe(word);
    },
  );

  it('switch the air on before a cut and off at the end, and park', () => {
    const code = codeOf(textOf({ coolant: 'mist', parking: { x: 5, y: 150 }, end: 'M30' }));
    const first = code.findIndex((line) => line.startsWith('G1 '));
    expect(code.lastIndexOf('M7', first)).toBeGreaterThan(0);
    expect(code.slice(-5)).toEqual(['M5', 'M9', 'G0 X5 Y150', 'G49', 'M30']);
  });

  it('keep comments and line numbers within what the controller reads', () => {
    const text = textOf({ commentLength: 48, commentCharacters: 'capitals', lineNumbers: 1000 });
    for (const line of text.split('\n').filter((one) => one.startsWith('(')))
      expect(line).toMatch(/^\([A-Z0-9 .,:;=+/-]{0,48}\)$/);
    for (const line of codeOf(text)) expect(line).toMatch(/^N[1-9]\d{3,4} /);
  });
});
