/** Countersunk wood screws as they are sold, with the holes that they need. Millimetres. */

import type { SizeSystem } from './size-system.js';

export interface WoodScrew {
  /** As the design file names it: `4`, `no 8`. */
  readonly size: string;
  readonly system: SizeSystem;
  /** Shank. */
  readonly diameter: number;
  readonly headDiameter: number;
  /** Hole that the shank passes through. */
  readonly clearance: number;
  /** Hole that the thread bites into, in plywood and hardwood. */
  readonly pilot: number;
  /** Lengths sold. */
  readonly lengths: readonly number[];
}

const inch = 25.4;

/**
 * Clearance: the smallest drill sold in steps of 0.5 mm at or above the fine series of ISO 273. Pilot: 90 % of the root
 * diameter (American Wood Council, hardwood), the root taken as two thirds of the shank, to the next 0.5 mm (from
 * memory). Heads: twice the shank, as chipboard screws have. Lengths: common practice, no source.
 */
const metric: readonly WoodScrew[] = [
  { diameter: 2.5, clearance: 3, pilot: 1.5, lengths: [10, 12, 16, 20, 25] },
  { diameter: 3, clearance: 3.5, pilot: 2, lengths: [12, 16, 20, 25, 30, 35, 40, 45] },
  { diameter: 3.5, clearance: 4, pilot: 2, lengths: [16, 20, 25, 30, 35, 40, 45, 50] },
  { diameter: 4, clearance: 4.5, pilot: 2.5, lengths: [16, 20, 25, 30, 35, 40, 45, 50, 60, 70] },
  { diameter: 4.5, clearance: 5, pilot: 2.5, lengths: [20, 25, 30, 35, 40, 45, 50, 60, 70, 80] },
  { diameter: 5, clearance: 5.5, pilot: 3, lengths: [25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 120] },
  { diameter: 6, clearance: 6.5, pilot: 3.5, lengths: [40, 50, 60, 70, 80, 90, 100, 120, 140, 160] },
].map((screw) => ({ size: String(screw.diameter), system: 'metric', headDiameter: 2 * screw.diameter, ...screw }));

/**
 * Shank: 0.060 in + 0.013 in a number, and the greatest flat head, by ASME B18.6.1 (heads from memory). Clearance and
 * pilot in hardwood by a boatyard's chart for 8 to 14, from memory for 4 and 6. Lengths: common practice, no source.
 */
const inches: readonly WoodScrew[] = [
  { number: 4, head: 0.225, clearance: 1 / 8, pilot: 1 / 16, longest: 1.5 },
  { number: 6, head: 0.279, clearance: 9 / 64, pilot: 5 / 64, longest: 2 },
  { number: 8, head: 0.332, clearance: 11 / 64, pilot: 7 / 64, longest: 3 },
  { number: 10, head: 0.385, clearance: 3 / 16, pilot: 1 / 8, longest: 3.5 },
  { number: 12, head: 0.438, clearance: 7 / 32, pilot: 9 / 64, longest: 4 },
  { number: 14, head: 0.507, clearance: 1 / 4, pilot: 5 / 32, longest: 4 },
].map(({ number, head, clearance, pilot, longest }) => ({
  size: `no ${number}`,
  system: 'inch',
  diameter: (0.06 + 0.013 * number) * inch,
  headDiameter: head * inch,
  clearance: clearance * inch,
  pilot: pilot * inch,
  lengths: [0.5, 0.625, 0.75, 1, 1.25, 1.5, 1.75, 2, 2.25, 2.5, 3, 3.5, 4]
    .filter((length) => length <= longest)
    .map((length) => length * inch),
}));

export const woodScrews: readonly WoodScrew[] = [...metric, ...inches];

export const woodScrewSizes = woodScrews.map(({ size }) => size);

/** @throws RangeError for a size that is not sold */
export function woodScrew(size: string): WoodScrew {
  const found = woodScrews.find((screw) => screw.size === size);
  if (found === undefined) throw new RangeError(`no wood screw of size ${size}`);
  return found;
}

/** The thickest screw of a system whose shank is at most `diameter` (mm); the thinnest when none is. */
export function woodScrewWithin(diameter: number, system: SizeSystem): WoodScrew {
  const sold = woodScrews.filter((screw) => screw.system === system);
  return sold.findLast((screw) => screw.diameter <= diameter + 1e-9) ?? woodScrew(system === 'metric' ? '2.5' : 'no 4');
}

/** Wood that stays over a screw's point, mm: common practice, no source. */
export const tipCover = 2;

/** The longest screw sold of at most `space` mm, or null when even the shortest is longer. */
export function screwLengthWithin(screw: WoodScrew, space: number): number | null {
  return screw.lengths.findLast((length) => length <= space + 1e-9) ?? null;
}

/** The shortest screw sold of at least `wanted` mm; the longest within `space` where that is longer, null when none is. */
export function screwLengthFrom(screw: WoodScrew, wanted: number, space: number): number | null {
  const enough = screw.lengths.find((length) => length >= wanted - 1e-9);
  return enough !== undefined && enough <= space + 1e-9 ? enough : screwLengthWithin(screw, space);
}
