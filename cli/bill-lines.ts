/** What a person may want to know of the stock that is bought: whether less would do. */
import { billsOf, type GroupBill, type Layout, type NestPart, type NestStock } from '../lib/nest/index.js';

/** Fuller than this nothing but a jigsaw is: not worth a try at the bench. */
const fullest = 0.97;

function billLine({ group, sheets, lengths, cost, proven, cheaper }: GroupBill, priced: boolean): string {
  const noun = sheets === lengths ? 'length' : 'sheet';
  const money = (amount: number): string => (priced ? ` for ${amount.toFixed(2)}` : '');
  const bought = `${group}: ${sheets} ${sheets === 1 ? noun : `${noun}s`}${money(cost)}`;
  if (proven) return `${bought}, the minimum: no cheaper choice has enough area.`;
  if (cheaper === null || cheaper.filled > fullest)
    return `${bought}; anything cheaper would be over ${100 * fullest} % full.`;
  const stock = cheaper.stock.map(({ id, count }) => `${count} ${id}`).join(' and ');
  const full = `${Math.round(100 * cheaper.filled)} % full`;
  return `${bought}; ${stock}${money(cheaper.price)} would be ${full}, but no layout was found: a smaller margin, a smaller bit or fewer ribs may make it fit.`;
}

/** What the nest was asked for. */
export interface Asked {
  readonly parts: readonly NestPart[];
  readonly stock: readonly NestStock[];
  readonly options: { readonly spacing: number };
}

/** The bills of all requests, from the sheets that were laid. */
export function billsOfAll(requests: readonly Asked[], sheets: Layout['sheets']): GroupBill[] {
  return requests.flatMap(({ parts, stock, options }) => {
    const own = new Set(stock.map(({ id }) => id));
    const laid = sheets.filter(({ stock: id }) => own.has(id));
    return billsOf(parts, stock, options.spacing, { sheets: laid, unplaced: [], cost: 0 });
  });
}

/** A line for each material. */
export function billLines(bills: readonly GroupBill[]): string[] {
  const priced = bills.some(({ cost }) => cost > 0);
  return bills.map((bill) => billLine(bill, priced));
}
