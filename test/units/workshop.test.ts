/**
 * Lengths, masses and areas as a workshop of inches or of millimetres has them. Exact by definition: the inch is
 * 25.4 mm, the foot 304.8 mm, the mile 1609.344 m, the pound 0.45359237 kg (international yard and pound agreement,
 * 1959; NIST SP 811, appendix B). The quotients below were worked out by hand from these.
 */
import { describe, expect, it } from 'vitest';
import { formatFraction, formatLength, nearestDrill, proseIn, reachIn } from '../../lib/units/index.js';
import { imperial } from '../../lib/output/shop/printing.js';
import { formatArea, formatMass } from '../../lib/units/prose.js';
import { parseAngle } from '../../lib/units/angle.js';
import { wrapped } from '../../lib/units/wrap.js';

describe('what is between thin and thick', () => {
  it.each([
    // 1 mm is 2.52 sixty-fourths, 2.2 mm is 5.54
    [1, '3/64 in'],
    [2.2, '3/32 in'],
    // below a thirty-second, 0.79 mm, no rule is read
    [0.75, '0.03 in'],
    [0.53, '0.021 in'],
  ])('%d mm is %s', (mm, text) => {
    expect(formatLength(mm, 'in')).toBe(text);
  });
});

describe('lists of lengths that state their unit once', () => {
  it.each([
    ['gauges of 5, 10, 20 mm', 'gauges of 13/64 in, 25/64 in, 25/32 in'],
    ['from 3 to 4 mm', 'from 1/8 in to 5/32 in'],
    ['a gap of 1.5 or 2 mm at 2 places', 'a gap of 1/16 in or 5/64 in at 2 places'],
    ['an M6 bolt, 40 mm', 'an M6 bolt, 1-37/64 in'],
  ])('%s: all of them are converted', (metric, inch) => {
    expect(proseIn(metric, 'in')).toBe(inch);
    expect(proseIn(metric, 'mm')).toBe(metric);
  });
});

// diameters as handbooks of machinists print them after ASME B94.11M, from memory
describe('drills by number and letter', () => {
  it.each([
    [0.228, 'no. 1'],
    [0.201, 'no. 7'],
    [0.159, 'no. 21'],
    [0.1495, 'no. 25'],
    [0.1285, 'no. 30'],
    [0.098, 'no. 40'],
    [0.07, 'no. 50'],
    [0.04, 'no. 60'],
    [0.234, 'letter A'],
    [0.257, 'letter F'],
    [0.332, 'letter Q'],
    [0.413, 'letter Z'],
  ])('%d in is %s', (inches, name) => {
    expect(nearestDrill(inches)).toEqual({ name, inches });
  });

  it('are named on drawings where no fraction will do', () => {
    const { drill } = imperial(64);
    // 4 mm is 0.1575 in: no. 22 is 0.157, the nearest fraction 5/32 is 0.15625 and 0.03 mm off
    expect(drill(4)).toBe('0.157 (no. 22)');
    // 5/32 in itself
    expect(drill(3.96875)).toBe('5/32');
    // 2.5 mm is 0.0984 in: no. 40 is 0.098 in
    expect(drill(2.5)).toBe('0.098 (no. 40)');
  });
});

describe('lengths in a workshop of inches', () => {
  it.each([
    [19.05, '3/4 in'],
    [440.928125, '17-23/64 in'],
    [23 * 25.4, '23 in'],
    [24 * 25.4, '2 ft'],
    [24.5 * 25.4, '2 ft 1/2 in'],
    [31 * 25.4, '2 ft 7 in'],
    [52 * 25.4, '4 ft 4 in'],
    [-19.05, '-3/4 in'],
    [-30 * 25.4, '-2 ft 6 in'],
    [0, '0 in'],
    // 0.021 in, of which 1/64 in would be off by a quarter
    [0.5334, '0.021 in'],
    [-0.5334, '-0.021 in'],
  ])('%d mm is %s', (mm, text) => {
    expect(formatLength(mm, 'in')).toBe(text);
    expect(formatLength(mm, 'ft')).toBe(text);
  });

  it('are decimals where digits are asked for', () => {
    // 12.345/25.4 = 0.48602
    expect(formatLength(12.345, 'in', 2)).toBe('0.49 in');
    expect(formatLength(3048, 'ft', 0)).toBe('10 ft');
  });

  it('have a sign as fractions, but none where they round to nothing', () => {
    expect(formatFraction(-9.525, 32)).toBe('-3/8"');
    expect(formatFraction(-0.01, 32)).toBe('0"');
    expect(formatFraction(25.4, 32)).toBe('1"');
  });
});

