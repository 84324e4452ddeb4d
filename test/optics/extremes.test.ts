import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { advise, adviceRows, forecast, forecastProblems, inputProblems, summaryRows } from '../../lib/optics/index.js';
import { forecastPlots } from '../../lib/output/plots/index.js';
import { dishOf, inputOf } from './dishes.js';
import { holds } from '../helpers/seeds.js';

const shares = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Dishes and vessels from one end of what a design file may hold to the other. */
const extremes = fc.record({
  ribCount: fc.integer({ min: 3, max: 240 }),
  figure: fc.constantFrom('panel' as const, 'rib' as const),
  apertureRadius: shares(25, 10_000),
  focalRatio: shares(0.5, 20),
  ribThickness: shares(0.3, 30),
  gapShare: shares(0, 0.9),
  facing: shares(0, 10),
  vesselShare: shares(0.001, 1),
  offsetShare: shares(-0.9, 3),
  slopeErrorMrad: shares(0, 100),
  pointingErrorDeg: fc.constantFrom(0, 0.1, 20),
  massKg: fc.constantFrom(0.001, 5, 10_000),
  shape: fc.constantFrom('uniform' as const, 'limb-darkened' as const, 'circumsolar' as const),
  circumsolarRatio: shares(0, 0.8),
  targetC: shares(13, 100),
});

describe('extremes', () => {
  it('still give values, messages and pictures that are numbers, and losses that add up', () => {
    holds(
      fc.property(extremes, (one) => {
        const innerRadius = one.ribThickness / (2 * Math.tan(Math.PI / one.ribCount)) + 5;
        fc.pre(innerRadius < 0.8 * one.apertureRadius);
        const focalLength = one.apertureRadius * one.focalRatio;
        const input = inputOf({
          dish: dishOf({
            ...one,
            focalLength,
            innerRadius,
            seamGap: one.gapShare * one.ribThickness,
            panelThickness: one.facing,
            facingThickness: one.facing,
            reflectorThickness: 0,
          }),
          vessel: {
            diameter: Math.max(1, 2 * one.apertureRadius * one.vesselShare),
            offset: one.offsetShare * focalLength,
          },
          sun: one,
          load: one,
        });
        expect(inputProblems(input)).toEqual([]);
        const result = forecast(input, { rays: 1024, seed: 1 });
        const lost = result.power.losses.reduce((sum, { watts }) => sum + watts.value, 0);
        expect((lost + result.power.takenUpW.value) / result.power.incomingW).toBeCloseTo(1, 9);
        const wrong = /NaN|Infinity|undefined/;
        for (const { value, note } of [...summaryRows(result), ...adviceRows(advise(input, { rays: 512, seed: 1 })!)])
          expect(`${value} ${note ?? ''}`).not.toMatch(wrong);
        for (const { message } of forecastProblems(input, result)) expect(message).not.toMatch(wrong);
        for (const { svg, description } of forecastPlots(result)) expect(svg + description).not.toMatch(wrong);
      }),
      { numRuns: 5, night: 120 },
    );
  });
});
