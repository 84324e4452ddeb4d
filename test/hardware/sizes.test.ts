/** Sizes of screws, bolts and dowels against the standards that name them. */
import { describe, expect, it } from 'vitest';
import {
  bolt,
  boltForHole,
  boltLengthFor,
  bolts,
  dowels,
  pinFor,
  screwLengthWithin,
  woodScrew,
  woodScrews,
  woodScrewWithin,
} from '../../lib/hardware/index.js';

const inch = 25.4;

describe('bolts', () => {
  // ISO 273, clearance holes, medium series
  it.each([
    ['M3', 3.4],
    ['M4', 4.5],
    ['M5', 5.5],
    ['M6', 6.6],
    ['M8', 9],
    ['M10', 11],
    ['M12', 13.5],
    ['M16', 17.5],
  ])('%s passes a hole of %f mm', (size, hole) => {
    expect(bolt(size).clearance).toBe(hole);
  });

  it('are long enough for washers, nut and a thread past it', () => {
    // M8: two washers of 1.6 and a nut of 6.8 (ISO 7089, ISO 4032, from memory) on a grip of 60
    expect(boltLengthFor(bolt('M8'), 60)).toBe(80);
    expect(boltLengthFor(bolt('M8'), 1000)).toBeNull();
    for (const one of bolts) for (const length of one.lengths) expect(boltLengthFor(one, length)).not.toBe(length);
  });
});

describe('bolts and nuts of both systems', () => {
  // ASME B18.2.8 (from memory): normal fit up to 3/8 in, close fit for 1/2 in
  it.each([
    ['1/4 in', 9 / 32],
    ['5/16 in', 11 / 32],
    ['3/8 in', 13 / 32],
    ['1/2 in', 17 / 32],
  ])('%s passes a hole of %f in', (size, hole) => {
    expect(bolt(size).clearance).toBeCloseTo(hole * inch, 9);
  });

  it('are the thickest that pass a hole, close fits included', () => {
    // ISO 273, fine series: M8 in a hole of 8.4 mm; ASME B18.2.8, close fit (from memory): 1/4 in in 17/64 in
    expect(boltForHole(8.4, 'metric').size).toBe('M8');
    expect(boltForHole(7.9, 'metric').size).toBe('M6');
    expect(boltForHole((17 / 64) * inch, 'inch').size).toBe('1/4 in');
  });

  it('have nuts of 0.8 to 0.95 diameters (ISO 4032), or of 7/8 (ASME B18.2.2); both from memory', () => {
    for (const { system, size, diameter, nut } of bolts) {
      if (system === 'metric') {
        expect(nut / diameter, size).toBeGreaterThanOrEqual(0.8 - 1e-9);
        expect(nut / diameter, size).toBeLessThan(0.95);
      } else if (diameter >= inch / 4) expect(Math.abs(nut - (7 / 8) * diameter), size).toBeLessThan(0.01 * inch);
    }
  });

  it('leave a thread past the nut of a bolt that is just long enough, whatever the size', () => {
    // two washers and a nut over the grip: M10 2 and 8.4 mm (ISO 7089, ISO 4032; from memory); one mm is a tenth of M10
    expect(boltLengthFor(bolt('M10'), 70 - 4 - 8.4 - 1)).toBe(70);
    expect(boltLengthFor(bolt('M10'), 70 - 4 - 8.4 - 0.9)).toBe(80);
  });
});

