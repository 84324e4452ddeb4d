import { publishedOffsets } from '../helpers/published-dish.js';
import { describe, expect, it } from 'vitest';
import { heightOnPath, markOut } from '../../lib/parts/marking-out.js';
import { markingTable, writeMarkingOut } from '../../lib/output/index.js';
import { fitArcs } from '../../lib/geometry/index.js';

const parabola = (f: number) => (x: number) => (x * x) / (4 * f);
const mm = { unit: 'mm', division: 0.1 } as const;
const inch = (under: number) => ({ unit: 'in', under }) as const;

describe('marks in mm', () => {
  it('give a published table of a dish, within its rounding', () => {
    const { marks } = markOut(parabola(2260), 1900, { step: 1900 / 6, sagLimit: 0.25, rule: mm });
    expect(marks).toHaveLength(7);
    publishedOffsets.forEach(([x, y], i) => {
      const mark = marks[i + 1]!;
      // the table cuts x off after four digits
      expect(Math.abs(mark.x - 10 * x)).toBeLessThan(1);
      // y is rounded, in the last two rows to a millimetre; the error of x counts at the slope of the curve
      const rounding = (i > 3 ? 0.5 : 0.1) + mark.x / (2 * 2260);
      expect(Math.abs(mark.marked - 10 * y)).toBeLessThan(rounding);
    });
  });

  it('state the sag of a parabola, whose greatest lies on the flattest run', () => {
    // closed form: over a run of s the parabola x²/4f lies s²/16f below its chord, measured upright
    const s = 25;
    const f = 550;
    const { sag } = markOut(parabola(f), 700, { step: s, sagLimit: 0.25, rule: mm });
    const slope = s / (4 * f);
    expect(sag).toBeCloseTo((s * s) / (16 * f) / Math.hypot(1, slope), 9);
  });

  it('advise the largest handy step that keeps to a sag', () => {
    const f = 550;
    const { advisedStep, advisedSag } = markOut(parabola(f), 700, { step: 25, sagLimit: 0.25, rule: mm });
    // s²/16f = 0.25 at 46.9 mm
    expect(advisedStep).toBe(45);
    expect(advisedSag).toBeLessThanOrEqual(0.25);
    expect(markOut(parabola(f), 700, { step: 50, sagLimit: 0.25, rule: mm }).sag).toBeGreaterThan(0.25);
    expect(markOut(parabola(f), 700, { step: 25, sagLimit: 0.002, rule: mm }).advisedStep).toBe(4);
  });

  it('say so when no handy step is fine enough', () => {
    const marking = markOut(parabola(50), 90, { step: 10, sagLimit: 1e-6, rule: mm });
    expect(marking.advisedStep).toBe(1);
    expect(markingTable(marking).notes[1]).toMatch(/^Even a step of 1\.0 mm leaves/);
  });

  it('end at the last reading before the end of the rib', () => {
    const { marks } = markOut(parabola(550), 633.37, { step: 25, sagLimit: 1, rule: mm });
    expect(marks.at(-1)!.x).toBeCloseTo(633.3, 9);
    expect(marks.at(-2)!.x).toBe(625);
    expect(marks.every(({ x, height }) => Math.abs(height - (x * x) / 2200) < 1e-12)).toBe(true);
  });

  it('are no further from the truth than half a division', () => {
    const { marks, rounding } = markOut(parabola(550), 700, {
      step: 7,
      sagLimit: 1,
      rule: { unit: 'mm', division: 0.5 },
    });
    expect(rounding).toBeLessThanOrEqual(0.25);
    expect(rounding).toBe(Math.max(...marks.map(({ height, marked }) => Math.abs(marked - height))));
    for (const { marked } of marks) expect(marked * 2).toBe(Math.round(marked * 2));
  });
});

