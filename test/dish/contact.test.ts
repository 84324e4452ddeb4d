/**
 * A second, numerical model of how a panel lies on its ribs: points of the panel's underside in space, the square top
 * of the rib as a height over the plan, and the distance that the panel can still be let down. It knows the figure's
 * definition and the seam gap, and nothing of the closed form of the contact.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crossingHeight, type DishShape, facetAt, facetOnRib, litRange, ribTopHeight } from '../../lib/dish/index.js';
import { type Chord, gapUnder } from './lowering.js';
import { anyShape, shapeWith } from './shapes.js';
import { holds } from '../helpers/seeds.js';

/** Figure `panel`: the reflecting mid-line is the parabola, the underside lies the facing thickness along the normal. */
function chordUnderParabola(shape: DishShape, u: number): Chord {
  const { profile, layout, facingThickness: c, seamGap } = shape;
  const { halfAngle } = layout;
  const f = profile.focusHeight;
  const slope = u / (2 * f);
  const size = Math.hypot(1, slope);
  // the reflecting edge keeps half the gap off the rib's centre plane: u·sin α − w·cos α = g/2
  const half = (u * Math.sin(halfAngle) - seamGap / 2) / Math.cos(halfAngle);
  return { x: u + (c * slope) / size, z: (u * u) / (4 * f) - c / size, half };
}

const micron = 1e-3;

describe('contact of panel and rib', () => {
  it('just touches along the whole panel with figure `panel`, within 1 µm', () => {
    holds(
      fc.property(anyShape('panel'), (shape) => {
        const { from, to } = litRange(shape);
        for (let i = 0; i <= 40; i++) {
          const space = gapUnder(shape, chordUnderParabola(shape, from + ((to - from) * i) / 40));
          expect(Math.abs(space)).toBeLessThan(micron);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('just touches along the whole panel with figure `rib`, within 1 µm', () => {
    holds(
      fc.property(anyShape('rib'), (shape) => {
        for (let i = 0; i <= 40; i++) {
          const r = shape.innerRadius + ((shape.apertureRadius - shape.innerRadius) * i) / 40;
          const at = facetOnRib(shape, r);
          const half = (at.u * Math.sin(shape.layout.halfAngle) - shape.seamGap / 2) / Math.cos(shape.layout.halfAngle);
          const space = gapUnder(shape, { x: at.undersideX, z: at.undersideZ, half });
          expect(Math.abs(space)).toBeLessThan(micron);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('is at the panel’s edge, not at the facing corner, which would set the ribs 0.4 mm too high at the rim of the press house’s dish', () => {
    const shape = shapeWith({});
    const rim = facetOnRib(shape, shape.apertureRadius);
    const { layout, ribThickness } = shape;
    const { halfAngle } = layout;
    // a model that lets the chord rest on the rib's near corner instead
    const atCorner = (rim.undersideX - (ribThickness / 2) * Math.sin(halfAngle)) / Math.cos(halfAngle);
    const tooHigh = rim.undersideZ - ribTopHeight(shape, atCorner);
    expect(tooHigh).toBeGreaterThan(0.3);
    expect(tooHigh).toBeLessThan(0.5);
  });

  it('follows the rib: the underside’s mid-line has the slope that the facet states', () => {
    holds(
      fc.property(
        fc.oneof(anyShape('panel'), anyShape('rib')),
        fc.double({ min: 0.2, max: 0.9, noNaN: true }),
        (shape, share) => {
          const r = share * shape.apertureRadius;
          fc.pre(r > shape.innerRadius);
          const h = 1e-2;
          const [a, b] = [facetOnRib(shape, r - h), facetOnRib(shape, r + h)];
          const slope = Math.atan2(b.undersideZ - a.undersideZ, b.undersideX - a.undersideX);
          expect(Math.abs(slope - facetOnRib(shape, r).slopeAngle)).toBeLessThan(1e-6);
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe('facets', () => {
  it('are the same whether found from the mid-line or from the rib', () => {
    holds(
      fc.property(fc.oneof(anyShape('panel'), anyShape('rib')), (shape) => {
        const { from, to } = litRange(shape);
        const u = (from + to) / 2;
        const at = facetAt(shape, u);
        expect(Math.abs(facetOnRib(shape, at.ribRadius).u - u)).toBeLessThan(1e-8);
      }),
      { numRuns: 100 },
    );
  });

  it('send a ray that comes down along the axis through f with figure `panel` (mirror law by vectors)', () => {
    const shape = shapeWith({});
    for (const u of [60, 200, 400, 700]) {
      const at = facetAt(shape, u);
      const normal = { x: -Math.sin(at.slopeAngle), z: Math.cos(at.slopeAngle) };
      // d' = d − 2(d·n)n for the ray (0, −1)
      const along = -normal.z;
      const out = { x: -2 * along * normal.x, z: -1 - 2 * along * normal.z };
      const axis = at.z - (at.u / out.x) * out.z;
      expect(axis).toBeCloseTo(550, 9);
      expect(crossingHeight(at)).toBeCloseTo(axis, 9);
    }
  });

  it('send it through f·cos²α + c/(2·cos ψ), and the shift by the seam on top, with figure `rib`', () => {
    const shape = shapeWith({ figure: 'rib' });
    const { layout, facingThickness } = shape;
    const [halfAngle, focalLength] = [layout.halfAngle, 550];
    for (const r of [60, 200, 400, 700]) {
      const at = facetOnRib(shape, r);
      const normal = { x: -Math.sin(at.slopeAngle), z: Math.cos(at.slopeAngle) };
      const out = { x: 2 * normal.z * normal.x, z: -1 + 2 * normal.z * normal.z };
      const axis = at.z - (at.u / out.x) * out.z;
      expect(crossingHeight(at)).toBeCloseTo(axis, 8);
      const centred = focalLength * Math.cos(halfAngle) ** 2 + facingThickness / (2 * Math.cos(at.slopeAngle));
      const shift = (at.edgeOffset * Math.sin(halfAngle)) / Math.tan(2 * at.slopeAngle);
      // the slope is that of the wandering contact, which the formula leaves out: c·sin²α at most
      expect(Math.abs(axis - centred - shift)).toBeLessThan(facingThickness * Math.sin(halfAngle) ** 2);
    }
  });
});
