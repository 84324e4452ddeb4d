/** Bolts with the holes that they need. Millimetres. */
import type { SizeSystem } from './size-system.js';

export interface Bolt {
  /** As the design file names it: `M8`, `5/16 in`. */
  readonly size: string;
  readonly system: SizeSystem;
  readonly diameter: number;
  readonly clearance: number;
  /** Outside diameter and thickness of its washer. */
  readonly washer: { readonly diameter: number; readonly thickness: number };
  /** Height of its nut. */
  readonly nut: number;
  readonly lengths: readonly number[];
}

const inch = 25.4;

const metricLengths = [16, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 120, 130, 140, 150, 160, 180, 200];

/** Clearance: medium series of ISO 273. Washers of ISO 7089 and nuts of ISO 4032, from memory. */
const metric: readonly Bolt[] = (
  [
    ['M3', 3, 3.4, 7, 0.5, 2.4],
    ['M4', 4, 4.5, 9, 0.8, 3.2],
    ['M5', 5, 5.5, 10, 1, 4.7],
    ['M6', 6, 6.6, 12, 1.6, 5.2],
    ['M8', 8, 9, 16, 1.6, 6.8],
    ['M10', 10, 11, 20, 2, 8.4],
    ['M12', 12, 13.5, 24, 2.5, 10.8],
    ['M16', 16, 17.5, 30, 3, 14.8],
  ] as const
).map(([size, diameter, clearance, across, thickness, nut]) => ({
  size,
  system: 'metric',
  diameter,
  clearance,
  washer: { diameter: across, thickness },
  nut,
  lengths: metricLengths,
}));

/** Clearance: 1/32 in over the bolt. Washers (ASME B18.21.1, narrow) and nuts (ASME B18.2.2) from memory. */
const inches: readonly Bolt[] = (
  [
    ['3/16 in', 3 / 16, 7 / 16, 0.049, 0.125],
    ['1/4 in', 1 / 4, 5 / 8, 0.065, 7 / 32],
    ['5/16 in', 5 / 16, 11 / 16, 0.065, 17 / 64],
    ['3/8 in', 3 / 8, 13 / 16, 0.065, 21 / 64],
    ['1/2 in', 1 / 2, 17 / 16, 0.095, 7 / 16],
  ] as const
).map(([size, diameter, across, thickness, nut]) => ({
  size,
  system: 'inch',
  diameter: diameter * inch,
  clearance: (diameter + 1 / 32) * inch,
  washer: { diameter: across * inch, thickness: thickness * inch },
  nut: nut * inch,
  lengths: [0.75, 1, 1.25, 1.5, 1.75, 2, 2.25, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6, 7, 8].map((length) => length * inch),
}));

export const bolts: readonly Bolt[] = [...metric, ...inches];

export const boltSizes = bolts.map(({ size }) => size);

/** @throws RangeError for a size that is not sold */
export function bolt(size: string): Bolt {
  const found = bolts.find((one) => one.size === size);
  if (found === undefined) throw new RangeError(`no bolt of size ${size}`);
  return found;
}

/** The thickest bolt of a system that passes a hole of `diameter` mm; the thinnest when none does. */
export function boltForHole(diameter: number, system: SizeSystem): Bolt {
  const sold = bolts.filter((one) => one.system === system);
  return sold.findLast((one) => one.diameter <= diameter + 1e-9) ?? bolt(system === 'metric' ? 'M3' : '3/16 in');
}

/**
 * The shortest bolt sold that clamps `grip` mm between two washers and still shows a thread's height past its nut; null
 * when none is long enough.
 */
export function boltLengthFor(one: Bolt, grip: number): number | null {
  const needed = grip + 2 * one.washer.thickness + one.nut + 0.1 * one.diameter;
  return one.lengths.find((length) => length >= needed) ?? null;
}

/** Room from the axis of a bolt's hole (mm) to what stands beside it: half a washer, and 1 mm (common practice, no source). */
export const washerSpace = (hole: number): number => 1.1 * hole + 1;

/** The bolt whose clearance hole has that diameter (mm). @throws RangeError where no bolt has */
export function boltOfClearance(hole: number): Bolt {
  const found = bolts.find(({ clearance }) => Math.abs(clearance - hole) < 1e-6);
  if (found === undefined) throw new RangeError(`no bolt has a clearance hole of ${hole} mm`);
  return found;
}
