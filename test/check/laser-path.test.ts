/**
 * Tool paths of a laser: what an independent parser (gcode-toolpath) reads of them, and faults of the lines themselves.
 * The words are those of NISTIR 6556 (Kramer, Proctor and Messina 2000), tables 5 and 7, from memory.
 */
import Toolpath from 'gcode-toolpath';
import { describe, expect, it } from 'vitest';
import { proveFolder } from '../../lib/check/index.js';
import { laserJob, laserKeys, sheetFile } from '../helpers/small-job.js';

const ngc = `${sheetFile}.ngc`;
type Changes = Parameters<typeof laserJob>[0];
const textOf = (changes: Changes = {}): string => laserJob(changes).get(ngc)!;
const codeOf = (text: string): string[] =>
  text
    .split('\n')
    .filter((line) => line !== '' && !/^[(%]/.test(line))
    .map((line) => line.replace(/^N\d+ /, ''));

const variants = [
  ['as it is by default', {}],
  ['in inches', { programUnits: 'in' }],
  ['in short lines', { arcs: 'lines' }],
  ['with M4, air and a place to park', { beam: 'M4', coolant: 'mist', parking: { x: 5, y: 60 }, end: 'M30' }],
  ['in capitals with line numbers', { commentCharacters: 'capitals', lineNumbers: 10, decimals: 3 }],
  ['with rounded corners', { pathMode: 'continuous', pathTolerance: 0.03 }],
  ['in another order', { order: ['opening', 'scribe', 'drill', 'outline'] }],
] as unknown as readonly (readonly [string, Changes])[];

describe.each(variants)('a file %s', (_, changes) => {
  const files = laserJob(changes);

  it('proves right', () => {
    expect(proveFolder(files).faults.map(({ message }) => message)).toEqual([]);
  });

  it('is read by an independent parser: one rapid to each line that the beam follows', () => {
    const seen: string[] = [];
    const take = ({ motion }: { readonly motion: string }): void => {
      seen.push(motion);
    };
    new Toolpath({ addLine: take, addArcCurve: take }).loadFromStringSync(files.get(ngc)!.replace(/^%$/gm, ''));
    const code = codeOf(files.get(ngc)!);
    const cuts = code.filter((line) => /S[\d.]+ M[34]/.test(line)).length;
    expect(cuts).toBeGreaterThan(10);
    const parked = changes?.parking === undefined ? 0 : 1;
    expect(seen.filter((motion) => motion === 'G0').length).toBe(cuts + parked);
    expect(seen.some((motion) => motion === 'G2' || motion === 'G3')).toBe(changes?.arcs !== 'lines');
  });

  it('uses only words of the standard, one of a modal group on a line, and switches the beam off before each rapid', () => {
    const known = /^(?:G(?:0|1|2|3|17|20|21|40|54|61|61\.1|64|80|90|94)|M(?:2|3|4|5|7|8|9|30)|[FIJPSXY]-?[\d.]+)$/;
    let on = false;
    for (const line of codeOf(files.get(ngc)!)) {
      const words = line.split(' ');
      for (const word of words) expect(word).toMatch(known);
      if (/\bM[34]\b/.test(line)) on = true;
      if (/\bM5\b/.test(line)) on = false;
      if (/\bG0\b/.test(line)) expect(on, line).toBe(false);
    }
    expect(on).toBe(false);
  });
});

describe('the power', () => {
  it('is that of the material: more to cut, less to mark, none above full', () => {
    const { materials, fullPower } = laserKeys;
    const powers = new Set(codeOf(textOf()).flatMap((line) => /S([\d.]+) M3/.exec(line)?.[1] ?? []));
    expect([...powers].map(Number).sort((a, b) => a - b)).toEqual([
      (materials.ply.markPower / 100) * fullPower,
      (materials.ply.cutPower / 100) * fullPower,
    ]);
  });
});

describe('the head', () => {
  it('carries the cautions of a laser before the first word', () => {
    const text = textOf();
    const head = text.slice(0, text.indexOf('\nG17')).replace(/\)\n\(/g, ' ');
    for (const word of ['wavelength', 'PVC', 'extraction', 'Never leave it alone', 'come first', 'beam off'])
      expect(head).toContain(word);
  });
});

describe('a fault of the lines', () => {
  const ids = (change: (text: string) => string): string[] => {
    const files = laserJob();
    const before = files.get(ngc)!;
    const after = change(before);
    expect(after).not.toBe(before);
    return proveFolder(files.set(ngc, after))
      .faults.filter(({ file }) => file === ngc)
      .map(({ id }) => id);
  };
  const cutsIn = (text: string): string[] => text.split(/(?=\n\((?:drill-|scribe |opening |outline ))/);

  it.each([
    ['a cut left out', (text: string) => text.replace(/\n\(opening rib 1\)[^]*?M5/, ''), 'path-missing'],
    [
      'a contour run twice',
      (text: string) => text.replace(/\n\(outline rib 1\)[^]*?M5/, (cut) => `${cut}${cut}`),
      'line-twice',
    ],
    [
      'a part cut free before its opening',
      (text: string) => {
        const cuts = cutsIn(text);
        const at = cuts.findIndex((cut) => cut.startsWith('\n(opening rib 2)'));
        const [opening = ''] = cuts.splice(at, 1);
        // the last piece holds the end of the program
        const end = cuts.pop()!;
        const cut = /^[^]*?M5/.exec(end)![0];
        return [...cuts, cut, opening, end.slice(cut.length)].join('');
      },
      'order-within',
    ],
    [
      'a line that is off by a twentieth of a millimetre',
      (text: string) =>
        text.replace(/\n\(outline rib 1\)[^]*?M5/, (cut) =>
          cut.replace(/X(-?[\d.]+)/g, (_, x: string) => `X${(Number(x) + 0.05).toFixed(4)}`),
        ),
      'cut-into',
    ],
    ['a letter left out', (text: string) => text.replace(/\n\(scribe rib 1\)[^]*?M5/, ''), 'mark-missing'],
  ])('is found: %s', (_, change, id) => {
    expect(ids(change)).toContain(id);
  });
});
