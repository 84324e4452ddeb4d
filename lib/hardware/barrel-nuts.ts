/**
 * Barrel nuts: a short cross-bored cylinder in a hole through a plate's faces, into which a bolt goes from the plate's
 * edge. Millimetres; the cylinders of furniture fittings, from memory.
 */
import { type Bolt, bolt } from './bolts.js';

export interface BarrelNut {
  /** Of the bolt that goes into it: `M8`, `5/16 in`. */
  readonly size: string;
  /** Hole for its cylinder, through the faces. */
  readonly hole: number;
}

const barrelNuts: readonly BarrelNut[] = [
  { size: 'M5', hole: 10 },
  { size: 'M6', hole: 10 },
  { size: 'M8', hole: 12 },
  { size: 'M10', hole: 14 },
  { size: '3/16 in', hole: 10 },
  { size: '1/4 in', hole: 10 },
  { size: '5/16 in', hole: 12 },
  { size: '3/8 in', hole: 14 },
];

/** The nut for a size of bolt; null where none is sold. */
export function barrelNut(size: string): BarrelNut | null {
  return barrelNuts.find((one) => one.size === size) ?? null;
}

export interface BarrelBolt {
  readonly bolt: Bolt;
  /** Under the head; null when none that is sold will do. */
  readonly length: number | null;
  /** Depth of the hole for it, from the edge. */
  readonly depth: number;
}

/** Free depth past the bolt's end, mm: dust stays in a blind hole (common practice, no source). */
const beyondEnd = 3;

/**
 * The shortest bolt sold that goes through `through` mm and right through a barrel nut whose axis lies `setback` mm from
 * the edge, a washer under its head.
 * @throws RangeError for a size that is not sold
 */
export function barrelBolt(size: string, through: number, setback: number): BarrelBolt {
  const one = bolt(size);
  const before = one.washer.thickness + through;
  const needed = before + setback + (barrelNut(size)?.hole ?? 0) / 2;
  const length = one.lengths.find((sold) => sold >= needed) ?? null;
  return { bolt: one, length, depth: (length ?? needed) - before + beyondEnd };
}
