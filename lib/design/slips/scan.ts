/** The lines of a design file with their quotes and brackets followed, as far as slips of the pen need it. */

/** A quote or bracket where it opens. */
export interface Opening {
  readonly sign: string;
  /** 0-based. */
  readonly line: number;
  readonly column: number;
}

/** What is wrong with quotes or brackets on a line. */
export type SignFault =
  | { readonly kind: 'quote-open'; readonly at: Opening }
  /** Text stands behind a closing quote. */
  | { readonly kind: 'quote-inside'; readonly at: Opening }
  | { readonly kind: 'not-opened'; readonly at: Opening }
  | { readonly kind: 'not-closed'; readonly at: Opening };

export interface ScannedLine {
  readonly text: string;
  readonly number: number;
  /** The text with quoted pieces as `~` and without its comment. */
  readonly bare: string;
  readonly indent: number;
  /** Brackets that are open where the line begins. */
  readonly depth: number;
  readonly faults: readonly SignFault[];
}

const closes: Readonly<Record<string, string>> = { '}': '{', ']': '[' };
/** The sign that closes a bracket. */
export const closing: Readonly<Record<string, string>> = { '{': '}', '[': ']' };

/** The end of a quoted piece that opens at `from`, or null where the line ends before it. */
function quoteEnd(text: string, from: number): number | null {
  const quote = text[from];
  for (let i = from + 1; i < text.length; i += 1) {
    if (quote === '"' && text[i] === '\\') i += 1;
    else if (text[i] !== quote) continue;
    else if (quote === "'" && text[i + 1] === quote) i += 1;
    else return i;
  }
  return null;
}

/** Whether a value may begin at this place of a line. */
function beginsValue(text: string, at: number): boolean {
  return /(?:^|^\s*-|[:\-,]\s|[[{,])\s*$/.test(text.slice(0, at));
}

/** Follows a bracket; true for one that closes nothing. */
function bracket(at: Opening, text: string, bare: string, open: Opening[]): boolean {
  const { sign, column } = at;
  if (sign in closing) {
    if (open.length > 0 || beginsValue(text, column) || bare.endsWith(':')) open.push(at);
    return false;
  }
  if (!(sign in closes)) return false;
  if (open.at(-1)?.sign !== closes[sign]) return open.length > 0 || /[{[]/.test(bare);
  open.pop();
  return false;
}

function scanLine(text: string, number: number, open: Opening[]): ScannedLine {
  const depth = open.length;
  const faults: SignFault[] = [];
  let bare = '';
  for (let i = 0; i < text.length; i += 1) {
    const sign = text[i] ?? '';
    const at = { sign, line: number, column: i };
    if (sign === '#' && (i === 0 || /\s/.test(text[i - 1] ?? ''))) break;
    if ((sign === '"' || sign === "'") && beginsValue(text, i)) {
      const end = quoteEnd(text, i);
      if (end === null || !/^\s*(?:$|[,\]}:#])/.test(text.slice(end + 1))) {
        faults.push({ kind: end === null ? 'quote-open' : 'quote-inside', at });
        return { text, number, bare: bare + '~'.repeat(text.length - i), indent: indentOf(text), depth, faults };
      }
      bare += '~'.repeat(end - i + 1);
      i = end;
      continue;
    }
    const stray = bracket(at, text, bare, open);
    if (stray) faults.push({ kind: 'not-opened', at });
    bare += sign;
  }
  return { text, number, bare: bare.trimEnd(), indent: indentOf(text), depth, faults };
}

const indentOf = (text: string): number => /^[ \t]*/.exec(text)?.[0].length ?? 0;

/** Every line of a text, brackets that are never closed at the line on which they open. */
export function scanned(text: string): ScannedLine[] {
  const open: Opening[] = [];
  const lines: ScannedLine[] = [];
  text.split(/\r?\n/).forEach((row, number) => {
    const first = open[0];
    // a key that stands no deeper than the line with the bracket belongs to what follows it
    const next = /^\s*(?:- )?[A-Za-z][\w-]*:(?:\s|$)|^\s*- /.test(row);
    const home = first === undefined ? undefined : lines[first.line];
    if (first && home && next && indentOf(row) <= home.indent) {
      lines[first.line] = { ...home, faults: [...home.faults, { kind: 'not-closed', at: open.at(-1) ?? first }] };
      open.length = 0;
    }
    lines.push(scanLine(row, number, open));
  });
  const last = open.at(-1);
  const home = last === undefined ? undefined : lines[last.line];
  if (last && home) lines[last.line] = { ...home, faults: [...home.faults, { kind: 'not-closed', at: last }] };
  return lines;
}
