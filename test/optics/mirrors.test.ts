import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Design, readDesign, shapeOf } from '../../lib/design/index.js';
import { solveDish } from '../../lib/dish/index.js';
import { forecast, inputProblems, opticsInput } from '../../lib/optics/index.js';
import { mirrorOfDesign } from '../../lib/optics/mirrors.js';
import { intercepts, squaredRadii } from '../../lib/optics/spot.js';
import { trace } from '../../lib/optics/trace.js';
import { careRows } from '../../lib/optics/summary.js';
import { estimate } from '../../lib/optics/estimate.js';
import { inputOf, perfect, smoothDish } from './dishes.js';

const pressHouse = readFileSync(new URL('../../fixtures/press-house.yaml', import.meta.url), 'utf8');
const stated = 'reflector: { material: aluminium, finish: bright-anodised }';

function designWith(reflector: string, more: (text: string) => string = (text) => text): Design {
  expect(pressHouse).toContain(stated);
  const reading = readDesign(more(pressHouse.replace(stated, reflector)));
  if (reading.kind !== 'design') throw new Error(reading.problems.map(({ message }) => message).join('\n'));
  return reading.design;
}

const inputFrom = (design: Design) => opticsInput(design, solveDish(shapeOf(design), 0.01));

describe('the mirror', () => {
  // specular reflectance of new mirrors, Duffie and Beckman, Solar Engineering of Thermal Processes (from memory): Alzac
  // 0.85; foil 0.86; white plate glass silvered behind 0.88; aluminised polyester 0.76. A laminate of aluminium under
  // polyester: 0.77 new, 0.42 after 2000 h of damp heat (Brogren et al. 2004)
  it.each([
    ['bright-anodised', 0.85, 0.85],
    ['foil', 0.76, 0.86],
    ['mirror-tiles', 0.76, 0.88],
    ['mirror-film', 0.76, 0.77],
  ])('of finish %s reflects what is published for it', (finish, low, high) => {
    const { reflectance, name } = mirrorOfDesign(designWith(`reflector: { material: aluminium, finish: ${finish} }`));
    expect(reflectance).toBeGreaterThanOrEqual(low);
    expect(reflectance).toBeLessThanOrEqual(high);
    expect(name).toContain(', new');
  });

  it.each(['mirror-film', 'bright-anodised', 'rolled', 'foil', 'crinkled-foil', 'mirror-tiles'])(
    'of finish %s gets dimmer and hazier outdoors',
    (finish) => {
      const fresh = mirrorOfDesign(designWith(`reflector: { finish: ${finish} }`));
      const old = mirrorOfDesign(designWith(`reflector: { finish: ${finish}, state: weathered }`));
      expect(old.reflectance).toBeLessThan(fresh.reflectance);
      expect(old.specularityMrad).toBeGreaterThan(fresh.specularityMrad);
    },
  );

  it.each([
    ['thick aluminium is plain until its finish is stated', (text: string) => text, 'plain rolled'],
    ['thin aluminium is foil', (text: string) => text.replace('thickness: 0.3,', 'thickness: 0.02,'), 'foil'],
    ['film is mirror film', (text: string) => text.replace('kind: aluminium', 'kind: film'), 'mirror film'],
  ])('%s', (_, more, name) => {
    expect(mirrorOfDesign(designWith('reflector: { material: aluminium }', more)).name).toContain(name);
  });

  it('is not there on bare board: an error, and no share of the light by default', () => {
    const input = inputFrom(designWith(''));
    expect(input.reflector.reflectance).toBe(0);
    const [problem] = inputProblems(input);
    expect(problem?.code).toBe('no-mirror');
    expect(problem?.severity).toBe('error');
    expect(inputProblems(inputFrom(designWith('reflector: { reflectance: 0.8 }')))).toEqual([]);
    expect(inputProblems(inputFrom(designWith('reflector: { finish: mirror-tiles }')))).toEqual([]);
  });

  it('of flat tiles spreads the light along the panel by their length', () => {
    // a flat tile of side s sends a beam as wide as s·cos ψ at 2ψ to the axis: across the axis it covers s·cos ψ/cos 2ψ,
    // evenly (plane geometry); on this shallow dish that is s to some per cent, 1.024 s at the rim
    const [tile, f] = [50, 3000];
    const rays = trace(perfect(smoothDish({ focalLength: f }), { tile }));
    const squared = squaredRadii(rays, f);
    const slope = Math.atan((0.707 * 750) / (2 * f));
    const reach = ((tile / 2) * Math.cos(slope)) / Math.cos(2 * slope);
    for (const share of [0.25, 0.5, 0.75])
      expect(Math.abs(estimate(intercepts(rays, squared, share * reach)).value - share)).toBeLessThan(0.01);
    expect(estimate(intercepts(rays, squared, 1.05 * reach)).value).toBe(1);
  });
});

describe('care', () => {
  const input = inputOf({ vessel: { diameter: 120 }, sun: { slopeErrorGoodMrad: 1, slopeErrorPoorMrad: 12 } });
  const made = forecast(input, { seed: 3, rays: 65_536 });

  it('is what a forecast with that waviness says', () => {
    const poor = forecast({ ...input, sun: { ...input.sun, slopeErrorMrad: 12 } }, { seed: 3, rays: 16_384 });
    expect(made.care.poor.takenUpW!.value).toBeCloseTo(poor.power.takenUpW.value, 6);
    // traced with more rays here than there
    const aside = poor.vessel!.aim.toleranceDeg.aside;
    const error = Math.hypot(aside.standardError, made.care.poor.toleranceDeg!.standardError);
    expect(Math.abs(made.care.poor.toleranceDeg!.value - aside.value)).toBeLessThan(4 * error + 0.01);
    expect(made.care.usual.takenUpW).toEqual(made.power.takenUpW);
  });

  it('costs power, peak and spot from level to level', () => {
    const { good, usual, poor } = made.care;
    expect(good.takenUpW!.value).toBeGreaterThan(usual.takenUpW!.value);
    expect(usual.takenUpW!.value).toBeGreaterThan(poor.takenUpW!.value);
    expect(good.radius90.value).toBeLessThan(usual.radius90.value);
    expect(usual.radius90.value).toBeLessThan(poor.radius90.value);
    const peak = careRows(made).find(({ label }) => label === 'peak across the axis');
    expect(peak?.cells.map(({ value }) => value)).toEqual([good, usual, poor].map(({ peakSuns }) => peakSuns.value));
  });
});