describe('wood screws', () => {
  // ASME B18.6.1: 0.060 in + 0.013 in a number
  it.each([
    ['no 4', 0.112],
    ['no 6', 0.138],
    ['no 8', 0.164],
    ['no 10', 0.19],
    ['no 12', 0.216],
    ['no 14', 0.242],
  ])('%s is %f in thick', (size, inches) => {
    expect(woodScrew(size).diameter).toBeCloseTo(inches * inch, 9);
  });

  // a boatyard's chart: clearance, and pilot in hardwood
  it.each([
    ['no 8', 11 / 64, 7 / 64],
    ['no 10', 3 / 16, 1 / 8],
  ])('%s has its holes', (size, clearance, pilot) => {
    expect(woodScrew(size).clearance).toBeCloseTo(clearance * inch, 9);
    expect(woodScrew(size).pilot).toBeCloseTo(pilot * inch, 9);
  });

  // the same chart, clearance alone
  it.each([
    ['no 12', 7 / 32],
    ['no 14', 1 / 4],
  ])('%s passes a hole of %f in', (size, clearance) => {
    expect(woodScrew(size).clearance).toBeCloseTo(clearance * inch, 9);
  });

  it('by number have a pilot within a drill’s step of 90 % of the root, and heads twice as wide as the shank', () => {
    // American Wood Council, hardwood: 90 % of the root; root two thirds of the shank, drills by 1/64 in, heads of about
    // two shanks (ASME B18.6.1): from memory
    for (const { system, size, diameter, pilot, headDiameter } of woodScrews) {
      if (system === 'inch') expect(Math.abs(pilot - 0.9 * (2 / 3) * diameter), size).toBeLessThan(inch / 64);
      expect(headDiameter / diameter, size).toBeGreaterThan(1.95);
      expect(headDiameter / diameter, size).toBeLessThan(2.1);
    }
  });

  // ISO 273, fine series
  it.each([
    ['2.5', 2.7],
    ['3', 3.2],
    ['3.5', 3.7],
    ['4', 4.3],
    ['4.5', 4.8],
    ['5', 5.3],
    ['6', 6.4],
  ])('of %s mm pass holes at or above the fine series', (size, fine) => {
    const { clearance } = woodScrew(size);
    expect(clearance).toBeGreaterThanOrEqual(fine);
    expect(clearance - fine).toBeLessThan(0.5);
  });

  it('have a pilot of 70 to 90 % of the root and heads that cover their hole', () => {
    // American Wood Council: 70 % of the root in softwood, 90 % in hardwood; root two thirds of the shank, from memory
    for (const { system, diameter, pilot, headDiameter, clearance } of woodScrews) {
      if (system === 'metric') {
        expect(pilot).toBeGreaterThan((0.7 * 2 * diameter) / 3 - 0.25);
        expect(pilot).toBeLessThan((0.9 * 2 * diameter) / 3 + 0.25);
      }
      expect(headDiameter).toBeGreaterThan(1.4 * clearance);
    }
  });

  it('are the longest that stay within the wood, and the thickest that suit it', () => {
    expect(screwLengthWithin(woodScrew('4'), 34)).toBe(30);
    expect(screwLengthWithin(woodScrew('4'), 35)).toBe(35);
    expect(screwLengthWithin(woodScrew('4'), 15)).toBeNull();
    expect(screwLengthWithin(woodScrew('no 8'), 1.5 * inch)).toBeCloseTo(1.5 * inch, 9);
    expect(woodScrewWithin(4.4, 'metric').size).toBe('4');
    expect(woodScrewWithin(0.1 * inch, 'inch').size).toBe('no 4');
  });
});

describe('dowels and pins', () => {
  it('are as thick as their names say', () => {
    for (const { size, diameter } of dowels) {
      const [, over, under, unit] = /^(\d+)(?:\/(\d+))? (mm|in)$/.exec(size) ?? [];
      const measure = Number(over) / Number(under ?? 1);
      expect(diameter, size).toBeCloseTo(unit === 'in' ? measure * inch : measure, 9);
    }
  });

  it('go as deep into the rib as asked', () => {
    const { pin, length } = pinFor(3, 12, 'metric');
    expect(pin.diameter).toBe(1.2);
    expect(length).toBe(15);
    const thick = pinFor(6, 20, 'metric');
    expect([thick.pin.diameter, thick.length]).toEqual([1.4, 30]);
  });
});
