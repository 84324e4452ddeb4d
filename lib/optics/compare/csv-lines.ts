/** Reading CSV by RFC 4180, with the line that each row begins on. */

/** A row as written. */
export interface CsvRow {
  /** From 1. */
  readonly line: number;
  readonly fields: readonly string[];
}

/** A quote that is opened and never closed, or text after a closing quote. */
export class BrokenQuote extends Error {
  constructor(readonly line: number) {
    super(`a quoted field in line ${line} is not closed`);
  }
}

/** A field from `at` on: its text and where the next separator, line end or end of the text stands. */
function fieldFrom(text: string, at: number, line: number): readonly [value: string, end: number] {
  if (text[at] !== '"') {
    let end = at;
    while (end < text.length && !',\r\n'.includes(text.charAt(end))) end += 1;
    return [text.slice(at, end).trim(), end];
  }
  let value = '';
  for (let i = at + 1; i < text.length; i++) {
    if (text[i] !== '"') value += text.charAt(i);
    else if (text[i + 1] === '"') {
      value += '"';
      i += 1;
    } else {
      if (i + 1 < text.length && !',\r\n'.includes(text.charAt(i + 1))) throw new BrokenQuote(line);
      return [value.trim(), i + 1];
    }
  }
  throw new BrokenQuote(line);
}

/**
 * The rows of a text. Empty lines and lines that begin with # are left out; a byte order mark is skipped.
 * @throws BrokenQuote
 */
export function csvRows(text: string): CsvRow[] {
  const rows: CsvRow[] = [];
  let line = 1;
  let at = text.startsWith('\uFEFF') ? 1 : 0;
  while (at < text.length) {
    const start = line;
    if (text[at] === '#') {
      const end = text.indexOf('\n', at);
      at = end < 0 ? text.length : end + 1;
      line += 1;
      continue;
    }
    const fields: string[] = [];
    for (;;) {
      const [value, end] = fieldFrom(text, at, start);
      line += text.slice(at, end).split('\n').length - 1;
      fields.push(value);
      at = end;
      if (text[at] !== ',') break;
      at += 1;
    }
    if (text[at] === '\r') at += 1;
    if (text[at] === '\n') at += 1;
    line += 1;
    if (fields.some((field) => field !== '')) rows.push({ line: start, fields });
  }
  return rows;
}
