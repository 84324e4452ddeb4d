/** One system of units in everything that a builder reads: book, values of the console, lists. */
import { describe, expect, it } from 'vitest';
import { keyValues } from '../../lib/key-values.js';
import { formatLength, parseLength, proseIn } from '../../lib/units/index.js';
import { prepare } from '../../lib/pipeline.js';
import { bookOf } from '../../lib/public/book.js';
import { designOf, type FixtureName, jobOf } from '../helpers/fixtures.js';
import { designIn } from '../helpers/random-design.js';

/** Workshop units of each system, as words after a number. What the sun gives (W, W/m², °C, mrad) is the same in both. */
const metric = /\d ?(?:mm|cm|kg|m²|m\/s|metres?|m)(?![\w²/])/;
const imperial = /\d ?(?:in(?! [\d.]+ h)|ft|lb|sq ft|mph|inch(?:es)?|feet)(?![\w])|\d"/;

/** What is read of a page: its texts, without scripts, styles and the terms of licences. */
function textsOf(html: string): string[] {
  return html
    .replace(/<(script|style|pre)\b.*?<\/\1>/gs, '')
    .replace(/<[^>]+>/g, '\n')
    .replace(/&quot;/g, '"')
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
}

async function read(name: FixtureName): Promise<string[]> {
  const { files, design, dish, parts, cleatStart, assembly } = await jobOf(name);
  const bytes = (file: string): string => {
    const content = files.get(file);
    return typeof content === 'string' ? content : new TextDecoder().decode(content);
  };
  return [
    ...textsOf(bytes('book.html')),
    ...[...files.keys()].filter((file) => file.endsWith('.csv')).flatMap((file) => bytes(file).split('\n')),
    ...keyValues(design, dish, parts, cleatStart, assembly).flatMap(({ label, value, note = '' }) => [
      label,
      value,
      note,
    ]),
  ];
}

describe('units', () => {
  it('of an inch design are inches, feet, pounds and square feet throughout', async () => {
    const lines = await read('hand-cut-inch');
    expect(lines.filter((line) => metric.test(line))).toEqual([]);
    expect(lines.filter((line) => imperial.test(line)).length).toBeGreaterThan(50);
  });

  it('of an inch design are so where the tool names a material by its thickness', () => {
    const design = designOf(designIn('in', 9));
    expect(design.units).toBe('in');
    const lines = textsOf(bookOf({ ...prepare(design), problems: [], sheets: null }));
    expect(lines.filter((line) => metric.test(line))).toEqual([]);
    expect(lines.filter((line) => /^plywood \d+\/\d+ in$/.test(line)).length).toBeGreaterThan(0);
  });

  it('of a metric design are metric throughout', async () => {
    const lines = await read('press-house');
    expect(lines.filter((line) => imperial.test(line))).toEqual([]);
    expect(lines.filter((line) => metric.test(line)).length).toBeGreaterThan(50);
  });

  it('decimals of an inch stand for what is thin alone', async () => {
    const lines = (await read('hand-cut-inch')).flatMap((line) => [...line.matchAll(/(\d*\.\d+) in\b/g)]);
    for (const [text, value] of lines) expect(Number(value), text).toBeLessThan(0.25);
  });

  it('in sentences are turned by the definitions of the pound, foot and mile', () => {
    // international yard and pound agreement, 1959: the yard is 0.9144 m, the pound 0.45359237 kg
    expect(proseIn('hang it 25.4 mm higher', 'in')).toBe('hang it 1 in higher');
    expect(proseIn('100 kg of ballast', 'in')).toBe('220.5 lb of ballast');
    expect(proseIn('1 m² of mirror, 800 W/m²', 'in')).toBe('10.8 sq ft of mirror, 800 W/m²');
    expect(proseIn('gusts of 10 m/s', 'ft')).toBe('gusts of 22.4 mph');
    expect(proseIn('hang it 25.4 mm higher', 'mm')).toBe('hang it 25.4 mm higher');
  });

  it('inches are read back as what they were, to a hundred-and-twenty-eighth', () => {
    for (const mm of [0.25, 1.5875, 4, 12, 119.0625, 450, 609.6, 614, 1320.8, 2438.4, -75.3]) {
      const text = formatLength(mm, 'in');
      expect(Math.abs(parseLength(text, 'in') - mm), text).toBeLessThanOrEqual(25.4 / 128 + 1e-9);
    }
    expect(formatLength(2438.4, 'in')).toBe('8 ft');
    expect(formatLength(1320.8, 'in')).toBe('4 ft 4 in');
    expect(formatLength(11.90625, 'in')).toBe('15/32 in');
    expect(formatLength(0.254, 'in')).toBe('0.01 in');
    expect(formatLength(609, 'in')).toBe('23-31/32 in');
  });
});
