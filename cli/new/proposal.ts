/** What a new design comes to, before it is written: its sizes with their reasons, what it costs and what it does. */
import {
  forecastOf,
  formatLength,
  keyEntries,
  litOf,
  prepare,
  quickTotals,
  readDesign,
  summaryRows,
} from '../../lib/index.js';
import { summaryCells } from '../summary-cells.js';
import { totalsLines } from '../totals-lines.js';

/** For a quick look: power within a few per cent. */
const fewRays = 4000;

/** Rows of the forecast that a beginner asks for. */
const shownLabels: ReadonlySet<string> = new Set(['hits the vessel', 'power absorbed', 'time to target']);

/** @param text a design that `check` takes */
export async function proposalLines(text: string): Promise<string[]> {
  const reading = readDesign(text);
  if (reading.kind !== 'design') return [];
  const { design } = reading;
  const { units, hub, board, dish, vessel } = design;
  const size = (mm: number) => formatLength(mm, units);
  const why = (path: string): string => keyEntries().find((entry) => entry.path === path)?.auto ?? '';
  const prepared = prepare(design);
  const totals = await quickTotals(prepared, false);
  const { forecast } = vessel ? forecastOf(litOf(design), fewRays) : { forecast: null };
  const rows = forecast === null ? [] : summaryRows(forecast, size).filter(({ label }) => shownLabels.has(label));
  return [
    `${dish.ribs} ribs, focal length ${size(dish.focalLength)}.`,
    `Hub: radius ${size(hub.radius)} (${why('hub.radius')}).`,
    `Backer board: ${size(board.size)} (${why('board.size')}).`,
    ...(totals ? totalsLines(totals, units, null) : []),
    ...rows.map((row) => {
      const [label = '', value = '', , note = ''] = summaryCells(row, units);
      return `${label}: ${value}${note === '' ? '' : ` (${note})`}`;
    }),
  ];
}
