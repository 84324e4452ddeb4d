/** The best of several layouts of the same request, group by group. */
import type { Layout, NestedSheet, NestPart, NestStock, Unplaced } from './types.js';

interface Share {
  readonly sheets: readonly NestedSheet[];
  readonly unplaced: readonly Unplaced[];
  readonly cost: number;
}

/** Negative when a is better: fewer parts left over, then cheaper, then fewer sheets, then shorter on the last one. */
function compare(a: Share, b: Share): number {
  const left = ({ unplaced }: Share): number => unplaced.reduce((sum, { copies }) => sum + copies, 0);
  if (left(a) !== left(b)) return left(a) - left(b);
  if (Math.abs(a.cost - b.cost) > 1e-9 * Math.max(1, a.cost, b.cost)) return a.cost - b.cost;
  if (a.sheets.length !== b.sheets.length) return a.sheets.length - b.sheets.length;
  return (a.sheets.at(-1)?.usedLength ?? 0) - (b.sheets.at(-1)?.usedLength ?? 0);
}

/**
 * One layout made of the best group of each of the given ones; of equals the first. Deterministic: the order of
 * `layouts` decides, not their time of arrival.
 * @param layouts at least one
 */
export function bestOf(layouts: readonly Layout[], parts: readonly NestPart[], stock: readonly NestStock[]): Layout {
  const groupOfStock = new Map(stock.map(({ id, group }) => [id, group]));
  const groupOfPart = new Map(parts.map(({ id, group }) => [id, group]));
  const priceOf = new Map(
    stock.map(({ id, price, shape }) => [id, shape.kind === 'roll' ? { metre: price } : { sheet: price }]),
  );
  const costOf = (sheet: NestedSheet): number => {
    const price = priceOf.get(sheet.stock);
    if (!price) return 0;
    return 'metre' in price ? (price.metre * sheet.width) / 1000 : price.sheet;
  };
  const groups = [...new Set(groupOfPart.values())];
  const chosen = groups.map((group): Share => {
    const shares = layouts.map((layout): Share => {
      const sheets = layout.sheets.filter((sheet) => groupOfStock.get(sheet.stock) === group);
      return {
        sheets,
        unplaced: layout.unplaced.filter(({ part }) => groupOfPart.get(part) === group),
        cost: sheets.reduce((sum, sheet) => sum + costOf(sheet), 0),
      };
    });
    return shares.reduce((best, share) => (compare(share, best) < 0 ? share : best));
  });
  return {
    sheets: chosen.flatMap(({ sheets }) => sheets),
    unplaced: chosen.flatMap(({ unplaced }) => unplaced),
    cost: chosen.reduce((sum, { cost }) => sum + cost, 0),
  };
}
