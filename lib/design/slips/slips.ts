/**
 * Slips of the pen for which a design file cannot be read, told as a person made them: the colon without its space, the
 * tab, the quote that stays open. Looked for only once the parser has refused the text, so that no good file is blamed.
 */
import { closing, type ScannedLine, scanned } from './scan.js';

/** What is wrong, how to fix it, and where (1-based). */
export interface Slip {
  readonly message: string;
  readonly remedy: string;
  readonly line: number;
  readonly column: number;
}

type Found = Pick<Slip, 'message' | 'remedy'> & { readonly column?: number };

/** A key at the start of a line, after the dash of a list. */
const KEY = /^(\s*(?:- +)?)([A-Za-z][\w-]*)/;

/** A text as it stands within quotes: in those that it does not hold itself. */
function quoted(text: string): string {
  return text.includes('"') ? `'${text.replace(/'/g, "''")}'` : `"${text}"`;
}

const short = (text: string): string => (text.length > 50 ? `${text.slice(0, 49)}…` : text);

function tabs({ text }: ScannedLine): Found | null {
  const found = /^ *\t/.exec(text);
  if (!found) return null;
  return {
    message: 'the line is indented with a tab, but only spaces are allowed',
    remedy: 'replace each tab by two spaces; most editors can be set to do so',
    column: 1,
  };
}

function secondFile({ text, number }: ScannedLine, all: readonly ScannedLine[]): Found | null {
  const before = all.slice(0, number).some(({ bare }) => bare.trim() !== '');
  if (!/^(?:---|\.\.\.)(?:\s|$)/.test(text) || !before) return null;
  return {
    message: `a line of ${text.slice(0, 3)} begins a second document within this file`,
    remedy: 'delete the line, or move what follows it to a file of its own',
  };
}

function noSpace({ bare, text, depth }: ScannedLine): Found | null {
  const dash = depth === 0 ? /^(\s*)-(?=[A-Za-z{[])/.exec(bare) : null;
  if (dash)
    return {
      message: 'there is no space after the dash',
      remedy: `write ${short(`- ${text.slice(dash[0].length)}`)}`,
      column: dash[0].length,
    };
  const own = depth === 0 ? /^(\s*(?:- +)?)([A-Za-z][\w-]*):(?=[^\s/\\])/.exec(bare) : null;
  if (own)
    return {
      message: `there is no space after the colon of ${own[2] ?? ''}`,
      remedy: `write ${short(`${own[2] ?? ''}: ${text.slice(own[0].length)}`)}`,
      column: (own[1] ?? '').length + 1,
    };
  const inner = /([{,]\s*)([A-Za-z][\w-]*):(?=[^\s,\]}/\\])/.exec(bare);
  if (!inner) return null;
  const rest = /^[^,\]}]*/.exec(text.slice(inner.index + inner[0].length))?.[0] ?? '';
  return {
    message: `there is no space after the colon of ${inner[2] ?? ''}`,
    remedy: `write ${short(`${inner[2] ?? ''}: ${rest.trimEnd()}`)}`,
    column: inner.index + (inner[1] ?? '').length + 1,
  };
}

const names: Readonly<Record<string, string>> = { '{': 'brace', '[': 'bracket', '}': 'brace', ']': 'bracket' };

