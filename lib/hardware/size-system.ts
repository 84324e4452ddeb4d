import { inInches, type LengthUnit } from '../units/index.js';

/** Sizes by which a shop sells: metric by the shank, inch by the gauge number. */
export const sizeSystems = ['metric', 'inch'] as const;
export type SizeSystem = (typeof sizeSystems)[number];

/** The sizes that a design gets which is written in a unit. */
export const sizeSystemOf = (unit: LengthUnit): SizeSystem => (inInches(unit) ? 'inch' : 'metric');
