import { describe, expect, it } from 'vitest';
import { hasOverlap } from '../../lib/nest/overlap.js';
import { Packing } from '../../lib/nest/packing.js';
import { piecesOf } from '../../lib/nest/pieces.js';
import { NoFits } from '../../lib/nest/no-fit.js';
import { Shapes } from '../../lib/nest/shape.js';
import { spaceOf } from '../../lib/nest/space.js';
import { box, part, sheet } from '../helpers/nest-parts.js';

describe('the last look at a packing', () => {
  const shapes = new Shapes(10);
  const pieces = piecesOf([part('a', box(100, 50), { quantity: 2 })], shapes);
  const space = spaceOf(sheet('s', 400, 100), shapes, new NoFits());
  const gapOf = (gap: number): boolean => {
    const packing = new Packing(pieces);
    packing.sheets.push({ space, right: 400 });
    packing.sheet.fill(0);
    packing.x[1] = 100 + gap;
    packing.y[1] = 20;
    return hasOverlap(packing);
  };

  it('lets parts lie at the spacing and no nearer', () => {
    expect(gapOf(10)).toBe(false);
    expect(gapOf(10 - 2e-6)).toBe(true);
    expect(gapOf(-60)).toBe(true);
  });
});
