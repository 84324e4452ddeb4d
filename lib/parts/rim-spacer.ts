/** Combs that are lowered onto two ribs at the rim and hold them apart and upright while their glue sets. */
import { contourFromPoints, strokeTextWidth } from '../geometry/index.js';
import type { Dish } from '../dish/index.js';
import type { Design } from '../design/index.js';
import { blank, type Part, textMark } from '../part/index.js';
import { gaugeBlank } from './gauge-blank.js';

/** Depth of a notch, wood above it and beside it, and the play of a rib in it, mm: common practice, no source. */
const notchDepth = 25;
const woodAbove = 35;
const woodBeside = 25;
const notchFit = 0.3;

/** The second comb stands this far behind the first, mm: they meet on the rib between their pairs. */
const behind = 0.5;

/**
 * A bar that stands on edge across two ribs. The ribs pass through it at a slant, so that a notch is as wide as the rib
 * shows between the bar's two faces. Notches that opened along the ribs would jam: the ribs run apart.
 * @param outer distance of its outer face from the axis, along the middle of the bay
 */
function comb(design: Design, dish: Dish, outer: number, number: number, place: string): Part {
  const of = gaugeBlank(design);
  const { layout, ribThickness } = dish;
  const half = (ribThickness + notchFit) / 2 / Math.cos(layout.halfAngle);
  const tan = Math.tan(layout.halfAngle);
  const [near, far] = [(outer - of.thickness) * tan - half, outer * tan + half];
  const reach = far + woodBeside;
  const top = notchDepth + woodAbove;
  const corners: [number, number][] = [
    [-reach, 0],
    [-far, 0],
    [-far, notchDepth],
    [-near, notchDepth],
    [-near, 0],
    [near, 0],
    [near, notchDepth],
    [far, notchDepth],
    [far, 0],
    [reach, 0],
    [reach, top],
    [-reach, top],
  ];
  const text = `RIM SPACER ${number}`;
  const height = 6;
  return blank({
    ...of,
    id: `rim-spacer-${number}`,
    name: `Rim spacer ${number}`,
    outline: contourFromPoints(corners.map(([x, y]) => ({ x, y }))),
    marks: [
      textMark(text, { x: -strokeTextWidth(text, height) / 2, y: notchDepth + (woodAbove - height) / 2 }, height),
    ],
    seatCorners: [2, 3, 6, 7].map((vertex) => ({ ring: 0, vertex })),
    notes: [`Lower it on edge over two neighbouring ribs, ${place}, while their glue sets; lift it off upwards.`],
  });
}

/**
 * Two combs, for neighbouring pairs of ribs by turns: the outer face of the first is flush with the outer corners of the
 * rim ends, the second stands behind it.
 */
export function rimSpacers(design: Design, dish: Dish): Part[] {
  const { apertureRadius, layout, ribThickness } = dish;
  const outer = apertureRadius * Math.cos(layout.halfAngle) - (ribThickness / 2) * Math.sin(layout.halfAngle);
  const second = outer - gaugeBlank(design).thickness - behind;
  return [
    comb(design, dish, outer, 1, 'its outer face flush with their rim ends'),
    comb(design, dish, second, 2, 'its outer face just behind the inner face of rim spacer 1'),
  ];
}
