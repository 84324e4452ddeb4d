/** Tee nuts, which are driven into wood from the far side of a bolt. Millimetres; sizes of DIN 1624, from memory. */
import { type Bolt, bolt } from './bolts.js';

export interface TeeNut {
  /** Of the bolt that goes into it: `M6`, `1/4 in`. */
  readonly size: string;
  /** Hole for its barrel. */
  readonly hole: number;
  /** Diameter of its flange. */
  readonly flange: number;
}

const inch = 25.4;

const teeNuts: readonly TeeNut[] = [
  { size: 'M5', hole: 6.5, flange: 17 },
  { size: 'M6', hole: 8, flange: 19 },
  { size: 'M8', hole: 10, flange: 22 },
  { size: '1/4 in', hole: (5 / 16) * inch, flange: 0.75 * inch },
  { size: '5/16 in', hole: (3 / 8) * inch, flange: 0.875 * inch },
];

export const teeNutSizes = teeNuts.map(({ size }) => size);

/** @throws RangeError for a size that is not sold */
export function teeNut(size: string): TeeNut {
  const found = teeNuts.find((one) => one.size === size);
  if (found === undefined) throw new RangeError(`no tee nut of size ${size}`);
  return found;
}

/** The longest bolt sold that ends flush with the far face of `wood` mm, a washer under its head; null when none does. */
export function teeBoltLength(size: string, wood: number): number | null {
  const one: Bolt = bolt(size);
  return one.lengths.findLast((length) => length <= wood + one.washer.thickness + 1e-9) ?? null;
}
