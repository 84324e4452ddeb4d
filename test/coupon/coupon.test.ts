import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { proveFolder } from '../../lib/check/index.js';
import { type Answer, answerOf, readReadings } from '../../lib/coupon/index.js';
import type { Design } from '../../lib/design/index.js';
import { diagnosticText } from '../../lib/diagnostic/index.js';
import { buildCoupons } from '../../lib/pipeline.js';
import type { Job } from '../../lib/pipeline/types.js';
import { bench, filledIn, type Machine, slotWidth } from '../helpers/coupon-bench.js';
import { designOf, fixture, fixtureText } from '../helpers/fixtures.js';
import { randomNester } from '../helpers/random-nester.js';
import { holds } from '../helpers/seeds.js';

const couponsOf = (design: Design, material: string): Promise<Job> =>
  buildCoupons(design, [material], 'design.yaml', randomNester(1));

const laser = await couponsOf(fixture('table-top'), 'ply5');
const router = await couponsOf(fixture('press-house'), 'birch12');
/** A coupon that was cut with what an earlier one had shown. */
const again = await couponsOf(
  designOf(`${fixtureText('table-top')}
machine:
  calibration:
    axes: { cutBy: laser, date: 2026-01-31, scaleX: 1.0021, scaleY: 0.9988, squarenessMmPerM: 1.7 }
    materials: { ply5: { cutBy: laser, date: 2026-01-31, thickness: 5, width: 0.31, bore: -0.08 } }
`),
  'ply5',
);

/** The text of the file of readings as a machine and its callipers would have it filled in. */
function readingsText(job: Job, material: string, machine: Machine, step: number, thickness: number): string {
  const template = job.files.get(`measured-${material}.yaml`) as string;
  const read = readReadings(filledIn(template, new Map(), { step, thickness: [thickness] }), 'x');
  // an empty file is refused for its blanks, so the readings are taken from the coupon that the same cut gives
  expect(read.kind).toBe('refused');
  const measure = bench(job, machine);
  const values = new Map(readingsOf(template).map((reading) => [reading.id, measure(reading)]));
  const plays =
    /first slot that the tab can be pushed into by hand: ([\d., -]+)/.exec(template)?.[1]?.split(', ') ?? [];
  // pressed by hand it wants a play of 0.12 mm
  const fit = plays.find((_, i) => slotWidth(job, machine, material, i) >= thickness + 0.12) ?? 'none';
  return filledIn(template, values, { step, thickness: [thickness], fit });
}

