/** What a person may write for a length, a size or an angle, and the words in which anything else is refused. */
import { describe, expect, it } from 'vitest';
import {
  formatLength,
  LengthError,
  parseAngle,
  parseLength,
  parseSize,
  parseUsualSize,
} from '../../lib/units/index.js';

/** Message and remedy of what is refused. */
function refusal(read: () => unknown): { message: string; remedy: string; kind: string } {
  try {
    read();
  } catch (error) {
    if (error instanceof LengthError) return { message: error.message, remedy: error.remedy, kind: error.kind };
    throw error;
  }
  throw new Error('it was read');
}

describe('units of length', () => {
  // 25.4 mm and 304.8 mm by definition (NIST SP 811, appendix B)
  it.each([
    [1, ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters', 'MM']],
    [10, ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters']],
    [1000, ['m', 'metre', 'metres', 'meter', 'meters']],
    [25.4, ['in', 'inch', 'inches', 'Inches', '"', '″', '”']],
    [304.8, ['ft', 'foot', 'feet', "'", '′', '’']],
  ])('of %d mm are written in words and signs', (mm, words) => {
    for (const word of words) {
      expect(parseLength(`2 ${word}`, 'cm')).toBeCloseTo(2 * mm, 9);
      expect(parseLength(`2${word}`, 'cm')).toBeCloseTo(2 * mm, 9);
    }
  });
});

describe('numbers of a length', () => {
  it.each([
    ['10-1/2 in', 266.7],
    ['12  3/4 in', 323.85],
    ['3-11/16 in', 93.6625],
    ['1-1/128 in', 25.5984375],
    ['17/128 in', 3.3734375],
    ['.25 in', 6.35],
    ['.75', 0.75],
    ['2.', 2],
    ['12.25', 12.25],
    ['1e3', 1000],
    ['1e+3', 1000],
    ['1.5e-1', 0.15],
    ['1e12', 1e12],
    ['  7  ', 7],
    ['- 3 mm', -3],
    ['−3 mm', -3],
    ['6 ft  2-1/2  in', 1892.3],
    ['1 m 20 cm 5 mm', 1205],
  ])('%j is %d mm', (text, mm) => {
    expect(parseLength(text, 'mm')).toBeCloseTo(mm, 9);
  });

  it('are in the unit of the file where they bear none', () => {
    expect(parseLength('3/4', 'in')).toBeCloseTo(19.05, 12);
    expect(parseLength(2, 'ft')).toBeCloseTo(609.6, 12);
  });
});

describe('a length that is none', () => {
  const hint = 'write a length such as 450, 450 mm, 1.2 m, 3/4 in, 1-1/2" or 2 ft 6 in';

  it.each(['', '   ', 'wide', '/', '.'])('%j is shown as it stands', (text) => {
    expect(refusal(() => parseLength(text, 'mm'))).toMatchObject({
      message: `"${text}" is not a length`,
      remedy: hint,
      kind: 'wrong-value',
    });
  });

  it('is cut in the message where it is long, from 41 characters on', () => {
    const forty = 'x'.repeat(40);
    expect(refusal(() => parseLength(forty, 'mm')).message).toBe(`"${forty}" is not a length`);
    expect(refusal(() => parseLength(`${forty}y`, 'mm')).message).toBe(`"${forty}…" is not a length`);
    const digits = '1'.repeat(39);
    expect(refusal(() => parseLength(`${digits}2 mm 3 mm`, 'mm')).message).toBe(
      `"${digits}2…" has its units in the wrong order`,
    );
  });

  it('may be 200 characters long and no longer', () => {
    const padded = (length: number) => `${'0'.repeat(length - 4)}5 mm`;
    expect(parseLength(padded(200), 'mm')).toBe(5);
    expect(refusal(() => parseLength(padded(201), 'mm')).message).toBe(`"${'0'.repeat(40)}…" is not a length`);
  });

  it.each([Number.NaN, Infinity, -Infinity])('%d is named', (value) => {
    expect(refusal(() => parseLength(value, 'mm'))).toMatchObject({
      message: `${value} is not a length`,
      remedy: hint,
    });
  });

  it('names the unit that is not known, and those that are', () => {
    expect(refusal(() => parseLength('12 furlongs', 'mm'))).toMatchObject({
      message: '"furlongs" is not a known unit of length',
      remedy: 'use mm, cm, m, in or ft',
    });
    expect(refusal(() => parseLength('1e', 'mm')).message).toBe('"e" is not a known unit of length');
  });

  it.each(['2 in 3 in', '3 in 2 ft', '5 mm 1 cm'])('%s has its units in an odd order', (text) => {
    expect(refusal(() => parseLength(text, 'mm'))).toMatchObject({
      message: `"${text}" has its units in the wrong order`,
      remedy: hint,
    });
  });

  it('has no 0 below the line', () => {
    for (const text of ['1/0 in', '2-3/0 in'])
      expect(refusal(() => parseLength(text, 'mm'))).toMatchObject({
        message: 'a fraction cannot have 0 as its denominator',
        remedy: hint,
      });
  });

  it.each([
    ['about 5', '"about 5" has more in it than a length', 'write 5 and nothing else'],
    ['5 mm thick', '"5 mm thick" has more in it than a length', 'write 5 mm and nothing else'],
    ['~ 1-1/2 in', '"~ 1-1/2 in" has more in it than a length', 'write 1-1/2 in and nothing else'],
    ['c. 3/4" or so', '"c. 3/4" or so" has more in it than a length', 'write 3/4" and nothing else'],
    ['12.5 5', '"12.5 5" has more in it than a length', 'write 12.5 and nothing else'],
    ['5 mm mm', '"5 mm mm" has its unit twice', 'write 5 mm'],
    ["6 ''", `"6 ''" has two feet marks`, 'write 6 in'],
    ["2' 6''", `"2' 6''" has two feet marks`, `write 2' 6 in`],
    ['1,5 m', '"1,5 m" has a comma', 'write 1.5 m, with a decimal point'],
    ['1,200', '"1,200" has a comma', 'write 1200 without a comma, or 1.200 with a decimal point'],
    ['1 ½ in', '"1 ½ in" has ½ as one character', 'write 1-1/2 in'],
    ['⅜ in', '"⅜ in" has ⅜ as one character', 'write 3/8 in'],
    ['“450 mm”', '"“450 mm”" is in typographic quotation marks', 'write 450 mm'],
  ])('%j is told what would do', (text, message, remedy) => {
    expect(refusal(() => parseLength(text, 'mm'))).toEqual({ message, remedy, kind: 'wrong-value' });
  });
});

describe('a size', () => {
  it.each([
    ['2440x1220', 'mm', 2440, 1220],
    ['2440 X 1220', 'mm', 2440, 1220],
    ['2440 × 1220 mm', 'in', 2440, 1220],
    ['2440*1220', 'mm', 2440, 1220],
    [' 1.5 x 2.5 m ', 'mm', 1500, 2500],
    ['7-1/2 x 4 ft', 'mm', 2286, 1219.2],
    ['3/4 x 1/2 in', 'mm', 19.05, 12.7],
    [`8' x 4'`, 'mm', 2438.4, 1219.2],
    [`10x4"`, 'mm', 254, 101.6],
    ['8 ft x 48 in', 'mm', 2438.4, 1219.2],
    ['8 ft x 48', 'in', 2438.4, 1219.2],
  ] as const)('%j in a file of %s has both sides', (text, unit, width, height) => {
    const size = parseSize(text, unit);
    expect(size.width).toBeCloseTo(width, 9);
    expect(size.height).toBeCloseTo(height, 9);
  });

  it.each(['2440', 'x', '5x', 'x5', ' x 5', '1x2x3'])('%j is none', (text) => {
    expect(refusal(() => parseSize(text, 'mm')).message).toBe(`"${text}" is not a size`);
  });

  it.each(['0x5', '5x0', '-1x5', '5 x -1'])('%j has a side of nothing', (text) => {
    expect(refusal(() => parseSize(text, 'mm'))).toMatchObject({
      message: `"${text}" is not a size`,
      remedy: 'both sides must be above 0',
    });
  });

  it('says how it is written', () => {
    expect(refusal(() => parseSize('big', 'mm')).remedy).toBe('write width x height, such as 2440x1220 or 8 ft x 4 ft');
    expect(refusal(() => parseSize('2440 by 1220', 'mm')).remedy).toBe(
      'write 2440 x 1220, with a unit unless it is that of the file',
    );
  });
});

describe('a bare size that is usual in another unit', () => {
  it('is refused with every reading, and the metric one beside that of an inch file', () => {
    expect(refusal(() => parseUsualSize('1525x1525', 'in'))).toEqual({
      message:
        '"1525x1525" without a unit means 1525 in x 1525 in (38735 mm x 38735 mm) here, which is implausible; 1525 mm x 1525 mm would be usual',
      remedy: 'write the unit with it: 1525 mm x 1525 mm, or 1525 in x 1525 in',
      kind: 'wrong-unit',
    });
    // 8 cm, 8 in and 8 ft are all sides of boards; 8 m is none
    expect(refusal(() => parseUsualSize('8x8', 'mm'))).toEqual({
      message:
        '"8x8" without a unit means 8 mm x 8 mm here, which is implausible; 8 cm x 8 cm or 8 in x 8 in or 8 ft x 8 ft would be usual',
      remedy: 'write the unit with it: 8 cm x 8 cm, or 8 in x 8 in, or 8 ft x 8 ft, or 8 mm x 8 mm',
      kind: 'wrong-unit',
    });
  });

  it('is taken up to the ends of what is usual, 50 mm and 6 m', () => {
    expect(parseUsualSize('50x50', 'mm').width).toBe(50);
    expect(parseUsualSize('6000x6000', 'mm').width).toBe(6000);
    expect(refusal(() => parseUsualSize('49x49', 'mm')).kind).toBe('wrong-unit');
    // 5 cm and 600 cm are the same ends seen from a file of centimetres
    expect(parseUsualSize('600x5', 'cm').width).toBe(6000);
    expect(refusal(() => parseUsualSize('5x5', 'mm')).message).toContain('5 cm x 5 cm');
  });

  it('is bare with an exponent, and not with a unit', () => {
    for (const bare of ['1e1x1e1', '1E1 x 1e+1', '1e1x 1e1', '10x1.0e1'])
      expect(refusal(() => parseUsualSize(bare, 'mm')).kind).toBe('wrong-unit');
    for (const stated of ['10x10 mm', `10" x 10"`, '10 MM x 10 MM'])
      expect(parseUsualSize(stated, 'mm').width).toBeGreaterThan(0);
  });
});

describe('an angle', () => {
  it.each([
    ['30', 30],
    ['30.25 deg', 30.25],
    ['30. deg', 30],
    ['.125°', 0.125],
    ['-12.5 degrees', -12.5],
    ['+7.75', 7.75],
    ['1 degree', 1],
    ['45Deg', 45],
  ])('%j is %d degrees', (text, degrees) => {
    expect(parseAngle(text)).toBeCloseTo((degrees * Math.PI) / 180, 14);
  });

  it.each(['x30', '30x', '3 0', '^3', '=3', '.x', '3.x'])('%j is none, and a remedy is given', (text) => {
    const { message, remedy } = refusal(() => parseAngle(text));
    expect(message).toBe(`"${text}" is not an angle`);
    expect(remedy).toBe('write 30, 30 deg, 0.5 rad or 5 mrad');
  });
});

describe('short lengths of an inch workshop', () => {
  it('are said in millimetres and inches to their ends', () => {
    expect(formatLength(0.5, 'mm')).toBe('0.5 mm');
    expect(formatLength(-0.2, 'in')).toMatch(/^-0\.00\d in$/);
  });
});
