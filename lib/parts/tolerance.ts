/** How far a sheet may turn out thicker or thinner than the design counts on before parts that are cut no longer fit. */
import { type Dish, edgeOffsetAt } from '../dish/index.js';
import type { Design } from '../design/index.js';
import { thicknessOf } from './blank.js';
import { takesRibs } from './hub-build.js';

/** Wood that each panel needs under its edge on a rib, mm: common practice, no source. */
const minBearing = 1.5;

/** What a thickness as measured may be, mm. */
export interface ThicknessRange {
  readonly part: 'rib' | 'hub';
  readonly min: number;
  readonly max: number;
}

/**
 * Range of the ribs' thickness: up to where neighbours meet at the hub, t = 2·r·tan(π/N), or they fill their slots, down to where a panel's edge
 * has too little rib under it at the rim. Range of the hub's: its layers stay below the inner ends of the ribs.
 */
export function thicknessRanges(design: Design, dish: Dish): ThicknessRange[] {
  const offset = edgeOffsetAt(dish, dish.profile.slopeAngle(dish.apertureRadius));
  const { build, layers, material } = design.hub;
  const { fit, joint } = design.rib;
  return [
    {
      part: 'rib',
      min: 2 * (offset + minBearing),
      max:
        joint === 'tab-slot' || takesRibs(design)
          ? dish.ribThickness + fit
          : 2 * dish.innerRadius * Math.tan(dish.layout.halfAngle),
    },
    ...(build === 'layers' && thicknessOf(design, material) > 0
      ? [{ part: 'hub' as const, min: 0, max: dish.innerEndHeight / layers }]
      : []),
  ];
}
