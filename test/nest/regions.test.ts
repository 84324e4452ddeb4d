import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { gapBetween } from '../../cli/bench/nest-overlap.js';
import type { StripInstance } from '../../cli/bench/nest-instance.js';
import { NoFits } from '../../lib/nest/no-fit.js';
import { Shapes } from '../../lib/nest/shape.js';
import { ring } from '../helpers/nest-parts.js';
import { byDay } from '../helpers/seeds.js';

describe('no-fit regions of scanned shapes with many parallel edges', () => {
  // ESICUP Cutting and Packing Datasets, sources in each file
  it.each(['jakobs1', 'mao', 'marques'])(
    'have boundary edges on which the shapes of %s touch and never overlap',
    (name) => {
      const file = fileURLToPath(new URL(`../../fixtures/nesting/${name}.json`, import.meta.url));
      const { items } = JSON.parse(readFileSync(file, 'utf8')) as StripInstance;
      const shapes = new Shapes(0);
      for (const { outline, rotations } of items.slice(0, 12)) {
        for (const angle of rotations) shapes.orient(ring(outline), [], angle, false);
      }
      const noFits = new NoFits();
      const solid = (outline: readonly { x: number; y: number }[], dx = 0, dy = 0) => {
        return { outer: outline.map(({ x, y }) => [x + dx, y + dy] as const), openings: [] };
      };
      const deep: string[] = [];
      for (const [i, fixed] of shapes.all.entries()) {
        // an eighth of the pairs, spread over all; by night half of them
        for (const moving of shapes.all.filter((_, j) => (i + j) % byDay(8, 2) === 0)) {
          const region = noFits.of(fixed, moving);
          for (let k = 0; k < region.count; k++) {
            const x = region.x[k]! + region.dx[k]! / 2;
            const y = region.y[k]! + region.dy[k]! / 2;
            const gap = gapBetween(solid(fixed.outline), solid(moving.outline, x, y), 1);
            if (gap < -1e-6) deep.push(`${fixed.index} ${moving.index} at ${x} ${y}: ${gap}`);
          }
        }
      }
      expect(deep).toEqual([]);
    },
  );
});
