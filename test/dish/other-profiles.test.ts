/** The rib, its panels and their flat patterns on the profiles that are no shallow paraboloid. */
import { describe, expect, it } from 'vitest';
import {
  developPanel,
  type DishShape,
  type Facet,
  facetAt,
  facetOnRib,
  litRange,
  solveDish,
  spread,
} from '../../lib/dish/index.js';
import { edgesOfPath, nearestOnEdge } from '../../lib/geometry/index.js';
import { type Chord, gapUnder } from './lowering.js';
import { romberg, shapeWith } from './shapes.js';

const spreadProfile = spread({ height: 550, radius: 85, apertureRadius: 750 });
const shapes: readonly (readonly [string, DishShape])[] = (['panel', 'rib'] as const).flatMap((figure) => [
  [`spread, figure ${figure}`, shapeWith({ figure, profile: spreadProfile })] as const,
  [`deep, figure ${figure}`, shapeWith({ figure, focalLength: 200, seamGap: 1 })] as const,
]);

/** A derivative by differences of the fourth order. */
const rate = (f: (t: number) => number, t: number, h: number): number =>
  (f(t - 2 * h) - 8 * f(t - h) + 8 * f(t + h) - f(t + 2 * h)) / (12 * h);

const facetOf = (shape: DishShape) => (t: number) =>
  shape.figure === 'panel' ? facetAt(shape, t) : facetOnRib(shape, t);

/** The underside's chord at a facet; figure `panel` from the heights of the profile alone. */
function chordAt(shape: DishShape, { u, undersideX, undersideZ }: Facet): Chord {
  const { profile, layout, seamGap, facingThickness: c } = shape;
  const half = (u * Math.sin(layout.halfAngle) - seamGap / 2) / Math.cos(layout.halfAngle);
  if (shape.figure === 'rib') return { x: undersideX, z: undersideZ, half };
  const slope = rate(profile.height, u, 0.05);
  const size = Math.hypot(1, slope);
  return { x: u + (c * slope) / size, z: profile.height(u) - c / size, half };
}

describe.each(shapes)('%s', (_, shape) => {
  const { from, to } = litRange(shape);
  const radii = Array.from({ length: 21 }, (_unused, i) => from + ((to - from) * i) / 20);

  it('has panels that just touch their ribs, within 1 µm', () => {
    for (const u of radii) expect(Math.abs(gapUnder(shape, chordAt(shape, facetAt(shape, u))))).toBeLessThan(1e-3);
  });

  it('has panels whose underside follows the slope that the facet states', () => {
    for (const u of radii.slice(1, -1)) {
      const at = (which: 'undersideX' | 'undersideZ') => rate((t) => facetAt(shape, t)[which], u, 0.05);
      const slope = Math.atan2(at('undersideZ'), at('undersideX'));
      expect(Math.abs(slope - facetAt(shape, u).slopeAngle)).toBeLessThan(1e-6);
    }
  });

  it('has a rib top within its tolerance', () => {
    const { ribTop } = solveDish(shape, 0.01);
    const edges = edgesOfPath(ribTop.path);
    for (let i = 0; i <= 500; i++) {
      const r = shape.innerRadius + ((shape.apertureRadius - shape.innerRadius) * i) / 500;
      const height = shape.figure === 'rib' ? shape.profile.height(r) : facetOnRib(shape, r).undersideZ;
      const place = { x: r, y: shape.baseHeight + height };
      expect(Math.min(...edges.map((edge) => nearestOnEdge(edge, place).distance))).toBeLessThan(0.01 + 1e-9);
    }
  });

  it('has flat patterns as long and as large as their layer (Romberg integration), to 1e-6', () => {
    for (const depth of [0, 1.8]) {
      const panel = developPanel(shape, depth);
      const facet = facetOf(shape);
      const layer = (t: number) => {
        const { u, z, slopeAngle } = facet(t);
        return [u + depth * Math.sin(slopeAngle), z - depth * Math.cos(slopeAngle)] as const;
      };
      const speed = (t: number) =>
        Math.hypot(
          rate((at) => layer(at)[0], t, 0.02),
          rate((at) => layer(at)[1], t, 0.02),
        );
      expect(Math.abs(panel.length / romberg(speed, panel.from, panel.to) - 1)).toBeLessThan(1e-6);
      const { halfAngle } = shape.layout;
      const width = (t: number) => (2 * (facet(t).u * Math.sin(halfAngle) - shape.seamGap / 2)) / Math.cos(halfAngle);
      const bent = romberg((t) => width(t) * speed(t), panel.from, panel.to);
      const flat = romberg((t) => 2 * panel.chord(t).halfWidth * panel.rates(t).length, panel.from, panel.to);
      expect(Math.abs(flat / bent - 1)).toBeLessThan(1e-6);
    }
  });
});

describe('what the dish states', () => {
  it('is the plane of the profile where the panels are true to it, and what the ribs make of it where they are', () => {
    for (const [name, shape] of shapes) {
      const { focusHeight } = solveDish(shape, 0.01);
      const plane = shape.profile.focusHeight;
      if (name.includes('panel')) {
        expect(focusHeight.atInner).toBeCloseTo(plane, 6);
        expect(focusHeight.atRim).toBeCloseTo(plane, 6);
      } else if (name.includes('spread')) expect(focusHeight.atRim).toBeLessThan(plane - 1);
      else {
        // f·cos²α + c/(2·cos ψ), the wood under the mirror counting more the steeper the rim; the contact off the rib's
        // middle shifts it by o·sin α/tan 2ψ
        const rim = facetOnRib(shape, shape.apertureRadius);
        const { halfAngle } = shape.layout;
        const shift = (rim.edgeOffset * Math.sin(halfAngle)) / Math.tan(2 * rim.slopeAngle);
        const expected =
          plane * Math.cos(halfAngle) ** 2 + shape.facingThickness / (2 * Math.cos(rim.slopeAngle)) + shift;
        expect(Math.abs(focusHeight.atRim - expected)).toBeLessThan(shape.facingThickness * Math.sin(halfAngle) ** 2);
      }
    }
  });

  it('is a rim angle over 90° and a slope over 45° where the focus lies inside the rim', () => {
    const deep = solveDish(shapeWith({ focalLength: 200 }), 0.01);
    // tan(φ/2) = R/2f of the parabola's focal property, and tan ψ = R/2f
    expect(deep.rimAngle).toBeCloseTo(2 * Math.atan(750 / 400), 12);
    expect(deep.rimSlopeAngle).toBeCloseTo(Math.atan(750 / 400), 12);
    expect(deep.depth).toBeGreaterThan(200);
  });
});
