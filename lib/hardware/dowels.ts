/** Wooden dowel rod, cut to length. Millimetres. Diameters sold: common practice, no source. */
import type { SizeSystem } from './size-system.js';

export interface Dowel {
  readonly size: string;
  readonly system: SizeSystem;
  readonly diameter: number;
}

const inch = 25.4;

export const dowels: readonly Dowel[] = [
  ...[3, 4, 5, 6, 8, 10, 12].map((mm): Dowel => ({ size: `${mm} mm`, system: 'metric', diameter: mm })),
  ...(
    [
      ['1/8 in', 1 / 8],
      ['3/16 in', 3 / 16],
      ['1/4 in', 1 / 4],
      ['5/16 in', 5 / 16],
      ['3/8 in', 3 / 8],
    ] as const
  ).map(([size, inches]): Dowel => ({ size, system: 'inch', diameter: inches * inch })),
];

/** Wood round a dowel: half its diameter, and 3 mm at least: common practice, no source. */
const wallAtDowel = (diameter: number): number => Math.max(3, diameter / 2);

/** Dowels at radii that differ by less than this are mistaken for each other, mm. */
export const dowelStagger = 2;

/** Radii between which a dowel has wood round it, between a hole on the axis and the edge of a hub, mm. */
export function dowelRoom(
  diameter: number,
  hubRadius: number,
  axisHole: number,
): { readonly from: number; readonly to: number } {
  const space = diameter / 2 + wallAtDowel(diameter);
  return { from: axisHole / 2 + space, to: hubRadius - space };
}
