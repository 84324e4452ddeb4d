/**
 * Lines of RS-274/NGC as words, by the grammar of NISTIR 6556 (Kramer, Proctor and Messina 2000), cited from memory:
 * section 3.3, "Format of a Line"; its table 4 names the modal groups. Expressions and parameters are part of the
 * language, but no tool path of ours needs them, and what cannot be proven is refused.
 */
import type { MessageValues, RouterMessageId } from '../messages/index.js';
import type { Findings } from './findings.js';

/** Longest line, characters. */
const longestLine = 256;
const maxMWords = 4;
const letters = 'ABCDFGHIJKLMNPQRSTXYZ';

type Report = <Id extends RouterMessageId>(id: Id, values: MessageValues<Id>) => void;

export interface GcodeBlock {
  readonly line: number;
  readonly g: readonly number[];
  readonly m: readonly number[];
  readonly words: ReadonlyMap<string, number>;
  /** Texts of its comments. */
  readonly comments: readonly string[];
}

/** Table 4: G codes by modal group; only one of a group may stand on a line. */
const gGroups: readonly (readonly number[])[] = [
  [0, 1, 2, 3, 38.2, 80, 81, 82, 83, 84, 85, 86, 87, 88, 89],
  [17, 18, 19],
  [90, 91],
  [93, 94],
  [20, 21],
  [40, 41, 42],
  [43, 49],
  [98, 99],
  [54, 55, 56, 57, 58, 59, 59.1, 59.2, 59.3],
  [61, 61.1, 64],
  [4, 10, 28, 30, 53, 92, 92.1, 92.2, 92.3],
];
const mGroups: readonly (readonly number[])[] = [[0, 1, 2, 30, 60], [6], [3, 4, 5], [7, 8, 9], [48, 49]];

function checkGroups(
  codes: readonly number[],
  groups: readonly (readonly number[])[],
  letter: string,
  report: Report,
): void {
  // most lines have one code or none
  if (codes.length === 0) return;
  for (const code of codes)
    if (!groups.some((group) => group.includes(code))) report('ngc-unknown-code', { word: `${letter}${code}` });
  if (codes.length === 1) return;
  for (const group of groups) {
    const own = codes.filter((code) => group.includes(code));
    if (own.length > 1) report('ngc-exclusive', { words: own.map((code) => letter + String(code)).join(' and ') });
  }
}

/** A line without its comments, and those; null when a comment is not closed, or one stands in another. */
function stripped(text: string): { readonly code: string; readonly comments: readonly string[] } | null {
  if (!/[()]/.test(text)) return { code: text, comments: [] };
  let rest = '';
  const comments: string[] = [];
  let comment = '';
  let within = false;
  for (const sign of text) {
    if (within) {
      if (sign === '(') return null;
      if (sign === ')') {
        within = false;
        comments.push(comment);
      } else comment += sign;
    } else if (sign === '(') {
      within = true;
      comment = '';
    } else if (sign === ')') return null;
    else rest += sign;
  }
  return within ? null : { code: rest, comments };
}

/** One line as words; null for a line without words and comments. */
function readLine(text: string, line: number, report: Report): GcodeBlock | null {
  if (text.length > longestLine) report('ngc-long-line', { length: text.length, max: longestLine });
  if (/[^\t\x20-\x7e]/.test(text)) report('ngc-not-ascii', {});
  const read = stripped(text);
  if (read === null) {
    report('ngc-comment', {});
    return null;
  }
  // blanks mean nothing outside of comments, nor does the case of letters
  const { comments } = read;
  const packed = read.code.replace(/[\t ]/g, '').toUpperCase();
  if (packed === '') return comments.length === 0 ? null : { line, g: [], m: [], words: new Map(), comments };
  const body = packed.replace(/^N\d{1,5}(?:\.\d+)?/, '');
  const g: number[] = [];
  const m: number[] = [];
  const words = new Map<string, number>();
  let at = 0;
  const word = /([A-Z])([+-]?(?:\d+\.?\d*|\.\d+))/y;
  while (at < body.length) {
    word.lastIndex = at;
    const found = word.exec(body);
    if (found === null) {
      report('ngc-word', { text: body.slice(at, at + 12) });
      return null;
    }
    const [all, letter = '', digits = ''] = found;
    const value = Number(digits);
    at += all.length;
    if (!letters.includes(letter)) report('ngc-letter', { letter });
    else if (letter === 'G') g.push(value);
    else if (letter === 'M') m.push(value);
    else if (words.has(letter)) report('ngc-letter-twice', { letter });
    else words.set(letter, value);
  }
  checkGroups(g, gGroups, 'G', report);
  checkGroups(m, mGroups, 'M', report);
  if (m.length > maxMWords) report('ngc-many-m', { count: m.length, max: maxMWords });
  return { line, g, m, words, comments };
}

/**
 * The blocks of a file. Text outside of a pair of `%` lines is ignored, as the standard has it; a file without them
 * must end by M2 or M30.
 */
export const readBlocks = (name: string, text: string, findings: Findings): GcodeBlock[] => [
  ...eachBlock(name, text, findings),
];

/** `readBlocks`, one after the other: who needs the first alone reads no further. */
export function* eachBlock(name: string, text: string, findings: Findings): Generator<GcodeBlock, void> {
  const lines = text.split(/\r?\n/);
  const isMark = (one: string): boolean => one.trim() === '%';
  const first = lines.findIndex((one) => one.trim() !== '');
  const marked = first >= 0 && isMark(lines[first]!);
  const start = marked ? first + 1 : 0;
  const end = marked ? lines.findIndex((one, i) => i >= start && isMark(one)) : lines.length;
  if (marked && end < 0) findings.add('ngc-percent', name, {});
  for (let i = start; i < (end < 0 ? lines.length : end); i += 1) {
    const block = readLine(lines[i]!, i + 1, (id, values) => {
      findings.add(id, name, values, { line: i + 1 });
    });
    if (block !== null) yield block;
  }
}
