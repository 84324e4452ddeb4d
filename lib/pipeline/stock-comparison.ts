/** What a sheet size means for a job: sheets, cost, waste, what is left. */
import type { Layout, NestPart } from '../nest/index.js';
import { polygonArea } from '../geometry/index.js';

export interface StockResult {
  readonly sheets: number;
  readonly cost: number;
  /** Area bought, area of the parts, m². */
  readonly boughtM2: number;
  readonly partsM2: number;
  /** Share of what is bought that is neither part nor a left-over rectangle worth keeping, 0 to 1. */
  readonly waste: number;
  /** The largest rectangle left, mm. */
  readonly offcut: { readonly width: number; readonly height: number } | null;
  readonly unplaced: readonly string[];
}

/** Results of the layouts of one job, one layout a process. */
export function stockResult(layouts: readonly Layout[], parts: readonly NestPart[]): StockResult {
  const sheets = layouts.flatMap((layout) => layout.sheets);
  const offcuts = sheets.flatMap((sheet) => (sheet.offcut ? [sheet.offcut] : []));
  const areaOf = new Map(
    parts.map((part) => [
      part.id,
      part.openings.reduce((area, ring) => area - Math.abs(polygonArea(ring)), Math.abs(polygonArea(part.outline))),
    ]),
  );
  const bought = sheets.reduce((sum, sheet) => sum + sheet.width * sheet.height, 0);
  const used = sheets.reduce(
    (sum, sheet) => sum + sheet.placed.reduce((area, placed) => area + (areaOf.get(placed.part) ?? 0), 0),
    0,
  );
  const left = offcuts.reduce((sum, { width, height }) => sum + width * height, 0);
  const largest = offcuts.reduce<(typeof offcuts)[number] | null>(
    (best, offcut) => (best && best.width * best.height >= offcut.width * offcut.height ? best : offcut),
    null,
  );
  return {
    sheets: sheets.length,
    cost: layouts.reduce((sum, layout) => sum + layout.cost, 0),
    boughtM2: bought / 1e6,
    partsM2: used / 1e6,
    waste: bought > 0 ? Math.max(0, (bought - used - left) / bought) : 0,
    offcut: largest && { width: largest.width, height: largest.height },
    unplaced: layouts.flatMap((layout) => layout.unplaced.map(({ part }) => part)),
  };
}
