/** Lengths and sizes as people write them, and what they are asked to write instead. All by hand. */
import { describe, expect, it } from 'vitest';
import { formatLength, nearestFraction } from '../../lib/units/format.js';
import { LengthError, parseLength, unitNamed } from '../../lib/units/length.js';
import { proseIn } from '../../lib/units/prose.js';
import { parseSize, parseUsualSize } from '../../lib/units/size.js';
import { commaSlip, lengthSlip, withinTypographic } from '../../lib/units/slips.js';

/** What a text is refused with. */
function refusal(read: () => unknown): LengthError {
  try {
    read();
  } catch (error) {
    if (error instanceof LengthError) return error;
    throw error;
  }
  throw new Error('it is taken');
}

describe('a length as it is often written', () => {
  it.each([
    ['½', '1/2'],
    ['¼', '1/4'],
    ['¾', '3/4'],
    ['⅛', '1/8'],
    ['⅜', '3/8'],
    ['⅝', '5/8'],
    ['⅞', '7/8'],
    ['⅓', '1/3'],
    ['⅔', '2/3'],
  ])('with %s as one sign is to be written with %s', (sign, fraction) => {
    expect(lengthSlip(`${sign} in`)).toEqual({
      message: `"${sign} in" has ${sign} as one character`,
      remedy: `write ${fraction} in`,
    });
    expect(lengthSlip(`3${sign} in`)?.remedy).toBe(`write 3-${fraction} in`);
    expect(lengthSlip(`3 ${sign} in`)?.remedy).toBe(`write 3-${fraction} in`);
  });

  it.each(['5mm mm', '5 mm mm', '5 mm  mm'])('%s names its unit twice', (text) => {
    expect(lengthSlip(text)).toEqual({
      message: `"${text}" has its unit twice`,
      remedy: `write ${text.replace(/mm\s+mm/, 'mm')}`,
    });
  });

  it.each([
    ['about 12 1/2 in wide', '12 1/2 in'],
    ['about 1 13/16 in', '1 13/16 in'],
    ['about 1-1/16 in', '1-1/16 in'],
    ['about 13/16', '13/16'],
    ['about 1/16 in', '1/16 in'],
    ['about 12.75 mm', '12.75 mm'],
    ['wide 12mm', '12mm'],
    ['12" wide', '12"'],
  ])('%s holds %s', (text, length) => {
    expect(lengthSlip(text)?.remedy).toBe(`write ${length} and nothing else`);
  });

  it.each(['450', '12 mm', 'wide'])('%s has no slip', (text) => {
    expect(lengthSlip(text)).toBeNull();
  });

  it('has a comma for a point, or between thousands', () => {
    expect(commaSlip('1,200 mm')?.remedy).toBe('write 1200 mm without a comma, or 1.200 mm with a decimal point');
    expect(commaSlip('1,2005 mm')?.remedy).toBe('write 1.2005 mm, with a decimal point');
    expect(commaSlip('1, 2')).toBeNull();
  });

  it('stands in the quotation marks of a text program', () => {
    expect(withinTypographic('  “ 450 mm ”  ')).toBe('450 mm');
    expect(withinTypographic('“”')).toBe('');
    expect(withinTypographic('a“450”')).toBeNull();
    expect(withinTypographic('“450”a')).toBeNull();
  });

  it('is not looked into beyond 40 characters, and shown without the blanks round it', () => {
    const text = (length: number): string => '1,5 mm'.padEnd(length, '!');
    expect(refusal(() => parseLength(text(40), 'mm')).message).toBe(`"${text(40)}" has a comma`);
    expect(refusal(() => parseLength(text(41), 'mm')).message).toBe(`"${text(40)}…" is not a length`);
    expect(refusal(() => parseLength(' 1,5 mm ', 'mm')).message).toBe('"1,5 mm" has a comma');
  });

  it('has a second number without a unit', () => {
    expect(refusal(() => parseLength('2 ft 6', 'mm')).message).toBe('"2 ft 6" has more in it than a length');
  });
});

describe('a size as it is often written', () => {
  it('without a sign between its sides is shown with one', () => {
    expect(refusal(() => parseSize('2440 by 1220', 'mm')).remedy).toBe(
      'write 2440 x 1220, with a unit unless it is that of the file',
    );
  });

  it.each(['2440', 'wide', '1x2x3'])('%s is shown an example', (text) => {
    expect(refusal(() => parseSize(text, 'mm')).remedy).toBe('write width x height, such as 2440x1220 or 8 ft x 4 ft');
  });

  it('stands in the quotation marks of a text program, or has a comma', () => {
    const quoted = refusal(() => parseSize('“2440x1220”', 'mm'));
    expect(quoted.message).toBe('"“2440x1220”" is in typographic quotation marks');
    expect(quoted.remedy).toBe('write 2440x1220, or use straight marks');
    expect(refusal(() => parseSize('1,5x2 m', 'mm')).message).toBe('"1,5x2 m" has a comma');
  });

  it('takes the unit of its second side for a first that has none, and for no other', () => {
    expect(parseSize('  8 x 4 ft ', 'mm')).toEqual({ width: 8 * 304.8, height: 4 * 304.8 });
    expect(refusal(() => parseSize('2 ft 6 x 4 ft', 'mm')).message).toContain('"2 ft 6"');
  });

  it('is taken as it stands where one side has a unit, and at the end of what is usual', () => {
    expect(parseUsualSize('2 ft x 5', 'mm')).toEqual({ width: 609.6, height: 5 });
    expect(parseUsualSize('6x6', 'm')).toEqual({ width: 6000, height: 6000 });
  });
});

describe('what a workshop says', () => {
  it('is a fraction where one fits, and thousandths where none does', () => {
    // 1/64 in is 0.396875 mm
    expect(formatLength(0.396875, 'in')).toBe('1/64 in');
    expect(formatLength(0.385, 'in')).toBe('0.015 in');
    expect(nearestFraction(25.4, 64)).toEqual({ negative: false, integer: 1, over: 0, under: 1, error: 0 });
  });

  it('turns every length of a list', () => {
    expect(proseIn('2.54, 25.4 and 50.8 mm', 'in')).toBe('3/32 in, 1 in and 2 in');
  });

  it('knows units by their words', () => {
    expect(unitNamed(' Inches ')).toBe('in');
    expect(unitNamed('furlong')).toBeNull();
    expect(refusal(() => parseLength('wide', 'mm')).name).toBe('LengthError');
  });
});
