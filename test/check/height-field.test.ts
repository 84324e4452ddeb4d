/** The grid of the simulated sheet, held against plain distances from places along the tool's path. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HeightField } from '../../lib/check/router-simulation/field.js';
import { placeOn } from '../../lib/check/router-simulation/level.js';
import type { Motion, SimulatedTool } from '../../lib/check/router-simulation/types.js';
import { holds } from '../helpers/seeds.js';

const width = 60;
const height = 40;
const tool: SimulatedTool = {
  number: 1,
  kind: 'mill',
  diameter: 6,
  cuttingDepth: 20,
  passDepth: 5,
  spindle: 18000,
  feed: 3000,
  plunge: 1000,
  flutes: 2,
  range: {},
};
const depth = fc.double({ min: -8, max: -0.5, noNaN: true });
const place = fc.record({
  x: fc.double({ min: -5, max: width + 5, noNaN: true }),
  y: fc.double({ min: -5, max: height + 5, noNaN: true }),
});
const base = { rapid: false, tool, feed: 3000, file: '', line: 1 };
const straight: fc.Arbitrary<Motion> = fc
  .record({ from: place, to: place, z: depth, fall: fc.constantFrom(0, 0, 0.3, 2), upright: fc.boolean() })
  .map(({ from, to, z, fall, upright }) => ({
    ...base,
    from: { ...from, z },
    to: { ...(upright && fall > 0 ? from : to), z: z - fall },
    turn: null,
  }));
const turned: fc.Arbitrary<Motion> = fc
  .record({
    centre: place,
    radius: fc.double({ min: 0.2, max: 30, noNaN: true }),
    start: fc.double({ min: -3, max: 3, noNaN: true }),
    sweep: fc.double({ min: -6.28, max: 6.28, noNaN: true }),
    z: depth,
  })
  .map(({ centre, radius, start, sweep, z }) => {
    const at = (angle: number) => ({
      x: centre.x + radius * Math.cos(angle),
      y: centre.y + radius * Math.sin(angle),
      z,
    });
    return { ...base, from: at(start), to: at(start + sweep), turn: { cx: centre.x, cy: centre.y, radius, sweep } };
  });

const count = 300;
const path = (motion: Motion) => Array.from({ length: count + 1 }, (_, i) => placeOn(motion, i / count));

describe('the height field', () => {
  it.each([3, 0.8])('falls to the tip wherever a tool of radius %d mm passes, and nowhere else', (radius) => {
    holds(
      fc.property(fc.oneof(straight, turned), (motion) => {
        const field = new HeightField(width, height);
        field.remove(motion, radius, 0);
        const places = path(motion);
        const step = Math.hypot(places[1]!.x - places[0]!.x, places[1]!.y - places[0]!.y);
        for (let i = 0; i < field.heights.length; i += 1) {
          const x = (i % width) + 0.5;
          const y = Math.floor(i / width) + 0.5;
          let reached = 0;
          let near = Infinity;
          for (const at of places) {
            const away = Math.hypot(at.x - x, at.y - y);
            near = Math.min(near, away);
            if (away < radius - 0.1) reached = Math.min(reached, at.z);
          }
          const found = field.heights[i]!;
          // a ramp is taken in steps of a twentieth, at the upper end of each
          if (reached < 0) expect(found).toBeLessThanOrEqual(reached + 0.06);
          if (near > radius + step + 0.03) expect(found).toBe(0);
          expect(found).toBeGreaterThanOrEqual(Math.min(motion.from.z, motion.to.z) - 1e-4);
        }
      }),
      { numRuns: 25 },
    );
  });

  it('gives the bite of a level pass, nothing where the pass was before, and what a deeper one takes', () => {
    holds(
      fc.property(fc.oneof(straight, turned), fc.double({ min: 4, max: 30, noNaN: true }), (motion, start) => {
        const at = (z: number): Motion => ({
          ...motion,
          from: { x: start, y: start, z },
          to: { x: motion.to.x, y: motion.to.y, z },
          turn: null,
        });
        const field = new HeightField(width, height);
        expect(field.remove(at(-3), 3, 0).depth).toBeCloseTo(3, 4);
        expect(field.remove(at(-3), 3, 0).depth).toBeCloseTo(0, 4);
        expect(field.remove(at(-5), 3, 0).depth).toBeCloseTo(2, 4);
      }),
      { numRuns: 60 },
    );
  });

  it.each([
    ['not of what only the flank meets', 1, 0],
    ['but of what the tool meets farther in', 0, 8],
  ])('gives the bite %s', (_, rim, bite) => {
    const field = new HeightField(width, height);
    field.heights.forEach((_height, i) => {
      field.heights[i] = i % width >= 32 ? 0 : -8;
    });
    const along = { ...base, from: { x: 30, y: 5, z: -8 }, to: { x: 30, y: 35, z: -8 }, turn: null };
    expect(field.remove(along, 3, rim).depth).toBe(bite);
  });
});
