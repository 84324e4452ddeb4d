/** How lengths, sizes and angles may be spelt, and what is said of those that cannot be read. */
import { describe, expect, it } from 'vitest';
import { LengthError, parseAngle, parseLength, parseSize } from '../../lib/units/index.js';

/** What a reader throws, with its text. */
function refusal(read: () => unknown): { message: string; remedy: string } {
  try {
    read();
  } catch (error) {
    if (error instanceof LengthError) return { message: error.message, remedy: error.remedy };
    throw error;
  }
  throw new Error('nothing was refused');
}

describe('spellings of a length', () => {
  // unit symbols and names: NIST SP 811, sections 5 and 8 and appendix B; prime marks: ISO 80000-3 and drawing practice
  it.each([
    ['7mm', 7],
    ['7 MM', 7],
    ['7 cm', 70],
    ['7 m', 7000],
    ['7 in', 177.8],
    ['7 inch', 177.8],
    ['7 inches', 177.8],
    ['7"', 177.8],
    ['7″', 177.8],
    ['7 ft', 2133.6],
    ['7 foot', 2133.6],
    ['7 feet', 2133.6],
    [`7'`, 2133.6],
    ['7′', 2133.6],
    ['7′ 6″', 2286],
    [`7'6"`, 2286],
    ['  7 mm  ', 7],
    ['12 m 34 cm 56 mm', 12396],
  ])('reads %s', (text, mm) => {
    expect(parseLength(text, 'mm')).toBeCloseTo(mm, 9);
  });

  it.each([
    ['12.345 mm', 12.345],
    ['12. mm', 12],
    ['.125 in', 3.175],
    ['0.125in', 3.175],
    ['1.25e3 mm', 1250],
    ['1E+3 mm', 1000],
    ['2.5e-1 m', 250],
    ['1e12 mm', 1e12],
    ['12-13/16 in', 325.4375],
    ['12  13/16  in', 325.4375],
    ['113/16 in', 179.3875],
    ['1/128 in', 0.1984375],
    ['-1-1/2 in', -38.1],
    ['− 1-1/2 in', -38.1],
    ['-  2 ft 6 in', -762],
  ])('reads %s', (text, mm) => {
    expect(parseLength(text, 'mm')).toBeCloseTo(mm, 7);
  });

  it('reads plain numbers in the unit asked for', () => {
    expect(parseLength(2, 'mm')).toBe(2);
    expect(parseLength(2, 'cm')).toBe(20);
    expect(parseLength(2, 'm')).toBe(2000);
    expect(parseLength(2, 'in')).toBeCloseTo(50.8, 12);
    expect(parseLength(-2, 'ft')).toBeCloseTo(-609.6, 12);
    expect(parseLength('1/4', 'ft')).toBeCloseTo(76.2, 12);
  });
});

describe('lengths that cannot be read', () => {
  const examples = ['450', '450 mm', '1.2 m', '3/4 in', '1-1/2"', '2 ft 6 in'];

  it.each(['', '   ', 'wide', '1,5 m', '5 mm mm', '--3', '5 mm 3', '12 3', '1e123 mm', 'x5 mm', '5 mm?', '5 ""'])(
    'are quoted with examples that can: %j',
    (text) => {
      const { message, remedy } = refusal(() => parseLength(text, 'mm'));
      expect(message).toBe(`"${text}" is not a length`);
      for (const example of examples) expect(remedy).toContain(example);
      for (const example of examples) expect(() => parseLength(example, 'mm')).not.toThrow();
    },
  );

  it('name the unit that is none', () => {
    expect(refusal(() => parseLength('1e mm', 'mm')).message).toBe('"e" is not a unit of length here');
    const { message, remedy } = refusal(() => parseLength('12 furlongs', 'mm'));
    expect(message).toBe('"furlongs" is not a unit of length here');
    for (const unit of ['mm', 'cm', 'm', 'in', 'ft']) expect(remedy).toContain(unit);
  });

  it('are told from sums in the wrong order and fractions of nothing', () => {
    expect(refusal(() => parseLength(' 2 in 3 in ', 'mm')).message).toBe('"2 in 3 in" names its units in an odd order');
    for (const text of ['3 in 2 ft', '2 in 3 in', '2 cm 1 m']) {
      expect(refusal(() => parseLength(text, 'mm')).message).toBe(`"${text}" names its units in an odd order`);
    }
    for (const text of ['1/0 in', '3-1/0 in', '1/00']) {
      const { message, remedy } = refusal(() => parseLength(text, 'mm'));
      expect(message).toMatch(/fraction.* 0 below the line/);
      expect(remedy).toContain('3/4 in');
    }
  });

  it('are quoted in part when they go on and on', () => {
    const forty = 'x'.repeat(40);
    expect(refusal(() => parseLength(forty, 'mm')).message).toBe(`"${forty}" is not a length`);
    expect(refusal(() => parseLength(`${forty}y`, 'mm')).message).toBe(`"${forty}…" is not a length`);
    expect(parseLength(`${'0'.repeat(197)}5mm`.slice(-200), 'mm')).toBe(5);
    expect(() => parseLength(`${'0'.repeat(198)}5mm`, 'mm')).toThrow(LengthError);
  });

  it('are numbers that are none', () => {
    expect(refusal(() => parseLength(Number.NaN, 'mm')).message).toBe('NaN is not a length');
    expect(refusal(() => parseLength(-Infinity, 'mm')).message).toBe('-Infinity is not a length');
    expect(refusal(() => parseLength(Infinity, 'mm')).remedy).toContain('450 mm');
    expect(new LengthError('a', 'b').name).toBe('LengthError');
  });
});

