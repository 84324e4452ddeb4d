/** The shop drawings as the book shows them: those of the dish on screen and paper, those of the aids on screen alone. */
import { markup, type Markup } from '../markup.js';
import { pageSvg, type ShopDrawing } from '../shop/index.js';
import type { BookInput } from './input.js';

function pictures({ id, title, scale, pages }: ShopDrawing): Markup[] {
  return pages.map((page, i) => {
    const name = `${title}${pages.length > 1 ? `, page ${i + 1} of ${pages.length}` : ''}`;
    const label = `Shop drawing: ${name}, scale ${scale}`;
    return markup`<figure class="zoom" data-drawing="${id}">${pageSvg(page, label)}<figcaption>${name}</figcaption></figure>`;
  });
}

/** Null where there are none. */
export function drawingsChapter({ drawings, aids }: Pick<BookInput, 'drawings' | 'aids'>): Markup | null {
  if (drawings.length === 0) return null;
  const ofAids = new Set(aids.map(({ id }) => id));
  const own = drawings.filter(({ id }) => !ofAids.has(id));
  const others = drawings.filter(({ id }) => ofAids.has(id));
  return markup`<p>To be printed at the scale in the title block: <code>drawings.pdf</code>, which also has the templates, gauges and jigs.</p>
<div class="drawn">${own.flatMap(pictures)}</div>
${others.length > 0 ? markup`<div class="aids"><h3>Templates, gauges and jigs</h3><div class="drawn">${others.flatMap(pictures)}</div></div>` : null}`;
}
