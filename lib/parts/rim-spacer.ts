/** The comb that is lowered onto two ribs at the rim and holds them apart and upright while their glue sets. */
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

/**
 * A bar that stands on edge across two ribs, its outer face flush with the outer corners of their rim ends. The ribs
 * pass through it at a slant, so that a notch is as wide as the rib shows between the bar's two faces. Notches that
 * opened along the ribs would jam: the ribs run apart.
 */
export function rimSpacer(design: Design, dish: Dish): Part {
  const of = gaugeBlank(design);
  const { apertureRadius, layout, ribThickness } = dish;
  const [cos, sin, tan] = [Math.cos(layout.halfAngle), Math.sin(layout.halfAngle), Math.tan(layout.halfAngle)];
  const half = (ribThickness + notchFit) / 2;
  // distances of the two faces from the axis, along the middle of the bay
  const outer = apertureRadius * cos - (ribThickness / 2) * sin;
  const inner = outer - of.thickness;
  const near = inner * tan - half / cos;
  const far = outer * tan + half / cos;
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
  const text = 'RIM SPACER';
  const height = 6;
  return blank({
    ...of,
    id: 'rim-spacer',
    name: 'Rim spacer',
    quantity: 2,
    outline: contourFromPoints(corners.map(([x, y]) => ({ x, y }))),
    marks: [
      textMark(text, { x: -strokeTextWidth(text, height) / 2, y: notchDepth + (woodAbove - height) / 2 }, height),
    ],
    seatCorners: [2, 3, 6, 7].map((vertex) => ({ ring: 0, vertex })),
    notes: [
      'Lower it on edge over two neighbouring ribs, its outer face flush with their rim ends, while their glue sets; lift it off upwards.',
      'Go round with two of them, so that one always stays on the pair before.',
    ],
  });
}
