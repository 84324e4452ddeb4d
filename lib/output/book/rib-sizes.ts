/** Sizes of the rib for the steps, measured on the part itself. */
import { bounds } from '../../geometry/index.js';
import type { Dish } from '../../dish/index.js';
import type { Part } from '../../part/index.js';
import { ribInPlace } from './rib-place.js';

/** What is measured on a rib; radii from the axis, heights above the board. */
interface RibSizes {
  readonly innerRadius: number;
  readonly rimRadius: number;
  readonly toeRadius: number;
  readonly innerHeight: number;
  readonly rimHeight: number;
  /** Height of the toe cut's end at the rim. */
  readonly rimFoot: number;
}

const near = (a: number, b: number): boolean => Math.abs(a - b) < 1e-3;

export function ribSizes(rib: Part, dish: Dish): RibSizes {
  const outline = ribInPlace(rib.outline, dish);
  const box = bounds(outline);
  // the curve's ends: the optical edge runs from the rim inward
  const curve = rib.edges.find(({ role }) => role === 'optical');
  const innerRadius = curve === undefined ? box.minX : (outline[curve.to + 1]?.x ?? box.minX);
  const heights = (x: number) => outline.filter((v) => near(v.x, x)).map((v) => v.y);
  return {
    innerRadius,
    rimRadius: box.maxX,
    toeRadius: Math.max(...outline.filter((v) => near(v.y, 0)).map((v) => v.x)),
    innerHeight: Math.max(...heights(innerRadius)),
    rimHeight: Math.max(...heights(box.maxX)),
    rimFoot: Math.min(...heights(box.maxX)),
  };
}
