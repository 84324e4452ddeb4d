import { crossingHeight, facetOnRib, litRange } from './facet.js';
import { paraboloidArea, parabolaHeight, profileLength, rimAngle } from './paraboloid.js';
import { fitRibTop, ribTopHeight } from './rib-top.js';
import { clearRadius, cornerRadius, flatLength } from './set-back.js';
import type { Dish, DishShape } from './types.js';

/**
 * Solves the dish.
 * @param shape all lengths above 0 (seam gap and reflector may be 0), rim angle at most 90°, inner radius within the aperture
 * @param arcTolerance greatest distance of the fitted rib top from the true curve, mm
 */
export function solveDish(shape: DishShape, arcTolerance: number): Dish {
  const { apertureRadius: R, focalLength: f, ribCount, ribThickness, innerRadius, baseHeight } = shape;
  const lit = litRange(shape);
  const rim = facetOnRib(shape, R);
  const inner = facetOnRib(shape, innerRadius);
  return {
    ...shape,
    depth: parabolaHeight(R, f),
    rimAngle: rimAngle(R, f),
    profileLength: profileLength(R, f),
    surfaceArea: paraboloidArea(R, f),
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
    focusHeight: { atInner: crossingHeight(inner), atRim: crossingHeight(rim) },
    glueWedge: glueWedge(shape),
  };
}

// along the rim chord the rib's top falls from the contact line to the facing corner, t/2 off the centre plane
function glueWedge(shape: DishShape): number {
  const rim = facetOnRib(shape, shape.apertureRadius);
  const atCorner = (rim.undersideX - (shape.ribThickness / 2) * Math.sin(shape.halfAngle)) / Math.cos(shape.halfAngle);
  return Math.max(0, rim.undersideZ - ribTopHeight(shape, atCorner));
}
