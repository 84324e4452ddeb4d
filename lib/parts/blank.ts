/** What the makers of parts have in common. */
import { formatLength } from '../units/index.js';
import type { Design, StockItem } from '../design/index.js';
import type { Grain } from '../part/index.js';

/** Thickness of a material of the design (mm), 0 for none. */
export function thicknessOf(design: Design, material: string | undefined): number {
  return material === undefined ? 0 : (design.materials[material]?.thickness ?? 0);
}

/** A length in the user's unit. */
export function inUnits(design: Design, mm: number): string {
  return formatLength(mm, design.units);
}

/** Width and height of a stock item inside its margin, or null for an offcut, whose shape the nest knows better. */
export function usableSize(item: StockItem): { readonly width: number; readonly height: number } | null {
  if (item.size) return { width: item.size.width - 2 * item.margin, height: item.size.height - 2 * item.margin };
  if (item.rollWidth !== undefined) return { width: item.rollLength, height: item.rollWidth - 2 * item.margin };
  return null;
}

/**
 * The grain that a part should have, or `any` when it would then fit no sheet of its material.
 * @param length along the part's x axis, `width` across (mm)
 */
export function grainThatFits(
  design: Design,
  material: string,
  wanted: Exclude<Grain, 'any'>,
  length: number,
  width: number,
): Grain {
  const [along, across] = wanted === 'along' ? [length, width] : [width, length];
  const fits = design.stock.some((item) => {
    const size = item.material === material ? usableSize(item) : null;
    return size !== null && along <= size.width && across <= size.height;
  });
  return fits ? wanted : 'any';
}
