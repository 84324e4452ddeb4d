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
}

/** What the materials' thickness and cut come to. */
export function joineryOf(file: DesignFile, materials: Materials): Joinery {
  const rib = materials[file.rib.material];
  const board = materials[file.board.material ?? file.rib.material];
  const cutByLaser = rib?.cut === 'laser' && board?.cut === 'laser';
  const joint = file.rib.joint ?? (cutByLaser && rib.thickness <= thinStock ? 'tab-slot' : null);
  const thinHub = (materials[file.hub.material ?? file.rib.material]?.thickness ?? Infinity) <= thinStock;
  return {
    joint,
    fit: file.rib.fit ?? usualFit[rib?.cut ?? file.process.kind],
    hubBuild: file.hub.build ?? (joint === 'tab-slot' && thinHub ? 'slotted-discs' : 'layers'),
  };
}

/** Least radius of the hub, and the one that is taken where the file leaves it out. */
export function hubRadii(
  { hubBuild, fit }: Joinery,
  ribCount: number,
  ribThickness: number,
  discThickness: number,
): { readonly min: number; readonly usual: number } {
  if (hubBuild === 'layers') {
    const min = clearRadius(ribCount, ribThickness);
    return { min, usual: min + 5 };
  }
  const min = minSlottedRadius({ ribCount, ribThickness, discThickness, fit });
  return { min, usual: min };
}
