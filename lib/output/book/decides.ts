/** What decides whether a dish is built: what it does, and what it costs in money, wood and hours. */
import { markup, type Markup } from '../markup.js';
import type { BookInput } from './input.js';
import type { Measures } from './measures.js';
import { partsWeight, stockCost } from './shopping.js';

/** Rows of the forecast that belong on the first page, by what they are called there and here. */
const asked = [
  ['power absorbed', 'Power in the sun'],
  ['time to target', 'Hot after'],
] as const;

function hours(seconds: number): string {
  const minutes = Math.ceil(seconds / 60);
  return minutes < 100 ? `${minutes} min` : `${(minutes / 60).toFixed(1)} h`;
}

/** The second row of the title block. */
export function decides(input: BookInput, measures: Measures): Markup {
  const { forecast, cutPictures, design, parts, sheets } = input;
  const rows = forecast.kind === 'made' ? forecast.rows : [];
  const cost = stockCost(input, measures);
  const routed = cutPictures.reduce((sum, one) => sum + (one.routed?.cuttingSeconds ?? 0), 0);
  const cells: (readonly [string, string])[] = [
    ...asked.flatMap(([label, head]) => {
      const found = rows.find((row) => row.label === label);
      return found ? [[head, found.value] as const] : [];
    }),
    ...(cost === null ? [] : [['Stock, in your currency', cost.toFixed(2)] as const]),
    ['Weight of the dish', measures.weight(partsWeight(design, parts))],
    ['Sheets and rolls', sheets === null ? 'being nested' : String(sheets.length)],
    ...(routed > 0 ? [['Router runs', hours(routed)] as const] : []),
  ];
  return markup`<dl class="block decides" aria-label="What decides">${cells.map(([head, value]) => markup`<div><dt>${head}</dt><dd>${value}</dd></div>`)}</dl>`;
}
