/** What a job comes to: sheets, cost and weight to buy, weight of the parts, waste and time of the machine. */
import type { Design } from '../design/index.js';
import { polygonArea } from '../geometry/index.js';
import type { Layout, NestPart } from '../nest/index.js';
import { stockResult } from './stock-comparison.js';
import type { Job, Prepared } from './types.js';

/** Stock of one kind that is bought. */
export interface BoughtStock {
  readonly id: string;
  readonly material: string;
  /** Cut off a roll: `width` is the length of all together. */
  readonly roll: boolean;
  /** Sheets, or lengths of a roll. */
  readonly count: number;
  /** Of one sheet, mm. */
  readonly width: number;
  readonly height: number;
  /** Null where no price is stated. */
  readonly cost: number | null;
}

export interface Totals {
  readonly bought: readonly BoughtStock[];
  /** Of all stock with a price; null where none has one. */
  readonly cost: number | null;
  /** Materials without a price. */
  readonly unpriced: readonly string[];
  readonly boughtKg: number;
  /** Of the parts, without screws, glue and vessel. */
  readonly partsKg: number;
  /** Share of the area bought that is neither part nor a piece worth keeping, 0 to 1. */
  readonly waste: number;
}

/** kg of `area` mm² of a material. */
function kgOf({ materials }: Design, material: string, area: number): number {
  const found = materials[material];
  return found ? area * found.thickness * 1e-9 * found.densityKgPerM3 : 0;
}

const areaOf = ({ outline, openings }: NestPart): number =>
  openings.reduce((area, ring) => area - Math.abs(polygonArea(ring)), Math.abs(polygonArea(outline)));

/** @param layouts one a request, every part placed */
export function totalsOf(
  { design, requests }: Pick<Prepared, 'design' | 'requests'>,
  layouts: readonly Layout[],
): Totals {
  const parts = requests.flatMap((request) => request.parts);
  const sheets = layouts.flatMap((layout) => layout.sheets);
  const bought = design.stock.flatMap(({ id, material, price, rollWidth }): BoughtStock[] => {
    const used = sheets.filter(({ stock }) => stock === id);
    const [first] = used;
    if (!first) return [];
    const roll = rollWidth !== undefined;
    const length = used.reduce((sum, { width }) => sum + width, 0);
    const cost = price === 0 ? null : price * (roll ? length / 1000 : used.length);
    const { width, height } = first;
    return [{ id, material, roll, count: used.length, width: roll ? length : width, height, cost }];
  });
  const { waste } = stockResult(layouts, parts);
  const priced = bought.flatMap(({ cost }) => (cost === null ? [] : [cost]));
  const areaBought = (id: string): number =>
    sheets.filter(({ stock }) => stock === id).reduce((sum, { width, height }) => sum + width * height, 0);
  return {
    bought,
    cost: priced.length === 0 ? null : priced.reduce((sum, cost) => sum + cost, 0),
    unpriced: [...new Set(bought.flatMap(({ cost, material }) => (cost === null ? [material] : [])))],
    boughtKg: bought.reduce((sum, { id, material }) => sum + kgOf(design, material, areaBought(id)), 0),
    partsKg: parts.reduce((sum, part) => sum + part.quantity * kgOf(design, part.group, areaOf(part)), 0),
    waste,
  };
}

/** Minutes of the machine for all sheets; null where a time is not known, as without speeds of the laser, or by hand. */
export function machineMinutes({ routes, lasered }: Pick<Job, 'routes' | 'lasered'>): number | null {
  const seconds = [
    ...routes.map(({ plan }) => plan.cuttingSeconds),
    ...lasered.filter(({ sheet }) => !sheet.file.startsWith('templates/')).map(({ plan }) => plan.seconds),
  ];
  if (seconds.length === 0) return null;
  const sum = seconds.reduce<number | null>((total, one) => (total === null || one === null ? null : total + one), 0);
  return sum === null ? null : sum / 60;
}
