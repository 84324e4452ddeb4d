/** What a job comes to, by hand, and the book opened with what the desktop has. */
import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import process from 'node:process';
import { afterAll, afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openFile } from '../../cli/open.js';
import { durationText, totalsLines } from '../../cli/totals-lines.js';
import { prepare, quickTotals, type Totals } from '../../lib/index.js';
import { smallDish } from '../faults/small-dish.js';
import { inProcess, workshop } from '../helpers/command.js';
import { designOf } from '../helpers/fixtures.js';

const priced = smallDish('Small')
  .replace('{ material: ply, size: 900 x 600 }', '{ material: ply, size: 900 x 600, price: 11 }')
  .replace('{ kind: plywood, thickness: 6 }', '{ kind: plywood, thickness: 6, densityKgPerM3: 600 }')
  .replace('{ kind: card, thickness: 0.5 }', '{ kind: card, thickness: 0.5, densityKgPerM3: 800 }');
const place = workshop({ 'small.yaml': priced });
afterAll(() => place.clear());

async function totalsOf(text: string): Promise<Totals & { readonly minutes: number | null }> {
  const totals = await quickTotals(prepare(designOf(text)), false);
  if (totals === null) throw new Error('the quick nest leaves a part out');
  return totals;
}

describe('the totals of a quick nest', () => {
  it('weigh and cost what is bought', async () => {
    const totals = await totalsOf(priced);
    const count = (material: string): number => totals.bought.find((one) => one.material === material)?.count ?? 0;
    // density times thickness times area: a sheet of 0.9 x 0.6 m, 600 kg/m³ and 6 mm has 1.944 kg; card 0.216 kg
    expect(totals.boughtKg).toBeCloseTo(1.944 * count('ply') + 0.216 * count('card'), 9);
    expect(totals.cost).toBe(11 * count('ply'));
    expect(totals.unpriced).toEqual(['card']);
    expect(totals.partsKg).toBeGreaterThan(0.1);
    expect(totals.partsKg).toBeLessThan(totals.boughtKg);
  });

  it('have no cost where no price is stated', async () => {
    const totals = await totalsOf(smallDish('Small'));
    expect(totals.cost).toBeNull();
    expect(totalsLines(totals, 'mm', null).join('\n')).toContain('no prices are stated');
    expect(totalsLines(totals, 'mm', null).join('\n')).not.toMatch(/0\.00/);
  });

  it('buy no less than the sheets that all parts cover', async () => {
    const { bought, waste, partsKg, boughtKg } = await totalsOf(priced);
    expect(bought.every(({ count }) => count >= 1)).toBe(true);
    expect(waste).toBeGreaterThanOrEqual(0);
    expect(partsKg / boughtKg).toBeLessThanOrEqual(1 - waste + 1e-9);
  });
});

it('a time is told in hours and minutes', () => {
  expect([0.2, 12.4, 59.6, 60, 226.4].map(durationText)).toEqual([
    '1 min',
    '12 min',
    '1 h 0 min',
    '1 h 0 min',
    '3 h 46 min',
  ]);
});

describe('check and cut', () => {
  it('say what the dish comes to, and what to open first', async () => {
    const checked = await inProcess(place.folder, ['check', 'small.yaml']);
    expect(checked.out).toMatch(/quick nest without a search.*\nTo buy: \d+ x ply 900 mm x 600 mm for \d+\.00/);
    const cut = await inProcess(place.folder, ['cut', 'small.yaml', '-o', 'made', '--seconds', '0', '--no-verify']);
    expect(cut.code, cut.err).toBe(0);
    expect(cut.out).toMatch(/Together: \d+\.00 without card; .* kg to carry home, .* kg of it parts; \d+ % waste/);
    expect(cut.err).toContain(`Open first: ${join('made', 'book.html')}`);
  });
});

describe.runIf(process.platform === 'linux')('opening a file', () => {
  const bin = join(place.folder, 'bin');
  const seen = join(place.folder, 'seen.txt');
  const path = process.env['PATH'];
  const opener = (script: string): void => {
    mkdirSync(bin, { recursive: true });
    writeFileSync(join(bin, 'xdg-open'), `#!/bin/sh\n${script}\n`);
    chmodSync(join(bin, 'xdg-open'), 0o755);
  };
  beforeEach(() => {
    process.env['PATH'] = `${bin}${delimiter}${path}`;
  });
  afterEach(() => {
    process.env['PATH'] = path;
  });

  it('hands the name on as it is, and runs nothing in it', async () => {
    opener(`printf '%s' "$1" > "${seen}"`);
    const name = join(place.folder, 'a $(touch evil); touch evil & "book".html');
    expect(await openFile(name)).toBeNull();
    expect(readFileSync(seen, 'utf8')).toBe(name);
    expect(existsSync('evil') || existsSync(join(place.folder, 'evil'))).toBe(false);
  });

  it('says why it could not', async () => {
    opener('exit 3');
    expect(await openFile('book.html')).toBe('xdg-open has failed');
    process.env['PATH'] = join(place.folder, 'nothing-here');
    expect(await openFile('book.html')).toBe('xdg-open is not installed');
  });
});
