import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { logTemplate } from '../../lib/index.js';
import { fixtureText } from '../helpers/fixtures.js';
import { inProcess } from '../helpers/command.js';

const folder = mkdtempSync(join(tmpdir(), 'dishwright-compare-'));
afterAll(() => rmSync(folder, { recursive: true }));
const at = (name: string) => join(folder, name);
// a wall of 2 kg of stainless steel, 500 J/(kg K), warms with the water
writeFileSync(
  at('dish.yaml'),
  fixtureText('press-house')
    .replace('filling: juice', 'filling: water')
    .replace('vessel: { diameter: 260 }', 'vessel: { diameter: 260, wallMass: 2 }'),
);

/** Water that gains 0.5 K a minute in the sun, then loses 0.2 K a minute under cover. */
function writeLog(name: string, change: (lines: string[]) => void = () => undefined): string {
  const lines = logTemplate.trim().split('\n');
  for (let minute = 0; minute <= 100; minute += 5) {
    const covered = minute > 60;
    const loadC = covered ? 60 - 0.2 * (minute - 60) : 30 + 0.5 * minute;
    const time = `${10 + Math.floor(minute / 60)}:${String(minute % 60).padStart(2, '0')}`;
    lines.push(`${time},${loadC.toFixed(1)},24,800,0.5,${covered ? 'yes' : 'no'}`);
  }
  change(lines);
  writeFileSync(at(name), lines.join('\n'));
  return at(name);
}

describe('compare', () => {
  it('writes a log to fill in, and not over one that is there', async () => {
    expect((await inProcess(folder, ['compare', at('dish.yaml'), '--template', at('template.csv')])).code).toBe(0);
    expect(readFileSync(at('template.csv'), 'utf8')).toBe(logTemplate);
    writeFileSync(at('mine.csv'), 'mine');
    const again = await inProcess(folder, ['compare', at('dish.yaml'), '--template', at('mine.csv')]);
    expect(again.code).toBe(3);
    expect(readFileSync(at('mine.csv'), 'utf8')).toBe('mine');
  });

  it('prints what was measured, with a plot', async () => {
    const log = writeLog('log.csv');
    const plot = at('plot.svg');
    const { code, out } = await inProcess(folder, ['compare', at('dish.yaml'), log, '--plot', plot, '--spot', '50=90']);
    expect(code).toBe(0);
    // (12 kg · 4179 J/(kg K), water at 45 °C, + 2 kg · 500 J/(kg K)) · 0.5 K a minute = 426 W (by hand), 373 W at 700 W/m²
    expect(out).toMatch(/426 W\s+373 W/);
    // 12 · 4186 · 0.2/60 = 167 W at 32 K above the air, in the middle of the run
    expect(out).toMatch(/loss coefficient +5\.\d\d W\/K/);
    expect(out).toMatch(/spot at 50 % +90 mm/);
    expect(readFileSync(plot, 'utf8')).toContain('<title id="plot-comparison-title">');
  });

  it('names the line of a log that cannot be used, for people and for programs', async () => {
    const log = writeLog('bad.csv', (lines) => lines.splice(8, 1, '10:15,"37,5",24,800,0.5,no'));
    const { code, err } = await inProcess(folder, ['compare', at('dish.yaml'), log, '--plot', at('none.svg')]);
    expect(code).toBe(2);
    expect(err).toMatch(/bad\.csv:9: error: .*decimal comma/);
    expect(existsSync(at('none.svg'))).toBe(false);
    const { out } = await inProcess(folder, ['compare', at('dish.yaml'), log, '--json']);
    const { problems } = JSON.parse(out) as {
      readonly problems: readonly { readonly place?: { readonly line?: number } }[];
    };
    expect(problems[0]?.place?.line).toBe(9);
  });

  it.each([
    [['--spot', '120'], /is not a width/],
    [['--spot', '0=120'], /is not a width/],
    [['--spot', '50=many'], /50=many/],
  ])('refuses %j', async (flags, reason) => {
    const { code, err } = await inProcess(folder, ['compare', at('dish.yaml'), writeLog('log.csv'), ...flags]);
    expect(code).toBe(2);
    expect(err).toMatch(reason);
  });

  it('needs a load in the design', async () => {
    writeFileSync(at('bare.yaml'), fixtureText('press-house').replace(/^load:.*\n/m, ''));
    const { code, err } = await inProcess(folder, ['compare', at('bare.yaml'), writeLog('log.csv')]);
    expect(code).toBe(2);
    expect(err).toContain('says nothing of what is heated');
  });
});
