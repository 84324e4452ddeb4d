/** The text of a design file as a YAML document, and the faults for which it is none. */
import { type Document, isAlias, type LineCounter, parseDocument, visit } from 'yaml';
import type { Diagnostic } from '../diagnostic/index.js';
import { type LengthUnit, lengthUnits } from '../units/index.js';

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
      'break it, or give a design file',
      longLine + 1,
    );
  if (text.includes('\0')) refuse('not-text', 'this is not a text file', 'a design file is YAML text');
  if (tooDeep(text))
    refuse('too-deep', `the design file is nested deeper than ${deepestNesting} levels`, 'write its keys in sections');
}

/** The text as a YAML document. @throws NoDesign when it is none, or holds what design files do without */
export function documentOf(text: string, lines: LineCounter): Document {
  checkText(text);
  const refuse = (code: 'not-yaml' | 'alias', message: string, remedy: string, offset: number): never => {
    const { line, col } = lines.linePos(offset);
    throw new NoDesign({ code, severity: 'error', message, remedy, place: { path: [], line, column: col } });
  };
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
  if (fault) {
    const reason = fault.message.split('\n')[0] ?? '';
    refuse('not-yaml', `not readable as YAML: ${reason}`, 'check brackets, quotes and indents here', fault.pos[0]);
  }
  visit(document, {
    Node(_, node) {
      if (isAlias(node))
        refuse('alias', 'aliases (*name) are not used in design files', 'write the value out', node.range?.[0] ?? 0);
    },
  });
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
      message: 'this is not a design file',
      remedy: 'a design file is a list of keys with values (name: …, dish: …)',
      place: { path: [], line: 1, column: 1 },
    });
  return raw;
}
