import { facetOnRib, focusHeight, litRange } from './facet.js';
import { rimAngle } from './profile.js';
import { fitRibTop, ribTopHeight } from './rib-top.js';
import { clearRadius, cornerRadius, flatLength } from './set-back.js';
import type { Dish, DishShape } from './types.js';

/**
 * Solves the dish.
 * @param shape all lengths above 0 (seam gap and reflector may be 0), inner radius within the aperture
 * @param arcTolerance greatest distance of the fitted rib top from the true curve, mm
 */
export function solveDish(shape: DishShape, arcTolerance: number): Dish {
  const { apertureRadius: R, profile, layout, ribThickness, innerRadius, baseHeight } = shape;
  const ribCount = layout.ribs.length;
  const lit = litRange(shape);
  const rim = facetOnRib(shape, R);
  const inner = facetOnRib(shape, innerRadius);
  return {
    ...shape,
    depth: profile.height(R),
    rimAngle: rimAngle(profile, R),
    rimSlopeAngle: profile.slopeAngle(R),
    profileLength: profile.arcLength(R),
    surfaceArea: profile.area(R),
    setBack: {
      clearRadius: clearRadius(ribCount, ribThickness),
      cornerRadius: cornerRadius(ribCount, ribThickness),
      flatLength: flatLength(ribCount, innerRadius),
    },
    ribTop: fitRibTop(shape, innerRadius, R, arcTolerance),
    innerEndHeight: baseHeight + ribTopHeight(shape, innerRadius),
    rimEndHeight: baseHeight + ribTopHeight(shape, R),
    litFrom: lit.from,
    litTo: lit.to,
    focusHeight: { atInner: focusHeight(profile, inner), atRim: focusHeight(profile, rim) },
    glueWedge: glueWedge(shape),
  };
}

// along the rim chord the rib's top falls from the contact line to the facing corner, t/2 off the centre plane
function glueWedge(shape: DishShape): number {
  const rim = facetOnRib(shape, shape.apertureRadius);
  const { halfAngle } = shape.layout;
  const atCorner = (rim.undersideX - (shape.ribThickness / 2) * Math.sin(halfAngle)) / Math.cos(halfAngle);
  return Math.max(0, rim.undersideZ - ribTopHeight(shape, atCorner));
}
