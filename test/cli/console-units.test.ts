/** Every command of a design speaks in the units of that design, and in no others. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { logTemplate } from '../../lib/index.js';
import { inProcess, workshop } from '../helpers/command.js';
import { fixtureText } from '../helpers/fixtures.js';
import { byDay } from '../helpers/seeds.js';

/** A number with a unit of a workshop. What is measured in none (W, W/m², °C, mrad) is the same in both. */
const spoken = {
  metric: /\d ?(?:mm|cm|kg|m²|m\/s|m)(?![\w²/])/,
  imperial: /\d ?(?:in(?! [\d.]+ h)|ft|lb|sq ft|mph)(?!\w)|\d"/,
} as const;

const router =
  'process: { kind: router, toolDiameter: 1/4 in, drillBits: [5/64 in, 7/64 in, 9/64 in, 1/8 in, 3/16 in, 3 mm], web: 1/4 in }';
const inch = fixtureText('hand-cut-inch').replace(/^process:.*$/m, router);
const metric = `${fixtureText('classroom')}machine:\n  kind: laser\n`;
const made = workshop({ 'inch.yaml': inch, 'metric.yaml': metric });
const { folder } = made;
afterAll(() => {
  made.clear();
});

/** The fixture's first material that a coupon is cut from, and a size of sheets to compare with. */
const jobs = {
  inch: { units: 'imperial', others: 'metric', material: 'ply', size: '5 ft x 5 ft' },
  metric: { units: 'metric', others: 'imperial', material: 'ply3', size: '900 mm x 600 mm' },
} as const;

/** Readings as the callipers of the bench have them: a little off the nominal value that the file states. */
function fillIn(file: string, unit: string): void {
  const inches = unit === 'in' ? 25.4 : 1;
  const text = readFileSync(file, 'utf8');
  const thickness = /^ {2}thickness: ([\d.]+)$/m.exec(text)?.[1] ?? '';
  const shown = (mm: number) => (mm / inches).toFixed(unit === 'in' ? 4 : 2);
  writeFileSync(
    file,
    text
      .replace('units:', `units: ${unit}`)
      .replace('date:', 'date: 2026-05-31')
      .replace('step:', `step: ${unit === 'in' ? 0.0005 : 0.01}`)
      .replace(
        'thickness: []',
        `thickness: [${Array(3)
          .fill(shown(Number(thickness)))
          .join(', ')}]`,
      )
      .replace('fit:', 'fit: none')
      .replace('tabs:', 'tabs: held')
      .replace('print:', 'print: none')
      .replace(/^ {2}(\S+): +# ([\d.]+): (.*)$/gm, (_, id: string, nominal: string, jaws: string) => {
        const off = id.startsWith('diagonal') ? -0.07 : jaws.startsWith('outside') ? -0.05 : 0.05;
        return `  ${id}: ${shown(Number(nominal) + off)} # ${jaws}`;
      }),
  );
}

/** A log of water that gains half a degree a minute in the sun. */
function log(): string {
  const rows = Array.from({ length: 20 }, (_, i) => {
    const minute = 5 * i;
    const time = `${10 + Math.floor(minute / 60)}:${String(minute % 60).padStart(2, '0')}`;
    return `${time},${(30 + 0.5 * minute).toFixed(1)},24,800,0.5,no`;
  });
  return [...logTemplate.trim().split('\n'), ...rows, ''].join('\n');
}

describe.each(['inch', 'metric'] as const)('the commands, the design in %s units', (name) => {
  const { units, others, material, size } = jobs[name];
  const design = `${name}.yaml`;
  const own = spoken[units];
  const said = async (...args: string[]): Promise<string[]> => {
    const { code, out, err } = await inProcess(folder, args);
    expect([args[0], code, code === 0 ? '' : err]).toEqual([args[0], 0, '']);
    const lines = `${out}\n${err}`.split('\n');
    expect(
      lines.filter((line) => spoken[others].test(line)),
      args.join(' '),
    ).toEqual([]);
    return lines;
  };
  const ofOwn = (lines: readonly string[]): number => lines.filter((line) => own.test(line)).length;

  it('check and what the sheets come to', async () => {
    expect(ofOwn(await said('check', design, '--time'))).toBeGreaterThan(10);
    expect(ofOwn(await said('stock', design, '--try', size, '--seconds', '0'))).toBeGreaterThan(0);
  });

  // three traces with all their rays
  it.runIf(byDay(false, true))('the light, and a test of it', async () => {
    expect(ofOwn(await said('optics', design))).toBeGreaterThan(5);
    writeFileSync(join(folder, 'log.csv'), log());
    expect(
      ofOwn(await said('compare', design, 'log.csv', '--spot', name === 'inch' ? '50=4 in' : '50=40 mm')),
    ).toBeGreaterThan(0);
  });

  it('the template', async () => {
    await said('template', design, '-o', `${name}-template`);
  });

  it('the coupon, its proof and its readings', async () => {
    const out = `${name}-coupon`;
    expect(ofOwn(await said('coupon', design, '-o', out, '--material', material, '--seconds', '0'))).toBeGreaterThan(0);
    expect(ofOwn(await said('verify', out))).toBeGreaterThan(0);
    fillIn(join(folder, out, `measured-${material}.yaml`), name === 'inch' ? 'in' : 'mm');
    const answer = await said('coupon', design, '--measured', join(out, `measured-${material}.yaml`));
    expect(answer.find((line) => line.startsWith('width of the cut'))).toMatch(
      name === 'inch' ? /0\.2\d{3} in +± 0\.00\d\d in/ : /0\.\d{3} mm +± 0\.0\d\d mm/,
    );
  });
});
