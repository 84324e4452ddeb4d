/** A bent sheet in space: from a point of its flat pattern to the place where it lies in the dish. */
import { chordAtLength } from '../parts/index.js';
import { type DevelopedPanel, developPanel, type Dish, type Facet, type PlanFrame } from '../dish/index.js';
import type { Vec3 } from './frame.js';
import type { AssembledSheet } from './types.js';

/** What all copies of a sheet have in common; the bay in which one lies comes on top. */
export interface SheetShape {
  readonly baseHeight: number;
  /** From the reflecting face to the sheet's upper face, mm. */
  readonly depth: number;
  /** The pattern of the sheet's middle layer, which keeps its length. */
  readonly panel: DevelopedPanel;
}

export function sheetShape(dish: Dish, { depth, part }: AssembledSheet): SheetShape {
  return { baseHeight: dish.baseHeight, depth, panel: developPanel(dish, depth + part.thickness / 2) };
}

/** The chord of the sheet at a length (mm) along its flat pattern from the inner end. */
export function facetAtLength({ panel }: SheetShape, length: number): Facet {
  return panel.chord(chordAtLength(panel, length)).facet;
}

/**
 * Where a point of a chord lies: `y` across (positive towards the rib after its bay), `below` the sheet's upper face,
 * square to it.
 */
export function sheetPoint(
  { baseHeight, depth }: SheetShape,
  bay: PlanFrame,
  facet: Facet,
  y: number,
  below: number,
): Vec3 {
  const down = depth + below;
  const u = facet.u + down * Math.sin(facet.slopeAngle);
  const z = baseHeight + facet.z - down * Math.cos(facet.slopeAngle);
  const turn = (bay.rotationDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return [bay.x + u * cos - y * sin, bay.y + u * sin + y * cos, z];
}
