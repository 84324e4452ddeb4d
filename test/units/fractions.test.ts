import { describe, expect, it } from 'vitest';
import { formatFraction, formatLength, nearestFraction } from '../../lib/units/index.js';

describe('inch fractions', () => {
  // decimal equivalents of an inch to five figures, as printed on drill cards and rules; from memory
  it.each([
    ['1/64"', 0.39688],
    ['1/32"', 0.79375],
    ['3/64"', 1.19063],
    ['1/16"', 1.5875],
    ['1/8"', 3.175],
    ['3/16"', 4.7625],
    ['1/4"', 6.35],
    ['3/8"', 9.525],
    ['15/32"', 11.90625],
    ['1/2"', 12.7],
    ['23/32"', 18.25625],
    ['63/64"', 25.00313],
    ['1"', 25.4],
    ['1-1/64"', 25.79688],
    ['2-1/2"', 63.5],
    ['48"', 1219.2],
  ])('prints %s for its decimal equivalent', (text, mm) => {
    expect(formatFraction(mm, 64)).toBe(text);
    expect(formatFraction(-mm, 64)).toBe(`-${text}`);
  });

  it('are the nearest of all with that denominator, in lowest terms', () => {
    const commonFactor = (a: number, b: number): number => (b === 0 ? a : commonFactor(b, a % b));
    for (const finest of [1, 2, 16, 64])
      for (let mm = 0; mm < 60; mm += 0.37) {
        const found = nearestFraction(mm, finest);
        const { integer, numerator, denominator } = found;
        const shown = (integer + numerator / denominator) * 25.4;
        const all = Array.from({ length: 4 * finest }, (_, k) => (k * 25.4) / finest);
        expect(Math.abs(shown - mm)).toBeCloseTo(Math.min(...all.map((one) => Math.abs(one - mm))), 9);
        expect(found.error).toBeCloseTo(shown - mm, 9);
        expect(found.negative).toBe(false);
        expect(numerator).toBeLessThan(denominator);
        expect(commonFactor(numerator, denominator)).toBe(1);
      }
  });

  it('has no negative nothing, and says by how much it is rounded', () => {
    expect(formatFraction(-0.1, 64)).toBe('0"');
    expect(formatFraction(0, 64)).toBe('0"');
    expect(nearestFraction(-0.1, 64).negative).toBe(false);
    expect(nearestFraction(-12.8, 8)).toMatchObject({ negative: true, integer: 0, numerator: 1, denominator: 2 });
    expect(nearestFraction(-12.8, 8).error).toBeCloseTo(-0.1, 9);
  });
});

describe('lengths in print', () => {
  it('have the figures that a workshop reads, and no trailing zeros', () => {
    expect(formatLength(1234.56, 'mm')).toBe('1234.6 mm');
    expect(formatLength(1234.56, 'cm')).toBe('123.46 cm');
    expect(formatLength(1234.56, 'm')).toBe('1.235 m');
    expect(formatLength(1234.56, 'in')).toBe('48.6 in');
    expect(formatLength(1234.56, 'ft')).toBe('4.05 ft');
    expect(formatLength(1234.56, 'ft', 3)).toBe('4.05 ft');
    expect(formatLength(1234.56, 'mm', 0)).toBe('1235 mm');
    expect(formatLength(-12.34, 'mm')).toBe('-12.3 mm');
    expect(formatLength(-0.01, 'mm')).toBe('0 mm');
  });
});