function signs({ text, faults }: ScannedLine): Found | null {
  const [fault] = faults;
  if (!fault) return null;
  const { sign, column } = fault.at;
  switch (fault.kind) {
    case 'quote-open': {
      const whole = text.slice(column + 1).replace(/\s+#.*$/, '');
      return {
        message: `the quotation mark ${sign} is not closed`,
        remedy: `write ${short(quoted(whole.trim()))}, or remove the mark`,
        column: column + 1,
      };
    }
    case 'quote-inside': {
      const inner = text.slice(column + 1).replace(new RegExp(`${sign}?\\s*$`), '');
      return {
        message: `a quotation mark ${sign} is inside a text in the same marks`,
        remedy: `put the text in the other kind of quotes: ${short(quoted(inner))}`,
        column: column + 1,
      };
    }
    case 'not-opened':
      return {
        message: `the ${names[sign] ?? 'sign'} ${sign} closes nothing`,
        remedy: `remove it`,
        column: column + 1,
      };
    case 'not-closed':
      return {
        message: `the ${names[sign] ?? 'sign'} ${sign} is not closed`,
        remedy: `put a ${closing[sign] ?? sign} at the end of what it encloses`,
        column: column + 1,
      };
  }
}

/** Two keys between the same commas. */
function noComma({ bare, text }: ScannedLine): Found | null {
  const start = bare.search(/[{[]/);
  if (start < 0) return null;
  const found = /([A-Za-z][\w-]*: +[^,{}[\]:;]*?)(\s*;\s*|\s+)([A-Za-z][\w-]*:)(?=\s)/.exec(bare.slice(start));
  if (!found) return null;
  const [, before = '', between = '', key = ''] = found;
  const from = start + found.index;
  const rest = /^[^,;\]}]*/.exec(text.slice(from + before.length + between.length))?.[0] ?? key;
  const value = text.slice(from, from + before.length).replace(/^.*: +/, '');
  return {
    message: between.includes(';')
      ? `there is a semicolon before ${key.slice(0, -1)} instead of a comma`
      : `the comma before ${key.slice(0, -1)} is missing`,
    remedy: `write ${short(`${value}, ${rest.trimEnd()}`)}`,
    column: from + before.length + 1,
  };
}

/** A text that would have to stand in quotes, for the signs in it. */
function needsQuotes({ bare, text, depth }: ScannedLine): Found | null {
  const found = depth === 0 ? /^(\s*(?:- +)?)([A-Za-z][\w-]*): +(?=[^\s~[{])/.exec(bare) : null;
  if (!found) return null;
  const value = bare.slice(found[0].length);
  const raw = text.slice(found[0].length, bare.length).trimEnd();
  const write = `put the text in quotes: ${found[2] ?? ''}: ${short(quoted(raw))}`;
  const column = found[0].length + 1;
  const first = value[0] ?? '';
  if (/[@`%*&!|>]/.test(first))
    return { message: `a text that begins with ${first} cannot be read without quotes`, remedy: write, column };
  if (/:(?:\s|$)/.test(value))
    return { message: `there is a colon in the text of ${found[2] ?? ''}`, remedy: write, column };
  return null;
}

/** Blamed only on the line at which the parser stopped, as they are good elsewhere. */
function atFault(line: ScannedLine, all: readonly ScannedLine[]): Found | null {
  const { bare, text, indent, depth } = line;
  if (bare.trim() === '' || depth > 0) return null;
  if (/^\s*[{[]/.test(bare))
    return {
      message: 'there is no dash in front of this list item',
      remedy: `write ${short(`- ${text.trim()}`)}`,
      column: indent + 1,
    };
  const key = KEY.exec(bare);
  if (key && !/:(?:\s|$)/.test(bare)) {
    const rest = bare.slice(key[0].length).replace(/^\s*[=:]?\s*/, '');
    return {
      message: `there is no colon after ${key[2] ?? ''}`,
      remedy: `write ${short(`${key[2] ?? ''}: ${rest === '' ? '…' : rest}`)}`,
      column: (key[1] ?? '').length + 1,
    };
  }
  return offIndent(line, all);
}

/** A line that stands deeper than its section, or at an indent that no section above it has. */
function offIndent(line: ScannedLine, all: readonly ScannedLine[]): Found | null {
  const levels: number[] = [];
  let opened = true;
  for (const { bare, indent, depth, number } of all.slice(0, line.number + 1)) {
    if (bare.trim() === '' || depth > 0) continue;
    const back = levels.some((level) => level > indent);
    while ((levels.at(-1) ?? -1) > indent) levels.pop();
    const above = levels.at(-1) ?? 0;
    const deeper = indent > above && !opened;
    if (number === line.number)
      return deeper || (back && indent !== above)
        ? {
            message: `the indent of this line, ${indent} ${indent === 1 ? 'space' : 'spaces'}, matches no section here`,
            remedy: 'indent all keys of a section equally, by two spaces more than the section itself',
            column: indent + 1,
          }
        : null;
    if (levels.length === 0 || indent > above) levels.push(indent);
    const inner = /^\s*- +/.exec(bare)?.[0].length;
    if (inner !== undefined) levels.push(inner);
    opened = bare.endsWith(':');
  }
  return null;
}

/**
 * The slip for which a text cannot be read.
 * @param stopped the line at which the parser stopped, 1-based
 * @returns null where none of the usual slips is found
 */
export function slipIn(text: string, stopped: number): Slip | null {
  const all = scanned(text);
  for (const line of all) {
    const near = Math.abs(line.number + 1 - stopped) <= 1;
    const anywhere =
      line.bare.trim() === '' && line.faults.length === 0
        ? tabs(line)
        : (tabs(line) ?? secondFile(line, all) ?? signs(line) ?? noSpace(line) ?? noComma(line) ?? needsQuotes(line));
    const found = anywhere ?? (near ? atFault(line, all) : null);
    if (found) return { ...found, line: line.number + 1, column: found.column ?? line.indent + 1 };
  }
  return null;
}
