import { describe, expect, it } from 'vitest';
import {
  formatFraction,
  formatLength,
  LengthError,
  nearestFraction,
  parseAngle,
  parseLength,
  parseSize,
} from '../../lib/units/index.js';

describe('lengths', () => {
  // the inch is 25.4 mm and the foot 304.8 mm exactly: international yard and pound agreement, 1959 (NIST SP 811, app. B)
  it.each([
    ['450', 'mm', 450],
    ['450', 'in', 11430],
    ['450 mm', 'in', 450],
    ['1.2 m', 'mm', 1200],
    ['3/4 in', 'mm', 19.05],
    ['1-1/2"', 'mm', 38.1],
    ['1 1/2 in', 'mm', 38.1],
    ['2 ft 6 in', 'mm', 762],
    [`2' 6"`, 'mm', 762],
    ['2 ft 6-1/2 in', 'mm', 774.7],
    ['.5', 'in', 12.7],
    ['-3 mm', 'mm', -3],
    ['1e2 mm', 'mm', 100],
    ['15/32 in', 'mm', 11.90625],
  ] as const)('reads %s in a file of %s', (text, unit, mm) => {
    expect(parseLength(text, unit)).toBeCloseTo(mm, 9);
  });

  it.each(['', 'wide', '12 furlongs', '1/0 in', '3 in 2 ft', '2 in 3 in', '1,5 m', '5 mm mm', '--3', '9'.repeat(300)])(
    'refuses "%s" with a hint',
    (text) => {
      expect(() => parseLength(text, 'mm')).toThrow(LengthError);
    },
  );

  it('refuses numbers that are not finite', () => {
    expect(() => parseLength(Number.NaN, 'mm')).toThrow(LengthError);
    expect(() => parseLength(Infinity, 'mm')).toThrow(LengthError);
  });

  it('reads sizes, with one unit serving both sides', () => {
    expect(parseSize('2440x1220', 'mm')).toEqual({ width: 2440, height: 1220 });
    expect(parseSize('8x4 ft', 'mm').width).toBeCloseTo(2438.4, 9);
    expect(parseSize('8 ft x 48 in', 'mm').height).toBeCloseTo(1219.2, 9);
    expect(() => parseSize('2440', 'mm')).toThrow(LengthError);
    expect(() => parseSize('0x5', 'mm')).toThrow(LengthError);
  });

  it('reads angles in degrees unless told otherwise', () => {
    expect(parseAngle(180)).toBeCloseTo(Math.PI, 12);
    expect(parseAngle('5 mrad')).toBeCloseTo(0.005, 12);
    expect(() => parseAngle('steep')).toThrow(LengthError);
  });

  it('prints what a rule shows', () => {
    expect(formatFraction(38.1, 32)).toBe('1-1/2"');
    expect(formatFraction(19.05, 64)).toBe('3/4"');
    expect(formatFraction(25.4, 32)).toBe('1"');
    expect(formatFraction(25.39, 32)).toBe('1"');
    expect(Math.abs(nearestFraction(100, 64).error)).toBeLessThanOrEqual(25.4 / 128);
    expect(formatLength(450, 'in')).toBe('17-23/32 in');
    expect(formatLength(-0.0001, 'mm')).toBe('0 mm');
  });
});
