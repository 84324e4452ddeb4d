/** Narrow-crown staples. Millimetres; leg lengths sold: common practice, no source. */
import { type SizeSystem, sizeSystems } from './size-system.js';

export interface Staple {
  readonly size: string;
  readonly system: SizeSystem;
  /** Thickness of a leg. */
  readonly diameter: number;
  readonly lengths: readonly number[];
}

const inch = 25.4;

const staples: readonly Staple[] = [
  { size: '5.8 mm crown', system: 'metric', diameter: 1.25, lengths: [12, 15, 18, 22, 25, 28] },
  // 18 gauge wire is 0.0475 in thick
  {
    size: '18 gauge, 1/4 in crown',
    system: 'inch',
    diameter: 0.0475 * inch,
    lengths: [1 / 2, 5 / 8, 3 / 4, 1].map((one) => one * inch),
  },
];

/** The staple of a system, and the shortest leg that goes `depth` mm into the rib through a panel of `thickness` mm. */
export function stapleFor(
  thickness: number,
  depth: number,
  system: SizeSystem,
): { readonly staple: Staple; readonly length: number } {
  const staple = staples.find((one) => one.system === system);
  const longest = staple?.lengths.at(-1);
  if (staple === undefined || longest === undefined) throw new RangeError(`no staples in ${system} sizes`);
  return { staple, length: staple.lengths.find((one) => one >= thickness + depth) ?? longest };
}

/** The longest leg that `stapleFor` gives in any system, as `pinReach` of pins. */
export function stapleReach(thickness: number, depth: number): number {
  return Math.max(...sizeSystems.map((system) => stapleFor(thickness, depth, system).length));
}
