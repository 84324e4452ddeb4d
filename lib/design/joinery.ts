/** How ribs, hub and board are joined where the file does not say, by process and thickness. */
import { minSlottedRadius, clearRadius } from '../dish/index.js';
import type { Material } from './design.js';
import type { DesignFile } from './schema.js';
import type { ProcessKind } from './sections/process.js';
import type { RibJoint } from './sections/structure.js';

/** Stock up to this takes no screw in its edge, mm: common practice, no source. */
const thinStock = 8;

/** Play of a tab in its slot, mm: common practice, no source; try one in an offcut. */
const usualFit: Readonly<Record<ProcessKind, number>> = { laser: 0.1, router: 0.2, hand: 0.5 };

type Materials = Readonly<Record<string, Material>>;

export interface Joinery {
  /** Null for cleats whose screws are still to be chosen. */
  readonly joint: RibJoint | null;
  readonly fit: number;
  readonly hubBuild: 'layers' | 'slotted-discs';
  /** Depth of the grooves that the ribs stand in, 0 where they stand in none. */
  readonly housing: number;
}

/** Wood between two grooves of the hub, mm: common practice, no source. */
const hubWeb = 3;

/** How ribs are held: by what goes into the board, or by cleats on it. */
type Holding = 'tabs' | 'cleats';

/** Ways to hold the ribs, the usual one first; the other is there where the file leaves the choice. */
export function holdings(file: DesignFile, materials: Materials): readonly [Holding, ...Holding[]] {
  const { rib, cleat } = file;
  if (rib.joint !== undefined) return [rib.joint === 'tab-slot' || rib.joint === 'housing' ? 'tabs' : 'cleats'];
  const ribs = materials[rib.material];
  const board = materials[file.board.material ?? rib.material];
  if (ribs?.cut === 'laser' && board?.cut === 'laser' && ribs.thickness <= thinStock) return ['tabs', 'cleats'];
  // where no cleat finds space, tabs do with less; a jigsaw makes no slots
  const asked = [cleat.length, cleat.width, cleat.start].some((one) => one !== undefined);
  return asked || ribs?.cut === 'hand' ? ['cleats'] : ['cleats', 'tabs'];
}

/** Play that a coupon has shown in the material of the slots; none where it was cut otherwise, or not tried. */
function measuredFit(file: DesignFile, materials: Materials, slotted: string): number | undefined {
  const { materials: known } = file.machine.calibration;
  const own = Object.hasOwn(known, slotted) ? known[slotted] : undefined;
  if (own?.fit === undefined || own.cutBy !== materials[slotted]?.cut) return undefined;
  return Math.max(0, own.fit);
}

/** A third of the board, to half a millimetre (common practice, no source: a third to a half). */
function usualHousing(boardThickness: number): number {
  return Math.max(1, Math.round((2 * boardThickness) / 3)) / 2;
}

/** What the materials' thickness and cut come to. */
export function joineryOf(file: DesignFile, materials: Materials, holding: Holding): Joinery {
  const rib = materials[file.rib.material];
  const joint = file.rib.joint ?? (holding === 'tabs' ? 'tab-slot' : null);
  const inBoard = joint === 'tab-slot' || joint === 'housing';
  const slotted = (inBoard ? file.board.material : undefined) ?? file.rib.material;
  const thinHub = (materials[file.hub.material ?? file.rib.material]?.thickness ?? Infinity) <= thinStock;
  return {
    joint,
    fit: file.rib.fit ?? measuredFit(file, materials, slotted) ?? usualFit[rib?.cut ?? file.process.kind],
    hubBuild: file.hub.build ?? (joint === 'tab-slot' && thinHub ? 'slotted-discs' : 'layers'),
    housing: joint === 'housing' ? (file.rib.housing ?? usualHousing(materials[slotted]?.thickness ?? 0)) : 0,
  };
}

/** Least radius of the hub, and the one that is taken where the file leaves it out. */
export function hubRadii(
  { hubBuild, fit, housing }: Joinery,
  ribCount: number,
  ribThickness: number,
  discThickness: number,
): { readonly min: number; readonly usual: number } {
  if (hubBuild === 'layers') {
    const min = clearRadius(ribCount, housing > 0 ? ribThickness + fit + hubWeb : ribThickness);
    return { min, usual: min + 5 };
  }
  const min = minSlottedRadius({ ribCount, ribThickness, discThickness, fit });
  return { min, usual: min };
}
