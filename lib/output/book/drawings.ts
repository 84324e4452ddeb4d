/** The shop drawings of the dish as the book shows them. */
import { markup, type Markup } from '../markup.js';
import type { PartKind } from '../../part/index.js';
import { pageSvg, type ShopDrawing } from '../shop/index.js';
import type { BookInput } from './input.js';
import { type Block, block } from './leaves.js';
import type { Paper } from './paper.js';

/** Height of a drawing on paper, at the smallest, mm: lower, its letters are too small to be read. */
const SHEET = 112;
const CAPTION = 6;

interface Pictured {
  readonly body: Markup;
  /** Height over width. */
  readonly shape: number;
}

function pictures({ id, title, scale, pages }: ShopDrawing): Pictured[] {
  return pages.map((page, i) => {
    const name = `${title}${pages.length > 1 ? `, page ${i + 1} of ${pages.length}` : ''}`;
    const label = `Shop drawing: ${name}, scale ${scale}`;
    const body = markup`<figure class="zoom drawn" data-drawing="${id}">${pageSvg(page, label)}<figcaption>${name}</figcaption></figure>`;
    return { body, shape: page.height / page.width };
  });
}

/** The pages of a drawing, to be printed. */
export function onPaper(drawing: ShopDrawing, width: number): Block[] {
  return pictures(drawing).map(({ body, shape }) =>
    block(body, width, { height: SHEET, max: Math.max(SHEET, shape * width + CAPTION), grows: true }),
  );
}

/** What a person at the machine measures by; the rest comes out of it as the files have it. */
const measured: ReadonlySet<PartKind> = new Set(['rib']);

type Where = 'paper' | 'screen' | 'elsewhere';

/** Where a drawing is shown: those of the aids are left to `drawings.pdf`, which they would double the chapter of. */
function placeOf({ id }: ShopDrawing, { aids, parts, printed, design, sheets }: BookInput): Where {
  if (aids.some((aid) => aid.id === id)) return 'elsewhere';
  const part = parts.find((one) => one.id === id);
  if (design.process.kind === 'hand' || part === undefined) return 'paper';
  if (printed.some((one) => one.id === id)) return sheets === null ? 'paper' : 'elsewhere';
  return measured.has(part.kind) ? 'paper' : 'screen';
}

/**
 * Drawings of what this builder makes by hand, and of what is measured, on paper too; the others on the screen. What is
 * cut by hand beside a machine has its drawing with its sheet.
 */
export function drawingsBlocks(input: BookInput, { width }: Paper): Block[] {
  const at = (where: Where): ShopDrawing[] => input.drawings.filter((drawing) => placeOf(drawing, input) === where);
  if (input.drawings.length === 0) return [];
  const words = markup`<p>To be printed at the scale in the title block: <code>drawings.pdf</code>, which has the drawings of all parts, templates, gauges and jigs.</p>`;
  // what paper has comes first, so that its pages are not torn apart by what it has not
  return [
    block(words, width),
    ...at('paper').flatMap((drawing) => onPaper(drawing, width)),
    ...at('screen').flatMap((drawing) =>
      pictures(drawing).map(({ body }) => block(body, width, { height: 0, screen: true })),
    ),
  ];
}
