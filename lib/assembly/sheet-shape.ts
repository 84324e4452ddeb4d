/** A bent sheet in space: from a point of its flat pattern to the place where it lies in the dish. */
import { battenOver, chordAtLength } from '../parts/index.js';
import { developPanel, type Dish, type PlanFrame, type SheetChord } from '../dish/index.js';
import type { Design } from '../design/index.js';
import type { Vec3 } from './frame.js';
import type { AssembledSheet } from './types.js';

/** What all copies of a sheet have in common; the bay or rib in which one lies comes on top. */
export interface SheetShape {
  readonly baseHeight: number;
  /** From the face that its chords follow to the sheet's upper face, mm. */
  readonly depth: number;
  /** Of the flat pattern, which the sheet's middle layer keeps when bent. */
  readonly length: number;
  /** The chord at a length (mm) along the flat pattern from the inner end. */
  readonly at: (length: number) => SheetChord;
}

export function sheetShape(design: Design, dish: Dish, { depth, part }: AssembledSheet): SheetShape {
  const { baseHeight } = dish;
  if (part.kind === 'batten') return { baseHeight, depth, ...battenOver(design, dish) };
  const panel = developPanel(dish, depth + part.thickness / 2);
  const at = (length: number): SheetChord => panel.chord(chordAtLength(panel, length)).facet;
  return { baseHeight, depth, length: panel.length, at };
}

/**
 * Where a point of a chord lies: `y` across (positive towards the rib after its bay), `below` the sheet's upper face,
 * square to it.
 */
export function sheetPoint(
  { baseHeight, depth }: SheetShape,
  bay: PlanFrame,
  chord: SheetChord,
  y: number,
  below: number,
): Vec3 {
  const down = depth + below;
  const u = chord.u + down * Math.sin(chord.slopeAngle);
  const z = baseHeight + chord.z - down * Math.cos(chord.slopeAngle);
  const turn = (bay.rotationDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return [bay.x + u * cos - y * sin, bay.y + u * sin + y * cos, z];
}
