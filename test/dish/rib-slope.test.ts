import { describe, expect, it } from 'vitest';
import { type Figure, fitRibTop, ribTopHeight } from '../../lib/dish/index.js';
import { edgesOfPath, tangentOnEdge } from '../../lib/geometry/index.js';
import { shapeWith } from './shapes.js';

describe('slope of the rib’s top', () => {
  it.each(['panel', 'rib'] as const)(
    'is that of its heights (fourth-order differences), figure %s',
    (figure: Figure) => {
      // few ribs, a thick facing and a steep rim, so that every term of the slope counts
      const shape = shapeWith({
        figure,
        ribCount: 8,
        panelThickness: 9,
        ribThickness: 40,
        focalLength: 400,
        innerRadius: 60,
      });
      const h = 0.5;
      const slopeAt = (r: number) => {
        const z = (at: number) => ribTopHeight(shape, at);
        return (z(r - 2 * h) - 8 * z(r - h) + 8 * z(r + h) - z(r + 2 * h)) / (12 * h);
      };
      const { path } = fitRibTop(shape, 60, 750, 1e-5);
      for (const edge of edgesOfPath(path)) {
        const tangent = tangentOnEdge(edge, 0);
        expect(Math.abs(tangent.y / tangent.x - slopeAt(edge.from.x))).toBeLessThan(6e-5);
      }
    },
  );
});
