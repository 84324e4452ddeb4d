/** The text of a design file as a YAML document, and the faults for which it is none. */
import { type Document, isNode, type LineCounter, parseDocument, visit } from 'yaml';
import type { Diagnostic } from '../diagnostic/index.js';
import { type LengthUnit, lengthUnits } from '../units/index.js';
import { slipIn } from './slips/slips.js';

/** A design file is a page or two; what is larger than this is something else. */
const longestFile = 64 * 1024;
/** The parser takes time with the square of what is wrong on a line. */
const longestLine = 2000;
const deepestNesting = 32;

/** Depth of the deepest bracket or indent, estimated on the text so that a hostile file never reaches the parser's stack. */
function tooDeep(text: string): boolean {
  let depth = 0;
  for (const character of text) {
    if (character === '[' || character === '{') depth += 1;
    else if (character === ']' || character === '}') depth -= 1;
    if (depth > deepestNesting) return true;
  }
  // block nesting needs an indent, and "- - - -" nests on one line; asked line by line, as a pattern over the whole
  // text takes time with the square of its blank lines
  return text.split('\n').some((line) => /^(?: {2,}|\t){32}/.test(line) || /^[ \t]*(?:[-?][ \t]+){32}/.test(line));
}

/** The unit of a file's bare lengths. */
export function unitOf(raw: unknown): LengthUnit {
  const stated = typeof raw === 'object' && raw !== null && 'units' in raw ? raw.units : undefined;
  return lengthUnits.find((unit) => unit === stated) ?? 'mm';
}

/** A text that is no design file whatever its keys say. */
export class NoDesign extends Error {
  constructor(readonly diagnostic: Diagnostic) {
    super(diagnostic.message);
  }
}

/** @throws NoDesign for a text that the YAML parser must not see */
function checkText(text: string): void {
  const refuse = (code: 'too-large' | 'not-text' | 'too-deep', message: string, remedy: string, line = 1): never => {
    throw new NoDesign({ code, severity: 'error', message, remedy, place: { path: [], line, column: 1 } });
  };
  if (text.length > longestFile)
    refuse('too-large', 'the design file is larger than 64 KB', 'give a design file, which is a page or two');
  const longLine = text.split('\n').findIndex((line) => line.length > longestLine);
  if (longLine >= 0)
    refuse(
      'too-large',
      `line ${longLine + 1} has more than ${longestLine} characters`,
      'split it, or give a design file',
      longLine + 1,
    );
  if (/^\ufffd\ufffd.\0/.test(text))
    refuse(
      'not-text',
      'this file is saved as UTF-16',
      'save it as UTF-8: editors offer this when they ask for the encoding',
    );
  if (text.includes('\0')) refuse('not-text', 'this is not a text file', 'give a design file, which is plain text');
  const lost = text.split('\n').findIndex((line) => line.includes('\ufffd'));
  if (lost >= 0)
    refuse(
      'not-text',
      `line ${lost + 1} has a character that cannot be read: the file was saved in an old encoding`,
      'save it as UTF-8: editors offer this when they ask for the encoding',
      lost + 1,
    );
  if (tooDeep(text))
    refuse('too-deep', `the design file is nested deeper than ${deepestNesting} levels`, 'write its keys in sections');
}

/** The first key that stands twice in one section, and where it stands for the first and the second time. */
function keyTwice(
  document: Document,
): { readonly key: string; readonly first: number; readonly second: number } | null {
  let found: { key: string; first: number; second: number } | null = null;
  visit(document, {
    Map(_, { items }) {
      const seen = new Map<string, number>();
      for (const { key } of items) {
        if (!isNode(key) || !key.range) continue;
        const first = seen.get(String(key));
        if (first !== undefined) found ??= { key: String(key), first, second: key.range[0] };
        seen.set(String(key), first ?? key.range[0]);
      }
      return undefined;
    },
  });
  return found;
}

/** Why the parser refuses a text, in the words of a person. */
function unreadable(text: string, document: Document, code: string, offset: number, lines: LineCounter): NoDesign {
  const at = (message: string, remedy: string, line: number, column: number): NoDesign =>
    new NoDesign({ code: 'unreadable', severity: 'error', message, remedy, place: { path: [], line, column } });
  const { line, col } = lines.linePos(offset);
  const twice = code === 'DUPLICATE_KEY' ? keyTwice(document) : null;
  if (twice) {
    const first = lines.linePos(twice.first).line;
    const { line, col } = lines.linePos(twice.second);
    const remedy = 'merge the two, and delete one';
    return at(`${twice.key} occurs twice here, first on line ${first}`, remedy, line, col);
  }
  const slip = slipIn(text, line);
  if (slip) return at(slip.message, slip.remedy, slip.line, slip.column);
  const remedy =
    'write each key with a colon, a space and its value, such as aperture: 1200, and text with special characters in quotes';
  return at('this line, or the one above it, cannot be read', remedy, line, col);
}

/** Refuses what the parser takes and a person may have meant otherwise. @throws NoDesign */
function refuseUnclear(text: string, document: Document, lines: LineCounter): void {
  const refuse = (code: 'alias' | 'wrong-value', offset: number, message: string, remedy: string): never => {
    const { line, col } = lines.linePos(offset);
    throw new NoDesign({ code, severity: 'error', message, remedy, place: { path: [], line, column: col } });
  };
  visit(document, {
    Alias(_, node) {
      const remedy = 'write the value out; put a text that begins with * in quotes';
      refuse('alias', node.range?.[0] ?? 0, 'design files cannot use aliases (*name)', remedy);
    },
    Seq(_, { range }) {
      if (!range) return undefined;
      const list = text.slice(range[0], range[1]);
      // 1,5, 2 may be two numbers or three
      if (!/^\[[^[\]]*\]$/.test(list) || !/\d,\d/.test(list) || !/\d, +\d/.test(list)) return undefined;
      const pointed = list.replace(/(\d),(?=\d)/g, '$1.');
      const apart = list.replace(/,\s*/g, ', ');
      const remedy = `write ${pointed} with decimal points, or ${apart} with a space after each comma`;
      return refuse('wrong-value', range[0], `the list ${list} mixes commas with and without a space`, remedy);
    },
  });
}

/** The text as a YAML document. @throws NoDesign when it is none, or holds what design files do without */
export function documentOf(text: string, lines: LineCounter): Document {
  checkText(text);
  const document = parseDocument(text, {
    lineCounter: lines,
    prettyErrors: false,
    uniqueKeys: true,
    strict: true,
    // a list or a mapping as a key has no meaning here
    stringKeys: true,
    merge: false,
  });
  const fault = document.errors[0];
  if (fault) throw unreadable(text, document, fault.code, fault.pos[0], lines);
  refuseUnclear(text, document, lines);
  return document;
}

/** The keys of a document. @throws NoDesign when it holds none */
export function keysOf(raw: unknown): object {
  if (raw === null || raw === undefined)
    throw new NoDesign({
      code: 'empty',
      severity: 'error',
      message: 'the design file is empty',
      remedy: '`dishwright new` writes one to start from',
      place: { path: [], line: 1, column: 1 },
    });
  if (typeof raw !== 'object' || Array.isArray(raw))
    throw new NoDesign({
      code: 'wrong-type',
      severity: 'error',
      message: 'this is not a design file: it has no keys with values, such as name: Garden dish',
      remedy: 'give a design file; `dishwright new` writes one to start from',
      place: { path: [], line: 1, column: 1 },
    });
  return raw;
}
