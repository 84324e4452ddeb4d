/** How much of a printed page a piece of the book takes, before any reader has set it. */
import { CAPITALS, textWidth } from '../shop/font.js';
import type { Markup } from '../markup.js';

/** Size of the printed text, mm, and the distance of its lines. */
export const PRINTED_TEXT = (8.2 / 72) * 25.4;
const LINE = 1.34 * PRINTED_TEXT;
/** A reader's font may be wider than Helvetica by this: DejaVu Sans is. */
const WIDER = 1.11;
/** Words do not fill a line to its end. */
const RAGGED = 4;
/** Room at the right of a cell. */
const CELL = 1.6;

const plain = (html: string): string =>
  html
    .replace(/<svg[\s\S]*?<\/svg>|<button[^>]*>|<[^>]*>/g, '')
    .replace(/&[a-z#0-9]+;/g, '’')
    .replace(/\s+/g, ' ')
    .trim();

const widthOf = (text: string, size: number): number => WIDER * textWidth(text, size * PRINTED_TEXT * CAPITALS);

function linesFor(text: string, width: number, size: number, more = 0): number {
  return Math.max(1, Math.ceil((widthOf(text, size) + more) / Math.max(width - RAGGED, 8)));
}

/**
 * Lines that a piece of the page takes in a column of a width (mm).
 * @param size relative to the printed text
 * @param more of what stands in the lines beside the text, mm
 */
export const linesOf = ({ text }: Markup, width: number, size = 1, more = 0): number =>
  linesFor(plain(text), width, size, more);

interface Cell {
  readonly text: string;
  readonly wraps: boolean;
}

function cellsOf(row: string): Cell[] {
  return [...row.matchAll(/<t[hd]([^>]*)>([\s\S]*?)<\/t[hd]>/g)].map(([, attributes = '', text = '']) => ({
    text: plain(text),
    wraps: /words/.test(attributes),
  }));
}

/** Rows of a table: what does not wrap takes what it needs, the widest of the others has what is left. */
function tableHeight(html: string, width: number, size: number): number {
  const rows = [...html.matchAll(/<tr[^>]*>([\s\S]*?)<\/tr>/g)].map(([, row = '']) => cellsOf(row));
  const columns = Math.max(0, ...rows.map((row) => row.length));
  const natural = Array.from({ length: columns }, (_, i) =>
    Math.max(0, ...rows.map((row) => widthOf(row[i]?.text ?? '', size) + CELL)),
  );
  const wraps = natural.map((_, i) => rows.some((row) => row[i]?.wraps));
  const fixed = natural.reduce((sum, each, i) => sum + (wraps[i] ? 0 : each), 0);
  const wished = natural.reduce((sum, each, i) => sum + (wraps[i] ? each : 0), 0);
  const left = Math.max(width - fixed, 20);
  const share = wished > left ? left / wished : 1;
  const line = 1.36 * size * PRINTED_TEXT;
  return rows.reduce((sum, row) => {
    const lines = row.map(({ text }, i) =>
      wraps[i] && share < 1 ? linesFor(text, Math.max(share * (natural[i] ?? 0), 12) + RAGGED, size) : 1,
    );
    return sum + Math.max(1, ...lines) * line + 0.55;
  }, 0);
}

const blocks = /<(table|h3|p|li|caption|figcaption)\b[^>]*>([\s\S]*?)<\/\1>/g;

/** Height of paragraphs, lists, headings and tables in a column, mm. Pictures are not counted. */
export function printedHeight({ text }: Markup, width: number, size = 1): number {
  let sum = 0;
  for (const [, name, inner = ''] of text.matchAll(blocks)) {
    if (name === 'table') {
      const caption = /<caption>([\s\S]*?)<\/caption>/.exec(inner)?.[1] ?? '';
      sum +=
        tableHeight(inner, width, 0.9 * size) + (caption === '' ? 2 : linesFor(plain(caption), width, 1) * LINE + 3);
    } else if (name === 'h3') sum += 1.1 * LINE + 2.6;
    else {
      const indent = name === 'li' ? 9 : 0;
      sum += linesFor(plain(inner), width - indent, size) * LINE * size + (name === 'li' ? 0.5 : 1.3);
    }
  }
  return sum;
}
