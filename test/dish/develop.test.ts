import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { developPanel, type DishShape, facetAt, facetOnRib, type Facet } from '../../lib/dish/index.js';
import { anyShape, romberg, shapeWith } from './shapes.js';
import { holds } from '../helpers/seeds.js';

/** A layer of the panel as a curve in the bisecting plane, straight from the facets. */
function layerPoint(at: Facet, depth: number): readonly [number, number] {
  return [at.u + depth * Math.sin(at.slopeAngle), at.z - depth * Math.cos(at.slopeAngle)];
}

/** How fast a curve runs, by a fourth-order difference of its points. */
function speedOf(point: (t: number) => readonly [number, number], t: number, h: number): number {
  const [a, b, c, d] = [point(t - 2 * h), point(t - h), point(t + h), point(t + 2 * h)];
  const rate = (i: 0 | 1) => (a[i] - 8 * b[i] + 8 * c[i] - d[i]) / (12 * h);
  return Math.hypot(rate(0), rate(1));
}

function facetOf(shape: DishShape): (t: number) => Facet {
  return (t) => (shape.figure === 'panel' ? facetAt(shape, t) : facetOnRib(shape, t));
}

const depths = [0, 0.15, 1.8, 5];

describe('developed panel', () => {
  it('is as long as its layer (Romberg integration of the layer’s points), to 1e-6', () => {
    holds(
      fc.property(fc.oneof(anyShape('panel'), anyShape('rib')), fc.constantFrom(...depths), (shape, depth) => {
        const panel = developPanel(shape, depth);
        const facet = facetOf(shape);
        const speed = (t: number) => speedOf((at) => layerPoint(facet(at), depth), t, 1e-2);
        const length = romberg(speed, panel.from, panel.to);
        expect(Math.abs(panel.length / length - 1)).toBeLessThan(1e-6);
      }),
      { numRuns: 40 },
    );
  });

  it('has the area of its layer (Romberg integration of its chords), to 1e-6', () => {
    holds(
      fc.property(fc.oneof(anyShape('panel'), anyShape('rib')), (shape) => {
        const depth = shape.facingThickness / 2;
        const panel = developPanel(shape, depth);
        const flat = romberg((t) => 2 * panel.chord(t).halfWidth * panel.rates(t).length, panel.from, panel.to);
        const facet = facetOf(shape);
        const bent = romberg(
          (t) => {
            const { u } = facet(t);
            const width =
              2 * ((u * Math.sin(shape.layout.halfAngle) - shape.seamGap / 2) / Math.cos(shape.layout.halfAngle));
            return width * speedOf((at) => layerPoint(facet(at), depth), t, 1e-2);
          },
          panel.from,
          panel.to,
        );
        expect(Math.abs(flat / bent - 1)).toBeLessThan(1e-6);
      }),
      { numRuns: 40 },
    );
  });

  it('states the rates of its own chords', () => {
    for (const figure of ['panel', 'rib'] as const) {
      const panel = developPanel(shapeWith({ figure }), 1.8);
      for (const share of [0.05, 0.4, 0.95]) {
        const t = panel.from + share * (panel.to - panel.from);
        const h = 1e-3;
        const [a, b] = [panel.chord(t - h), panel.chord(t + h)];
        const rates = panel.rates(t);
        expect(rates.length).toBeCloseTo((b.length - a.length) / (2 * h), 6);
        expect(rates.halfWidth).toBeCloseTo((b.halfWidth - a.halfWidth) / (2 * h), 6);
      }
    }
  });

  it('keeps its mirror side true to its shape: a layer further down is longer by depth times the turn', () => {
    const shape = shapeWith({});
    const [near, far] = [developPanel(shape, 0), developPanel(shape, 3.3)];
    const turn = Math.atan(facetOnRib(shape, 750).u / 1100) - Math.atan(facetOnRib(shape, 51).u / 1100);
    expect(far.length - near.length).toBeCloseTo(3.3 * turn, 9);
  });
});