describe('sheet sizes', () => {
  // nominal sizes of boards: 2440 x 1220 is the metric 8 x 4 ft (common practice, no source)
  it.each([
    ['2440x1220', 2440, 1220],
    [' 2440 x 1220 ', 2440, 1220],
    ['2440 X 1220 mm', 2440, 1220],
    ['2440*1220', 2440, 1220],
    ['2440×1220', 2440, 1220],
    ['8x4 ft', 2438.4, 1219.2],
    [`8x4'`, 2438.4, 1219.2],
    ['96x48"', 2438.4, 1219.2],
    ['96x48″', 2438.4, 1219.2],
    ['8×4′', 2438.4, 1219.2],
    ['8 ft x 4 ft', 2438.4, 1219.2],
    ['8 ft 1 in x 4 ft 1 in', 2463.8, 1244.6],
    ['1 m x 50 cm', 1000, 500],
    ['96-1/2 x 48-1/4 in', 2451.1, 1225.55],
    ['96.5 x 48.25 in', 2451.1, 1225.55],
    ['8 ft x 1220', 2438.4, 1220],
    ['8ft x 4ft', 2438.4, 1219.2],
    ['54 x 4 ft 6 in', 1371.6, 1371.6],
    ['8 x 4 ft ', 2438.4, 1219.2],
  ])('reads %s', (text, width, height) => {
    const size = parseSize(text, 'mm');
    expect(size.width).toBeCloseTo(width, 9);
    expect(size.height).toBeCloseTo(height, 9);
  });

  it('says what would do of text that is no size', () => {
    for (const text of ['2440', '2440x', 'x1220', ' x1220', '2440 x ', '1x2x3', '']) {
      const { message, remedy } = refusal(() => parseSize(text, 'mm'));
      expect(message).toBe(`"${text}" is not a size`);
      expect(remedy).toContain('2440x1220');
    }
  });

  it('lends the last unit to a bare number only', () => {
    expect(refusal(() => parseSize('8 ft 6 x 4 ft 6 in', 'mm')).message).toBe('"8 ft 6" is not a length');
  });

  it('refuses sides of nothing and less', () => {
    for (const text of ['0x5', '5x0', '-5x5', '5x-5']) {
      const { message, remedy } = refusal(() => parseSize(text, 'mm'));
      expect(message).toBe(`"${text}" is not a size`);
      expect(remedy).toContain('above 0');
    }
  });
});

describe('angles', () => {
  // 180° is π rad: SI Brochure, 9th edition, table 8
  it.each([
    [90, Math.PI / 2],
    ['90', Math.PI / 2],
    ['90 deg', Math.PI / 2],
    ['90 degree', Math.PI / 2],
    ['90 degrees', Math.PI / 2],
    ['90°', Math.PI / 2],
    [' 90 DEG ', Math.PI / 2],
    ['+90', Math.PI / 2],
    ['-22.55 deg', (-22.55 * Math.PI) / 180],
    ['.25 rad', 0.25],
    ['2. rad', 2],
    ['12.34 rad', 12.34],
    ['.255 RAD', 0.255],
    ['1500 mrad', 1.5],
  ])('reads %s', (text, radians) => {
    expect(parseAngle(text)).toBeCloseTo(radians, 12);
  });

  it('says what would do of text that is no angle', () => {
    for (const text of ['steep', '90 grad', 'x90', '90 degx', '', '5 5', '1.x', '.x', '~5']) {
      const { message, remedy } = refusal(() => parseAngle(text));
      expect(message).toBe(`"${text}" is not an angle`);
      for (const example of ['30', '30 deg', '0.5 rad', '5 mrad']) expect(remedy).toContain(example);
    }
  });
});
