/** A bent sheet in space: from a point of its flat pattern to the place where it lies in the dish. */
import { chordAtLength } from '../parts/index.js';
import { type DevelopedPanel, developPanel, type Dish, type PlanFrame } from '../dish/index.js';
import type { Vec3 } from './frame.js';
import type { AssembledSheet } from './types.js';

export interface SheetShape {
  readonly bay: PlanFrame;
  readonly baseHeight: number;
  /** From the reflecting face to the sheet's upper face, mm. */
  readonly depth: number;
  /** The pattern of the sheet's middle layer, which keeps its length. */
  readonly panel: DevelopedPanel;
}

export function sheetShape(dish: Dish, { bay, depth, part }: AssembledSheet): SheetShape {
  return { bay, baseHeight: dish.baseHeight, depth, panel: developPanel(dish, depth + part.thickness / 2) };
}

/**
 * Where a point of the flat pattern lies: `x` along the panel from its inner end, `y` across (positive towards the rib
 * after its bay), `below` its upper face, square to it.
 */
export function sheetPoint({ bay, baseHeight, depth, panel }: SheetShape, x: number, y: number, below: number): Vec3 {
  const { facet } = panel.chord(chordAtLength(panel, x));
  const down = depth + below;
  const u = facet.u + down * Math.sin(facet.slopeAngle);
  const z = baseHeight + facet.z - down * Math.cos(facet.slopeAngle);
  const turn = (bay.rotationDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return [bay.x + u * cos - y * sin, bay.y + u * sin + y * cos, z];
}
