/** Whether what a layout buys is the least that could do, and what it would be if not. */
import { billsBelow } from './bill.js';
import { tasksOf } from './nest.js';
import type { Layout, NestPart, NestStock } from './types.js';

/** A cheaper choice of stock that has the area. */
export interface CheaperBill {
  readonly stock: readonly { readonly id: string; readonly count: number }[];
  /** Of rolls the least that could be paid for the area that the sheets leave over. */
  readonly price: number;
  /** Share of its area that the parts would cover. */
  readonly filled: number;
}

/** The stock that one group of material takes. */
export interface GroupBill {
  readonly group: string;
  readonly cost: number;
  readonly sheets: number;
  /** Those of them that are lengths of a roll. */
  readonly lengths: number;
  /** Whether no cheaper choice has the area, the sizes and the counts: then it is the least there can be. */
  readonly proven: boolean;
  /** Of the cheaper choices the one with most area to spare; null where there is none. */
  readonly cheaper: CheaperBill | null;
}

/**
 * The bill of each group of a layout of these parts on this stock. Groups with parts left over are left out.
 * @throws NestError as `nest` does
 */
export function billsOf(
  parts: readonly NestPart[],
  stock: readonly NestStock[],
  spacing: number,
  layout: Layout,
): GroupBill[] {
  const missing = new Set(layout.unplaced.map(({ part }) => part));
  return tasksOf(parts, stock, spacing).flatMap((task): GroupBill[] => {
    if (task.parts.some(({ id }) => missing.has(id))) return [];
    const own = new Map(task.stock.map((item) => [item.id, item]));
    const bought = layout.sheets.filter(({ stock: id }) => own.has(id));
    const cost = bought.reduce((sum, { stock: id, width }) => {
      const item = own.get(id);
      return sum + (item?.shape.kind === 'roll' ? (item.price * width) / 1000 : (item?.price ?? 0));
    }, 0);
    const lengths = bought.filter(({ stock: id }) => own.get(id)?.shape.kind === 'roll').length;
    const present = task.spaces.map((space) => bought.filter(({ stock: id }) => id === space.stock.id).length);
    const { bills, all } = billsBelow(task.pieces, task.spaces, task.noFits, { cost, sheets: bought.length }, present);
    const [loosest] = [...bills].sort((a, b) => a.filled - b.filled || a.price - b.price);
    const cheaper = loosest && {
      stock: task.spaces.flatMap((space) => {
        const count = loosest.spaces.filter((one) => one === space).length;
        return count > 0 ? [{ id: space.stock.id, count }] : [];
      }),
      price: loosest.price,
      filled: loosest.filled,
    };
    const group = task.parts[0]?.group ?? '';
    return [
      { group, cost, sheets: bought.length, lengths, proven: all && bills.length === 0, cheaper: cheaper ?? null },
    ];
  });
}
