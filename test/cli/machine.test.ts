/** `dishwright machine new`: answers typed or as flags, a file that a design takes, nothing overwritten. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { machineAnswers, machineText } from '../../cli/new/machine-questions.js';
import { readDesign } from '../../lib/index.js';
import { smallDish } from '../faults/small-dish.js';
import { inProcess } from '../helpers/command.js';

const folder = mkdtempSync(join(tmpdir(), 'machine-'));
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

const machineOf = (text: string) => {
  const reading = readDesign(smallDish('named', 'machine: m.yaml'), 'dish.yaml', { kind: 'text', text });
  if (reading.kind === 'refused') throw new Error(reading.problems.map(({ message }) => message).join('\n'));
  return reading.design.machine;
};
/** The file with every default uncommented: `#key:` lines, as the file itself says. */
const uncommented = (text: string): string => text.replace(/^(\s*)#(?=[a-z])/gm, '$1');

async function typed(...lines: string[]) {
  const reported: string[] = [];
  const answers = await machineAnswers(
    {},
    () => Promise.resolve(lines.shift() ?? ''),
    (message, remedy) => reported.push(`  ${message}; ${remedy}`),
    (flag) => new Error(flag),
  );
  return { answers, reported };
}

describe('the questions', () => {
  it('take Enter for what is usual, and write a file that a design takes', async () => {
    const { answers, reported } = await typed();
    expect(reported).toEqual([]);
    const text = machineText(answers);
    expect(machineOf(text)).toMatchObject({ kind: 'router', toolChange: 'automatic', spinUp: 3 });
    // and every default that it shows is one
    expect(machineOf(uncommented(text))).toEqual(machineOf(text));
  });

  it('ask a laser for what a laser has, and again after a wrong answer', async () => {
    const { answers, reported } = await typed('plasma', 'laser', 'in', '36 x 24', 'furlongs', 'in');
    expect(reported[0]).toContain('kind is "plasma"');
    expect(reported[1]).toContain('programUnits is "furlongs"');
    expect([...answers.keys()]).not.toContain('toolChange');
    const machine = machineOf(machineText(answers));
    expect(machine).toMatchObject({ kind: 'laser', programUnits: 'in', beam: 'M3', toolPaths: false });
    expect(machine.area?.width).toBeCloseTo(36 * 25.4, 9);
  });

  it('refuse what does not go together where it is answered', async () => {
    const { reported } = await typed('', '', '', '', '', '', '', '', '', '', '24000', '8000', '30000');
    expect(reported).toHaveLength(1);
    expect(reported[0]).toContain('machine.spindle.min of 24000 rev/min is above machine.spindle.max of 8000');
  });
});

describe('the command', () => {
  it('takes every answer as a flag, and never overwrites', async () => {
    const flags = ['--kind', 'router', '--area', '1300x900', '--tool-change', 'by-hand', '--max-feed-z', '1500'];
    const first = await inProcess(folder, ['machine', 'new', 'shop.yaml', ...flags]);
    expect(first.code, first.err).toBe(0);
    const text = readFileSync(join(folder, 'shop.yaml'), 'utf8');
    expect(machineOf(text)).toMatchObject({
      area: { width: 1300, height: 900 },
      toolChange: 'by-hand',
      maxFeed: { x: 4000, z: 1500 },
    });
    const again = await inProcess(folder, ['machine', 'new', 'shop.yaml', '--kind', 'laser']);
    expect([again.code, again.err.includes('already exists')]).toEqual([3, true]);
    expect(readFileSync(join(folder, 'shop.yaml'), 'utf8')).toBe(text);
    writeFileSync(join(folder, 'dish.yaml'), smallDish('named', 'machine: shop.yaml'));
    expect((await inProcess(folder, ['check', 'dish.yaml'])).code).toBe(0);
  });

  it.each([
    ['--kind', 'plasma', '--kind: kind is "plasma"'],
    ['--tool-change', 'magic', '--tool-change: toolChange is "magic"'],
    ['--max-feed-x', 'fast', '--max-feed-x: maxFeed.x'],
    ['--beam', 'M4', '--beam: machine.beam is for a laser'],
  ])('refuses %s %s by name, and writes nothing', async (flag, value, words) => {
    const { code, err } = await inProcess(folder, ['machine', 'new', 'none.yaml', flag, value]);
    expect([code, err.includes(words)], err).toEqual([2, true]);
    expect((await inProcess(folder, ['machine', 'new', 'none.yaml', '--no-such', '1'])).code).toBe(2);
    expect(() => readFileSync(join(folder, 'none.yaml'))).toThrow();
  });
});
