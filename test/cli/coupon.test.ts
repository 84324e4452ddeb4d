import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { inProcess } from '../helpers/command.js';
import { fixtureText } from '../helpers/fixtures.js';

let folder: string;
let design: string;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'coupon-'));
  design = join(folder, 'dish.yaml');
  writeFileSync(design, `${fixtureText('table-top')}machine: shed.yaml\n`);
  writeFileSync(join(folder, 'shed.yaml'), '# the laser in the shed\nkind: laser\n');
  const { code, err } = await inProcess(folder, [
    'coupon',
    design,
    '-o',
    join(folder, 'c'),
    '--material',
    'ply5',
    '--seconds',
    '0',
  ]);
  expect([code, err]).toEqual([0, expect.stringContaining('read back and proven')]);
});
afterAll(() => {
  rmSync(folder, { recursive: true });
});

/** Every reading at its nominal value, those that the beam makes smaller or larger by 0.05 mm. */
function filled(): string {
  return readFileSync(join(folder, 'c', 'measured-ply5.yaml'), 'utf8')
    .replace('units:', 'units: mm')
    .replace('date:', 'date: 2026-05-31')
    .replace('step:', 'step: 0.01')
    .replace('thickness: []', 'thickness: [5, 4.98, 5.01]')
    .replace('fit:', 'fit: 0.10')
    .replace('print:', 'print: none')
    .replace(/^ {2}(\S+): +# ([\d.]+): (outside|inside)/gm, (_, id: string, nominal: string, jaws: string) => {
      const off = id.startsWith('diagonal') ? -0.07 : jaws === 'outside' ? -0.05 : 0.05;
      return `  ${id}: ${(Number(nominal) + off).toFixed(2)} # ${jaws}`;
    });
}

describe('dishwright coupon', () => {
  it('takes readings into the machine file, whose own lines stay', async () => {
    const readings = join(folder, 'c', 'measured-ply5.yaml');
    const empty = readFileSync(readings, 'utf8');
    writeFileSync(readings, filled());
    const { code, out, err } = await inProcess(folder, ['coupon', design, '--measured', readings]);
    expect([code, err]).toEqual([0, expect.stringContaining('shed.yaml, under calibration')]);
    expect(out).toMatch(/width of the cut +0\.2[45]\d mm/);
    const machine = readFileSync(join(folder, 'shed.yaml'), 'utf8');
    expect(machine.startsWith('# the laser in the shed\nkind: laser\ncalibration:')).toBe(true);
    // the folder with its readings filled in is still the one that was written
    const verified = await inProcess(folder, ['verify', join(folder, 'c')]);
    expect(verified.code).toBe(0);
    writeFileSync(readings, empty);
  });

  it('takes what the printer makes of 100 mm into the design, on top of what it made before', async () => {
    const readings = join(folder, 'c', 'measured-ply5.yaml');
    const [empty, before] = [readFileSync(readings, 'utf8'), readFileSync(design, 'utf8')];
    const take = async (line: string) => {
      writeFileSync(readings, empty);
      writeFileSync(readings, filled().replace('print: none', `print: ${line}`));
      return inProcess(folder, ['coupon', design, '--measured', readings]);
    };
    const first = await take('99.4');
    expect([first.code, first.err]).toEqual([0, expect.stringContaining('the printer prints 100 mm as 99.4 mm')]);
    expect(readFileSync(design, 'utf8')).toBe(`${before}print: { measured: 99.4 mm }\n`);
    // the next print is drawn for 99.4 mm, and its line is still 0.2 mm short: 99.8 % of 99.4
    await take('99.8');
    expect(readFileSync(design, 'utf8')).toBe(`${before}print: { measured: 99.201 mm }\n`);
    // what the design cannot take leaves the machine's file as it was too
    const shed = readFileSync(join(folder, 'shed.yaml'), 'utf8');
    writeFileSync(join(folder, 'shed.yaml'), 'kind: laser\n');
    writeFileSync(design, `${before}\nprint: { measured: 91 mm }\n`);
    const twice = await take('91');
    expect([twice.code, twice.err]).toEqual([2, expect.stringContaining('would print 100 mm as 82.81 mm')]);
    expect(readFileSync(join(folder, 'shed.yaml'), 'utf8')).toBe('kind: laser\n');
    writeFileSync(join(folder, 'shed.yaml'), shed);
    writeFileSync(design, `${before}print: { measured: 99.201 mm }\n`);
    const fitted = await take('71');
    expect([fitted.code, fitted.err]).toEqual([expect.any(Number), expect.stringContaining('print is 71 mm')]);
    expect(fitted.code).not.toBe(0);
    expect(readFileSync(design, 'utf8')).toContain('99.201');
    writeFileSync(design, before);
    writeFileSync(readings, empty);
  });

  it('takes readings in inches, by the command of the measuring sheet in its folder', async () => {
    const place = join(folder, 'c');
    const readings = join(place, 'measured-ply5.yaml');
    const empty = readFileSync(readings, 'utf8');
    const inch = (mm: string): string => (Number(mm) / 25.4).toFixed(5);
    writeFileSync(
      readings,
      filled()
        .replace('units: mm', 'units: in')
        .replace('step: 0.01', 'step: 0.0005')
        .replace(
          /thickness: \[([^\]]*)\]/,
          (_, list: string) => `thickness: [${list.split(', ').map(inch).join(', ')}]`,
        )
        .replace(
          /^( {2}\S+: )([\d.]+)( # (?:outside|inside))/gm,
          (_, id: string, mm: string, end: string) => `${id}${inch(mm)}${end}`,
        ),
    );
    const page = readFileSync(join(place, 'measuring-ply5.html'), 'utf8').replaceAll('&quot;', '"');
    const [, ...words] = /dishwright coupon [^<]*/.exec(page)?.[0].trim().split(' ') ?? [];
    expect(words).toEqual(['coupon', '../dish.yaml', '--measured', 'measured-ply5.yaml']);
    const { code, out } = await inProcess(place, words);
    expect(code).toBe(0);
    expect(out).toMatch(/width of the cut +0\.2[45]\d mm/);
    writeFileSync(readings, empty);
  });

  it('writes nothing for readings that are left blank, and names each with its line', async () => {
    const before = readFileSync(join(folder, 'shed.yaml'), 'utf8');
    const blank = join(folder, 'blank.yaml');
    cpSync(join(folder, 'c', 'measured-ply5.yaml'), blank);
    const { code, err } = await inProcess(folder, ['coupon', design, '--measured', blank]);
    expect(code).toBe(2);
    expect(err).toMatch(/blank\.yaml:3:1: error: units is blank/);
    expect(err).toMatch(/blank\.yaml:9:3: error: bar-x-low is blank.*\n.*about 100 mm/);
    expect(readFileSync(join(folder, 'shed.yaml'), 'utf8')).toBe(before);
  });

  it('asks for one of a folder and a file', async () => {
    expect((await inProcess(folder, ['coupon', design])).code).toBe(2);
    expect((await inProcess(folder, ['coupon', design, '-o', 'x', '--measured', 'y'])).code).toBe(2);
    const unknown = await inProcess(folder, ['coupon', design, '-o', join(folder, 'u'), '--material', 'oak']);
    expect(unknown.err).toContain('known: ply5, card1, film');
  });
});
