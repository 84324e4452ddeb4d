/** What the command line may set over the design file. */
import { handOnly } from './complete.js';
import type { Design, StockItem } from './design.js';
import type { ProcessKind } from './sections/process.js';
import type { LengthUnit, Size } from '../units/index.js';

/**
 * The same design on sheets of another size: every kind of sheet is replaced; offcuts and rolls stay.
 * The price is scaled by area, since the price of the other size is not known.
 */
export function withSheetSize(design: Design, size: Size): Design {
  const resized = design.stock.map((item): StockItem => {
    if (!item.size) return item;
    const price = (item.price * (size.width * size.height)) / (item.size.width * item.size.height);
    return { ...item, size, price, keepOuts: [] };
  });
  // two sizes of one material would become the same sheet twice
  const unique = resized.filter(
    (item, i) => !item.size || resized.findIndex((other) => other.size && other.material === item.material) === i,
  );
  return { ...design, stock: unique };
}

export function withProcess(design: Design, kind: ProcessKind): Design {
  const materials = Object.fromEntries(
    Object.entries(design.materials).map(([id, material]) => [
      id,
      material.cut === design.process.kind && !handOnly(material.kind) ? { ...material, cut: kind } : material,
    ]),
  );
  return { ...design, materials, process: { ...design.process, kind } };
}

export function withUnits(design: Design, units: LengthUnit): Design {
  return { ...design, units };
}

export function withNest(design: Design, nest: Partial<Design['nest']>): Design {
  return { ...design, nest: { ...design.nest, ...nest } };
}