/** The readings of a template: the reader itself knows them. */
function readingsOf(template: string) {
  const nominal = new Map(
    [...template.matchAll(/^ {2}([\w.-]+): +# ([\d.]+):/gm)].map(([, id = '', value = '']) => [id, Number(value)]),
  );
  const read = readReadings(filledIn(template, nominal, { step: 0.001, thickness: [5] }), 'x');
  if (read.kind === 'refused') throw new Error(read.problems.map(diagnosticText).join('\n'));
  return read.readings.measured.map(({ reading }) => reading);
}

function answer(text: string): Answer {
  const read = readReadings(text, 'measured.yaml');
  if (read.kind === 'refused') throw new Error(read.problems.map(diagnosticText).join('\n'));
  const answered = answerOf(read.readings);
  if (answered.kind === 'refused') throw new Error(answered.problems.map(diagnosticText).join('\n'));
  return answered.answer;
}

const machines = (width: { readonly min: number; readonly max: number }) =>
  fc.record({
    scaleX: fc.double({ min: 0.996, max: 1.004, noNaN: true }),
    scaleY: fc.double({ min: 0.996, max: 1.004, noNaN: true }),
    lean: fc.double({ min: -0.004, max: 0.004, noNaN: true }),
    width: fc.double({ ...width, noNaN: true }),
    bore: fc.double({ min: -0.15, max: 0.15, noNaN: true }),
    drilled: fc.constant(0.07),
    depth: fc.double({ min: -0.2, max: 0.2, noNaN: true }),
  });

describe('a coupon', () => {
  it.each([
    ['laser', laser],
    ['router', router],
    ['a machine that is calibrated', again],
  ])('is proven like any other folder: %s', (_, job) => {
    expect(job.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(proveFolder(job.files).faults).toEqual([]);
  });

  it('may have its readings filled in, and nothing else', () => {
    const filled = new Map(laser.files);
    const name = 'measured-ply5.yaml';
    filled.set(name, (filled.get(name) as string).replace('units:', 'units: mm'));
    expect(proveFolder(filled).ok).toBe(true);
    filled.set('cut-list.csv', `${filled.get('cut-list.csv') as string} `);
    expect(proveFolder(filled).ok).toBe(false);
  });

  it('lies as it is drawn, with every reading within the reach of 150 mm callipers', () => {
    for (const job of [laser, router]) {
      for (const { nested } of job.sheets)
        for (const { rotationDeg, mirrored } of nested.placed) expect([rotationDeg, mirrored]).toEqual([0, false]);
    }
    for (const { nominal } of readingsOf(router.files.get('measured-birch12.yaml') as string))
      expect(nominal).toBeLessThan(150);
  });

  // the numbers asked for: 0.02 mm and 0.02 %, with callipers that read 0.01 or 0.02 mm
  it.each([
    ['laser', laser, 'ply5', { min: 0.05, max: 0.5 }, 5],
    ['router', router, 'birch12', { min: 5.85, max: 6.2 }, 12],
    ['laser once more', again, 'ply5', { min: 0.05, max: 0.5 }, 5],
  ] as const)('recovers what a machine does from its callipers: %s', (_, job, material, width, thickness) => {
    holds(
      fc.property(machines(width), fc.constantFrom(0.01, 0.02), (machine, step) => {
        const { solved } = answer(readingsText(job, material, machine, step, thickness));
        expect(Math.abs(solved.width.value - machine.width)).toBeLessThan(0.02);
        expect(Math.abs(solved.scaleX.value - machine.scaleX)).toBeLessThan(0.0002);
        expect(Math.abs(solved.scaleY.value - machine.scaleY)).toBeLessThan(0.0002);
        expect(Math.abs(solved.lean.value - machine.lean)).toBeLessThan(0.0002);
        // a bore is what is left of a reading (rounded by 0.01) without the width (0.02), and a hole of 20 mm is an ellipse
        expect(Math.abs((solved.bore?.value ?? NaN) - machine.bore)).toBeLessThan(0.035);
      }),
      { numRuns: 8, night: 200 },
    );
  });

  it('states uncertainties that cover its errors about as often as they should', () => {
    const covered: boolean[] = [];
    holds(
      fc.property(machines({ min: 0.05, max: 0.5 }), (machine) => {
        const { solved } = answer(readingsText(laser, 'ply5', machine, 0.02, 5));
        for (const [estimate, real] of [
          [solved.width, machine.width],
          [solved.scaleX, machine.scaleX],
          [solved.scaleY, machine.scaleY],
          [solved.lean, machine.lean],
        ] as const)
          covered.push(Math.abs(estimate.value - real) <= 2 * estimate.uncertainty);
      }),
      { numRuns: 8, night: 200 },
    );
    // twice the standard uncertainty covers 95 of 100 (JCGM 100:2008, G.6.6)
    expect(covered.filter(Boolean).length / covered.length).toBeGreaterThan(0.9);
  });

  it('finds the play by hand from the slot that took the tab, as wide as it came out', () => {
    const machine = { scaleX: 1, scaleY: 1, lean: 0, width: 0.27, bore: 0, drilled: 0, depth: 0 };
    const { fit } = answer(readingsText(laser, 'ply5', machine, 0.01, 5));
    // the first slot of 0.05 mm steps in which 0.12 mm are left
    expect(fit?.value).toBeGreaterThan(0.11);
    expect(fit?.value).toBeLessThan(0.18);
  });
});

const sound = (): string =>
  readingsText(
    laser,
    'ply5',
    { scaleX: 1.001, scaleY: 1, lean: 0.001, width: 0.25, bore: 0, drilled: 0, depth: 0 },
    0.02,
    5,
  );

/** What a file of readings is refused with. */
function refusal(text: string): { readonly code: string; readonly line: number | undefined; readonly text: string }[] {
  const read = readReadings(text, 'measured.yaml');
  const problems =
    read.kind === 'refused'
      ? read.problems
      : ((answered) => (answered.kind === 'refused' ? answered.problems : []))(answerOf(read.readings));
  return problems.map((one) => ({ code: one.code, line: one.place?.line, text: diagnosticText(one) }));
}

describe('a file of readings that is not right', () => {
  const lineOf = (text: string, key: string): number =>
    text.split('\n').findIndex((line) => line.includes(`${key}:`)) + 1;

  it('is refused for a reading that is blank, with its line and what would do', () => {
    const text = sound().replace(/window-x: .*/, 'window-x:');
    expect(refusal(text)).toMatchObject([{ code: 'reading-missing', line: lineOf(text, 'window-x') }]);
    expect(refusal(text)[0]?.text).toMatch(/window-x is blank.*about 60 mm.*none/s);
  });

  it('is refused without a unit', () => {
    expect(refusal(sound().replace('units: mm', 'units:'))).toMatchObject([{ code: 'reading-unit', line: 3 }]);
  });

  it('is refused for a value that cannot be', () => {
    const text = sound().replace(/bar-x-low: .*/, 'bar-x-low: 10.02');
    expect(refusal(text)).toMatchObject([{ code: 'reading-value', line: lineOf(text, 'bar-x-low') }]);
    expect(refusal(text)[0]?.text).toMatch(/10.02 mm.*about 100 mm/s);
    expect(refusal(sound().replace(/bar-x-low: .*/, 'bar-x-low: wide'))[0]?.code).toBe('reading-value');
  });

  it('is refused for readings that contradict each other, and says which', () => {
    for (const [key, to] of [
      ['tongue-2', 0.5],
      ['bar-x-high', 0.4],
      ['window-y', -0.4],
    ] as const) {
      const text = sound().replace(
        new RegExp(`${key}: (.*)`),
        (_, value: string) => `${key}: ${(Number(value) + to).toFixed(2)}`,
      );
      expect(refusal(text)[0]).toMatchObject({ code: 'reading-contradiction' });
      expect(refusal(text)[0]?.text).toContain(`${key} of`);
    }
    const diagonals = sound().replace(
      /(diagonal-[AB]-[CD]): (.*)/g,
      (_, key: string, value: string) => `${key}: ${Number(value) - 1}`,
    );
    expect(refusal(diagonals)[0]?.text).toContain('the diagonals of');
  });

  it('is refused for a slot that is not there, a key that is not known, and a cut that was changed', () => {
    expect(refusal(sound().replace(/^fit: .*/m, 'fit: 0.17'))[0]?.text).toContain('no slot has that number');
    expect(refusal(sound().replace('bar-x-low:', 'bar-x-lower:')).map(({ code }) => code)).toEqual([
      'reading-value',
      'reading-missing',
    ]);
    expect(refusal(sound().replace('cutBy: laser', 'cutBy: saw'))[0]?.text).toContain(
      'the section cut has been changed',
    );
    expect(refusal('[1, 2]')[0]?.code).toBe('wrong-type');
    expect(refusal('a: [')[0]?.text).toContain('this line, or the one above it, cannot be read');
    expect(refusal(`${sound()}units: mm\n`)[0]?.text).toContain('the name on this line occurs twice');
  });

  it('does without readings that could not be taken, as long as enough are there', () => {
    const without = (...keys: string[]): string =>
      keys.reduce((text, key) => text.replace(new RegExp(`${key}: .*`), `${key}: none`), sound());
    expect(refusal(without('bar-x-low', 'bored-10', 'bored-16', 'bored-20'))).toEqual([]);
    expect(refusal(without('bar-y-left', 'bar-y-right'))[0]?.text).toContain('a bar along Y');
    expect(refusal(without('window-x', 'window-y', 'gap-1', 'gap-2'))[0]?.text).toContain('inside jaws');
  });
});
