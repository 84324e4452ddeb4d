/** The shop drawings of the dish as the book shows them. */
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

/** Null where there are none. Those of the aids are left to `drawings.pdf`: they would double the chapter. */
export function drawingsChapter({ drawings, aids }: Pick<BookInput, 'drawings' | 'aids'>): Markup | null {
  if (drawings.length === 0) return null;
  const ofAids = new Set(aids.map(({ id }) => id));
  const own = drawings.filter(({ id }) => !ofAids.has(id));
  return markup`<p>To be printed at the scale in the title block: <code>drawings.pdf</code>, which also has the templates, gauges and jigs.</p>
<div class="drawn">${own.flatMap(pictures)}</div>`;
}
