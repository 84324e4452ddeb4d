/**
 * The one joint of the stand: the edge of a plate against the face of another. Tabs in slots take the shear and find
 * the place; a bolt through the face into a barrel nut in the edge plate draws both together and comes off again.
 */
import type { Contour, Point } from '../geometry/index.js';
import { barrelBolt, barrelNut } from '../hardware/index.js';
import { type EdgeHole, type Hole, throughHole } from '../part/index.js';
import { boxOpening } from './outline.js';

/** From the edge to the barrel nut's axis: wood that would have to shear out (common practice, no source). */
const nutSetback = 30;

/** Where the bolt goes into the edge, and the direction inward, radians. */
export interface EdgeBolt {
  readonly at: Point;
  readonly inward: number;
  /** Thickness of the edge plate, and of all that the bolt goes through before. */
  readonly sheet: number;
  readonly through: number;
  readonly size: string;
}

/** The nut's hole through the faces of the edge plate, and the bolt's hole into its edge. */
export function edgeBoltHoles({ at, inward, sheet, through, size }: EdgeBolt): {
  readonly hole: Hole;
  readonly edgeHole: EdgeHole;
} {
  const { bolt, depth } = barrelBolt(size, through, nutSetback);
  const nut = { x: at.x + nutSetback * Math.cos(inward), y: at.y + nutSetback * Math.sin(inward) };
  return {
    hole: throughHole(nut, barrelNut(size)?.hole ?? 0),
    edgeHole: {
      ...at,
      direction: inward,
      diameter: bolt.clearance,
      length: Math.max(depth, nutSetback + 1),
      height: sheet / 2,
    },
  };
}

/** Tabs along an edge of some length, as ranges from its start: two with the bolt between them. */
export function tabsAlong(length: number): readonly (readonly [number, number])[] {
  return [
    [0.12 * length, 0.34 * length],
    [0.66 * length, 0.88 * length],
  ];
}

/** A slot for a tab: `along` the range of the tab, `across` its middle plane. Upright where the tab's range runs in y. */
export function slotFor(
  [from, to]: readonly [number, number],
  across: number,
  { sheet, fit, upright }: { readonly sheet: number; readonly fit: number; readonly upright: boolean },
): Contour {
  const [half, play] = [(sheet + fit) / 2, fit / 2];
  return upright
    ? boxOpening(across - half, from - play, across + half, to + play)
    : boxOpening(from - play, across - half, to + play, across + half);
}
