/** Panel pins. Millimetres; diameters and lengths sold: common practice, no source. */
import { type SizeSystem, sizeSystems } from './size-system.js';

export interface Pin {
  readonly size: string;
  readonly system: SizeSystem;
  readonly diameter: number;
  readonly lengths: readonly number[];
}

const inch = 25.4;

const pins: readonly Pin[] = [
  { size: '1.2 mm', system: 'metric', diameter: 1.2, lengths: [15, 20, 25] },
  { size: '1.4 mm', system: 'metric', diameter: 1.4, lengths: [20, 25, 30, 35] },
  // wire brads by gauge: 18 gauge is 0.0475 in
  { size: '18 gauge', system: 'inch', diameter: 0.0475 * inch, lengths: [5 / 8, 3 / 4, 1].map((one) => one * inch) },
];

/** How deep a pin goes into a rib, mm: ten diameters, common practice, no source. */
export const pinDepth = 12;

/** Least distance of a pin from the edge of a panel and from the face of a rib, mm: common practice, no source. */
export const woodAtPin = 1.5;

/** The thinnest pin of a system that goes `depth` mm into the rib through a panel of `thickness` mm. */
export function pinFor(
  thickness: number,
  depth: number,
  system: SizeSystem,
): { readonly pin: Pin; readonly length: number } {
  const sold = pins.filter((pin) => pin.system === system);
  for (const pin of sold) {
    const length = pin.lengths.find((one) => one >= thickness + depth);
    if (length !== undefined) return { pin, length };
  }
  const last = sold.at(-1);
  const longest = last?.lengths.at(-1);
  if (last === undefined || longest === undefined) throw new RangeError(`no pins in ${system} sizes`);
  return { pin: last, length: longest };
}

/**
 * The longest pin that `pinFor` gives in any system. What has to clear a pin is placed by it, so that a design is the same
 * whatever unit it is written in.
 */
export function pinReach(thickness: number, depth: number): number {
  return Math.max(...sizeSystems.map((system) => pinFor(thickness, depth, system).length));
}
