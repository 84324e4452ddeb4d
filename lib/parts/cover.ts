/**
 * The cover: a disc of cloth over the rim, drawn together behind it by a cord in a hem. Millimetres. Widths and allowances
 * are common practice, no source.
 */
import type { Design } from '../design/index.js';
import type { Dish } from '../dish/index.js';
import { bounds } from '../geometry/index.js';
import type { Part } from '../part/index.js';
import { inInches } from '../units/index.js';

/** Cloth as it is sold, what the hem with the cord takes, and to what lengths are rounded: 60 in wide, 1-1/2 in, 1/2 in. */
const metric = { clothWidth: 1500, hem: 40, step: 10 };
const inch = { clothWidth: 1524, hem: 38.1, step: 12.7 };
/** What a seam of the cloth takes. */
const seam = 15;
/** Behind the lower corner of the rim, so that the cord holds. */
const behind = 60;
/** Ends of the cord to tie. */
const cordEnds = 600;

export interface Cover {
  /** Outermost radius of the dish. */
  readonly rim: number;
  /** Radius of the disc as it is cut: over the rim, down behind it and the hem. */
  readonly radius: number;
  /** What is turned over for the cord. */
  readonly hem: number;
  readonly clothWidth: number;
  /** Lengths of cloth that are sewn side by side, each as long as the disc is there. */
  readonly lengths: readonly number[];
  readonly cord: number;
  /** Whether pipes or the vessel cross the plane of the rim, so that the cloth is slit to its middle. */
  readonly slit: boolean;
}

/** Lengths of cloth that make a disc of that radius, begun at one side: each as long as the disc is within its width. */
export function clothLengths(radius: number, width: number): number[] {
  const count = Math.ceil((2 * radius) / width - 1e-9);
  return Array.from({ length: count }, (_, i) => {
    const [from, to] = [i * width - radius, (i + 1) * width - radius];
    const near = from < 0 && to > 0 ? 0 : Math.min(Math.abs(from), Math.abs(to));
    return 2 * Math.sqrt(radius ** 2 - near ** 2);
  });
}

/** The cover of a dish. */
export function coverOf({
  design,
  dish,
  parts,
}: {
  readonly design: Design;
  readonly dish: Dish;
  readonly parts: readonly Part[];
}): Cover {
  const rib = parts.find(({ kind }) => kind === 'rib');
  const rim = Math.max(dish.apertureRadius, rib ? dish.innerRadius + bounds(rib.outline).maxX : 0);
  const { clothWidth, hem, step } = inInches(design.units) ? inch : metric;
  const up = (length: number): number => step * Math.ceil(length / step - 1e-9);
  const radius = up(rim + design.rib.rimHeight + behind + hem);
  const base = dish.focusHeight.atRim + Math.min(0, design.vessel?.offset ?? 0);
  return {
    rim,
    radius,
    hem,
    clothWidth,
    lengths: clothLengths(radius, clothWidth - 2 * seam).map(up),
    cord: 100 * Math.ceil((2 * Math.PI * rim + cordEnds) / 100),
    slit: design.vessel !== undefined && base <= dish.depth,
  };
}