describe('marks in inches', () => {
  // z = x²/4f in inches, by hand: x²/60
  it('reach 3-3/4 in at the rim of a 30 in dish of f 15 in', () => {
    const marking = markOut(parabola(15 * 25.4), 15 * 25.4, { step: 25.4, sagLimit: 0.25, rule: inch(32) });
    expect(marking.marks).toHaveLength(16);
    expect(markingTable(marking).rows.at(-1)).toEqual(['15"', '3-3/4"', '0.0000']);
    // at 7 in: 49/60 in = 0.8167 in, nearest 26/32 = 0.8125; at 11 in: 121/60 in = 2.0167 in, nearest 65/32 = 2.0313
    expect(markingTable(marking).rows[7]).toEqual(['7"', '13/16"', '-0.0042']);
    expect(markingTable(marking).rows[11]).toEqual(['11"', '2-1/32"', '0.0146']);
  });

  it('round to 1/64 more closely than to 1/32', () => {
    const of = (under: number) => markOut(parabola(500), 600, { step: 25.4, sagLimit: 0.25, rule: inch(under) });
    expect(of(32).rounding).toBeLessThanOrEqual(25.4 / 64);
    expect(of(64).rounding).toBeLessThanOrEqual(25.4 / 128);
    // at 10 in: 100/60 in = 1.6667 in, nearest 107/64 = 1.6719
    const table = markingTable(markOut(parabola(15 * 25.4), 15 * 25.4, { step: 25.4, sagLimit: 0.25, rule: inch(64) }));
    expect(table.rows[10]).toEqual(['10"', '1-43/64"', '0.0052']);
  });
});

describe('heights on a fitted path', () => {
  it('keep to the curve within the fit', () => {
    const f = 550;
    const { path } = fitArcs(
      { from: 100, to: 740, at: (x) => ({ x, y: (x * x) / (4 * f) }), tangent: (x) => ({ x: 1, y: x / (2 * f) }) },
      0.01,
    );
    const height = heightOnPath(path);
    for (let x = 100; x <= 740; x += 0.37) {
      // upright distance is the distance from the curve over the cosine of its slope
      expect(Math.abs(height(x) - (x * x) / (4 * f))).toBeLessThan(0.01 * Math.hypot(1, x / (2 * f)));
    }
    expect(() => height(99)).toThrow(/no height at x = 99/);
  });

  it('knows an arc that bends down from one that bends up', () => {
    const up = [
      { x: 0, y: 0, bulge: 0.2 },
      { x: 10, y: 0, bulge: 0 },
    ];
    const down = up.map((v) => ({ ...v, bulge: -v.bulge }));
    // bulge times half the chord: Autodesk, DXF Reference, LWPOLYLINE
    expect(heightOnPath(up)(5)).toBeCloseTo(-1, 12);
    expect(heightOnPath(down)(5)).toBeCloseTo(1, 12);
  });
});

describe('the written table', () => {
  it('has numbers as numbers, fractions as text, and the notes with the first mark', () => {
    const text = writeMarkingOut(markOut(parabola(500), 60, { step: 25, sagLimit: 0.25, rule: mm }));
    expect(text.split('\r\n').slice(2)).toEqual(['25,0.3,-0.012,', '50,1.3,0.05,', '60,1.8,0,', '']);
    expect(text).toMatch(
      /^x from inner end \(mm\),height above base \(mm\),rounding \(mm\),notes\r\n0,0,0,"At a step of 25\.0 mm/,
    );
    const inches = writeMarkingOut(markOut(parabola(15 * 25.4), 60, { step: 25.4, sagLimit: 0.25, rule: inch(32) }));
    expect(inches).toContain('"1""","1/32""",0.0146,');
  });
});

describe('bad input', () => {
  it.each([
    [{ step: 0, sagLimit: 1, rule: mm }, /the step must be above 0, not 0/],
    [{ step: -5, sagLimit: 1, rule: mm }, /the step must be above 0/],
    [{ step: NaN, sagLimit: 1, rule: mm }, /the step must be above 0/],
    [{ step: 25, sagLimit: 0, rule: mm }, /the sag limit must be above 0/],
    [{ step: 25, sagLimit: 1, rule: inch(0) }, /the rule division must be above 0/],
    [{ step: 0.2, sagLimit: 1, rule: inch(32) }, /finer than the rule/],
    [{ step: 25.4, sagLimit: 1, rule: inch(10) }, /no rule is divided in 1\/10 in; give a power of two/],
  ])('%j is refused', (options, message) => {
    expect(() => markOut(parabola(500), 600, options)).toThrow(message);
  });
});
