import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { facetOnRib, type Figure, ribTopHeight, solveDish } from '../../lib/dish/index.js';
import { edgesOfPath, nearestOnEdge } from '../../lib/geometry/index.js';
import { anyShape, shapeWith } from './shapes.js';
import { holds } from '../helpers/seeds.js';

const tolerance = 0.01;

/** Greatest distance of dense points of the true rib top from the fitted path. */
function strays(figure: Figure, changes = {}): number {
  const shape = shapeWith({ figure, ...changes });
  const { ribTop } = solveDish(shape, tolerance);
  const edges = edgesOfPath(ribTop.path);
  let max = 0;
  const steps = 4000;
  for (let i = 0; i <= steps; i++) {
    const r = shape.innerRadius + ((shape.apertureRadius - shape.innerRadius) * i) / steps;
    const place = { x: r, y: shape.baseHeight + ribTopHeight(shape, r) };
    max = Math.max(max, Math.min(...edges.map((edge) => nearestOnEdge(edge, place).distance)));
  }
  return max;
}

describe('solved dish', () => {
  it.each(['panel', 'rib'] as const)('has a rib top within its tolerance everywhere, figure %s', (figure) => {
    const max = strays(figure);
    expect(max).toBeLessThanOrEqual(tolerance + 1e-9);
    expect(max).toBeGreaterThan(tolerance / 10);
  });

  it('states the deviation that is measured', () => {
    const { ribTop } = solveDish(shapeWith({}), tolerance);
    expect(Math.abs(ribTop.deviation - strays('panel'))).toBeLessThan(2e-5);
  });

  it('starts and ends the rib where it says, at the heights that it says', () => {
    holds(
      fc.property(fc.oneof(anyShape('panel'), anyShape('rib')), (shape) => {
        const dish = solveDish(shape, 0.02);
        const [first, last] = [dish.ribTop.path[0]!, dish.ribTop.path.at(-1)!];
        expect(Math.abs(first.x - shape.innerRadius)).toBeLessThan(1e-6);
        expect(Math.abs(last.x - shape.apertureRadius)).toBeLessThan(1e-6);
        expect(Math.abs(first.y - dish.innerEndHeight)).toBeLessThan(1e-6);
        expect(Math.abs(last.y - dish.rimEndHeight)).toBeLessThan(1e-6);
        // the mirror ends where the rib does, so it stays inside the aperture
        expect(dish.litTo).toBeLessThan(shape.apertureRadius);
        expect(dish.litTo).toBeCloseTo(facetOnRib(shape, shape.apertureRadius).u, 9);
      }),
      { numRuns: 15 },
    );
  });

  it('focuses every mid-line at f with figure `panel`, and lower with `rib`', () => {
    const panel = solveDish(shapeWith({}), tolerance);
    expect(panel.focusHeight.atInner).toBeCloseTo(550, 8);
    expect(panel.focusHeight.atRim).toBeCloseTo(550, 8);
    const rib = solveDish(shapeWith({ figure: 'rib' }), tolerance);
    expect(rib.focusHeight.atRim).toBeLessThan(550);
  });

  it('has a glue wedge as open as the rib’s top falls from the panel’s edge to the rib’s corner', () => {
    const shape = shapeWith({});
    const dish = solveDish(shape, tolerance);
    const rim = facetOnRib(shape, shape.apertureRadius);
    // the rib's top under the panel's rim chord, at the corner that is t/2 off the rib's middle
    const across = shape.ribThickness / 2 - rim.edgeOffset;
    const along = shape.apertureRadius - across * Math.tan(shape.layout.halfAngle);
    expect(dish.glueWedge).toBeCloseTo(rim.undersideZ - ribTopHeight(shape, along), 9);
    expect(dish.glueWedge).toBeGreaterThan(0.3);
  });
});
