/** The one writer of CSV. */
import { decimal } from './decimal.js';

/** Text is taken as text, whatever it looks like; a number is written with a point and at most `digits` decimals. */
export type Cell = string | { readonly value: number; readonly digits: number };

/**
 * First characters that make a spreadsheet take text as a formula, full-width forms included, also after white space
 * (OWASP, "CSV Injection"). An apostrophe before them makes it text.
 */
const FORMULA = /^\s*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r\n]/;

function cellText(cell: Cell): string {
  if (typeof cell !== 'string') return decimal(cell.value, cell.digits);
  const safe = FORMULA.test(cell) ? `'${cell}` : cell;
  // a semicolon or tab divides fields in some countries' spreadsheets, so it is quoted too
  return /[",;\t\r\n]/.test(safe) || safe !== safe.trim() ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/**
 * Rows as CSV by RFC 4180: commas, CRLF, quotes doubled, no byte order mark. The first row is the heading.
 * @throws RangeError for a number that is not finite, or a row that is longer or shorter than the first
 */
export function writeCsv(rows: readonly (readonly Cell[])[]): string {
  const columns = rows[0]?.length ?? 0;
  return rows
    .map((row, i) => {
      if (row.length !== columns) throw new RangeError(`row ${i + 1} has ${row.length} cells, the first ${columns}`);
      return `${row.map(cellText).join(',')}\r\n`;
    })
    .join('');
}