describe('metric lengths', () => {
  it.each([
    [0.05, 'mm', '0.05 mm'],
    [-0.45, 'mm', '-0.45 mm'],
    [0.56, 'mm', '0.6 mm'],
    [12.34, 'mm', '12.3 mm'],
    [-0.001, 'mm', '0 mm'],
    [12.34, 'cm', '1.23 cm'],
    [1234.4, 'm', '1.234 m'],
  ] as const)('%d mm in %s is %s', (mm, unit, text) => {
    expect(formatLength(mm, unit)).toBe(text);
  });
});

describe('masses and areas', () => {
  it('are pounds and square feet, or kilograms and square metres', () => {
    // 12/0.45359237 = 26.455; 1/0.09290304 = 10.764; 1.234567/0.09290304 = 13.2888
    expect(formatMass(12, 'in')).toBe('26.5 lb');
    expect(formatMass(12.34, 'mm')).toBe('12.3 kg');
    expect(formatMass(12.34, 'mm', 0)).toBe('12 kg');
    expect(formatArea(1e6, 'in')).toBe('10.8 sq ft');
    expect(formatArea(1_234_567, 'in', 3)).toBe('13.29 sq ft');
    expect(formatArea(1_234_567, 'in', 1)).toBe('13.3 sq ft');
    expect(formatArea(2_506_000, 'mm')).toBe('2.51 m²');
  });

  it('reach is rounded up to whole inches', () => {
    expect(reachIn('in')(100)).toBe('4 in');
    expect(reachIn('in')(101.6)).toBe('4 in');
    expect(reachIn('in')(102)).toBe('5 in');
    expect(reachIn('mm')(100)).toBe('100 mm');
  });
});

describe('sentences', () => {
  const said = 'a hole of 19.05 mm, -19.05 mm off; 12.75 kg on 2.25 m², glue for each m², at 8.75 m/s';

  it('stay as they are in a metric workshop', () => {
    expect(proseIn(said, 'mm')).toBe(said);
    expect(proseIn(said, 'cm')).toBe(said);
  });

  it('turn into inches, pounds, square feet and miles an hour', () => {
    // 12.75/0.45359237 = 28.109; 2.25/0.09290304 = 24.219; 8.75·3600/1609.344 = 19.573
    expect(proseIn(said, 'in')).toBe(
      'a hole of 3/4 in, -3/4 in off; 28.1 lb on 24.2 sq ft, glue for each 10.8 sq ft, at 19.6 mph',
    );
    expect(proseIn('254 mm, 12 kg, 12 m², 12 m/s', 'in')).toBe('10 in, 26.5 lb, 129.2 sq ft, 26.8 mph');
  });

  it('keep what no workshop measures, and what is no number of its own', () => {
    for (const kept of [
      '800 W/m², 3 W/(m²K), 0.5 m²K/W',
      'M5x19 mm',
      '1/20 mm',
      '12 mms, 12 kgs, 12 m/sec',
      'x12 kg, x12 m², x12 m/s',
    ])
      expect(proseIn(kept, 'in')).toBe(kept);
  });
});

describe('angles', () => {
  it.each([
    ['.5 rad', 0.5],
    ['1.25 rad', 1.25],
    ['-2 mrad', -0.002],
    [' 90 ', Math.PI / 2],
    ['1 degree', Math.PI / 180],
    ['180 DEG', Math.PI],
    ['+45°', Math.PI / 4],
  ])('%j is %d rad', (text, radians) => {
    expect(parseAngle(text)).toBeCloseTo(radians, 14);
  });

  it.each(['x30', '30 x', '30 grad', '', '.'])('%j is none', (text) => {
    expect(() => parseAngle(text)).toThrow(`"${text}" is not an angle`);
  });
});

describe('lines of words', () => {
  it('are as long as there is width for', () => {
    expect(wrapped('  cut the ribs\n first ', 8)).toEqual(['cut the', 'ribs', 'first']);
    expect(wrapped('cut', 40)).toEqual(['cut']);
    expect(wrapped('cut the', 7)).toEqual(['cut the']);
    expect(wrapped('cut the', 6)).toEqual(['cut', 'the']);
    expect(wrapped('countersink it', 4)).toEqual(['countersink', 'it']);
  });

  it('are measured by a font where one is given', () => {
    expect(wrapped('a b c', 10, (line) => 5 * line.length)).toEqual(['a', 'b', 'c']);
    expect(wrapped('a b c', 15, (line) => 5 * line.length)).toEqual(['a b', 'c']);
  });
});
