/**
 * A hub of two slotted discs, for ribs of thin stock: each rib stands in a slot of both, and a nose at its inner end
 * lies between them, so that the bolt on the axis clamps all ribs at once. Proportions: common practice, no source.
 */
import { clearRadius } from './set-back.js';

/** What decides the proportions, mm. */
export interface SlottedHubSource {
  readonly ribCount: number;
  readonly ribThickness: number;
  readonly discThickness: number;
  /** Play of a rib in its slot. */
  readonly fit: number;
}

/** How far the nose reaches inward past the bottom of the slot: two thicknesses of the disc that lies on it, mm. */
export const noseLength = (discThickness: number): number => Math.max(5, 2 * discThickness);

/** Length of a slot from the edge of the disc inward, mm. */
const slotLength = (discThickness: number): number => Math.max(10, 4 * discThickness);

/** From the axis to the edge of the discs, whose slots end where the ribs start, mm. */
export const slottedReach = (slotRadius: number, discThickness: number): number =>
  slotRadius + slotLength(discThickness);

/** The noses keep this far off each other, mm. */
const noseClearance = 0.5;

/**
 * Least radius of the slots' bottoms: the noses clear each other and the bolt, which takes a third of the radius at
 * most, and the wood between two slots is as wide as the disc is thick, 3 mm at least.
 */
export function minSlottedRadius({ ribCount, ribThickness, discThickness, fit }: SlottedHubSource): number {
  const nose = noseLength(discThickness);
  const web = Math.max(3, discThickness);
  return Math.max(
    clearRadius(ribCount, ribThickness) + noseClearance + nose,
    clearRadius(ribCount, ribThickness + fit + web),
    1.5 * (nose + 1),
  );
}

/** The upper disc stays this far below the panels, mm. */
const discBelowPanels = 1;

/** Height above the board of the upper disc's lower face: as high as it goes below the panels. */
export function upperDiscHeight(innerEndHeight: number, discThickness: number): number {
  return Math.floor(2 * (innerEndHeight - discBelowPanels - discThickness)) / 2;
}

/** Least height of the ribs' inner ends: two discs, and a nose between them as high as both. */
export function minHeightOverDiscs(discThickness: number): number {
  return 4 * discThickness + discBelowPanels + 0.5;
}
