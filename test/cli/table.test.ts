/** Tables: nothing is left out, whatever the width. */
import { describe, expect, it } from 'vitest';
import { table } from '../../cli/table.js';

const heads = [{ head: 'part' }, { head: 'size', right: true }, { head: 'what it is' }];
const rows = [
  ['rib', '1200 mm', 'upright radial member whose top edge carries the curve'],
  ['a-name-of-one-word-that-is-very-long', '5 mm', 'short'],
];
const letters = (text: string): string => Array.from(text.replace(/\s/g, '')).sort().join('');

describe('a table', () => {
  it('has each row on one line for a program that reads', () => {
    const lines = table(heads, rows, Infinity);
    expect(lines).toHaveLength(4);
    expect(lines[2]).toMatch(/^rib +1200 mm  upright radial member whose top edge carries the curve$/);
  });

  it.each([120, 80, 60, 48, 40])('fits a terminal of %i columns, and loses no letter', (width) => {
    const lines = table(heads, rows, width);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(width);
    const rule = lines.findIndex((line) => /^-[- ]+$/.test(line));
    expect(letters(lines.slice(rule + 1).join(''))).toBe(letters(rows.flat().join('')));
    expect(lines.join('')).not.toContain('…');
  });

  it('breaks between words where it can', () => {
    const words = new Set(rows.flat().flatMap((cell) => cell.split(' ')));
    const printed = table(heads, rows.slice(0, 1), 48).slice(2).join(' ').split(/\s+/);
    for (const word of printed.filter((one) => one !== '')) expect(words).toContain(word);
  });
});
