/** A design file's text to its keys, with every problem found in one pass and the line of each. */
import { isAlias, LineCounter, parseDocument, visit } from 'yaml';
import * as z from 'zod';
import { type Diagnostic, diagnostic, hasError, pathText, type Locate } from '../diagnostic/index.js';
import { complete } from './complete.js';
import type { Design } from './design.js';
import { locator, shown as showHidden } from './locate.js';
import { nearestWord } from './nearest.js';
import type { KeyFault } from './keys.js';
import { designSchema } from './schema.js';
import { type LengthUnit, lengthUnits } from '../units/index.js';

/** A design file is a page or two; what is larger than this is something else. */
const longestFile = 64 * 1024;
/** The parser takes time with the square of what is wrong on a line. */
const longestLine = 2000;
const deepestNesting = 32;

export type DesignReading =
  | {
      readonly kind: 'design';
      readonly design: Design;
      readonly problems: readonly Diagnostic[];
      /** Puts a diagnostic that is made later on its line. */
      readonly locate: Locate;
    }
  | {
      readonly kind: 'refused';
      readonly problems: readonly Diagnostic[];
      /** The design where only the workshop stands in its way: the light can be asked all the same. */
      readonly unbuilt?: { readonly design: Design; readonly locate: Locate };
    };

/** What keeps a dish from being cut but not from being forecast. */
const workshop: ReadonlySet<Diagnostic['code']> = new Set<Diagnostic['code']>([
  'stock-shape',
  'margin',
  'board',
  'toe',
  'hub',
  'names-collide',
]);

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

function unitOf(raw: unknown): LengthUnit {
  const stated = typeof raw === 'object' && raw !== null && 'units' in raw ? raw.units : undefined;
  return lengthUnits.find((unit) => unit === stated) ?? 'mm';
}

/** Names that zod and JSON Schema speak of, in the words of a person. */
const expectedWords: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  boolean: 'true or false',
  object: 'a section of keys',
  record: 'a section of keys',
  array: 'a list',
  tuple: 'a list of two numbers',
};

function shown(value: unknown): string {
  if (value === undefined) return 'missing';
  const written = JSON.stringify(value) as string | undefined;
  const text = written ?? typeof value;
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

function knownKeys(schema: z.ZodType, path: readonly PropertyKey[]): string[] {
  let at: unknown = schema;
  const unwrap = () => {
    while (at instanceof z.ZodOptional || at instanceof z.ZodDefault || at instanceof z.ZodPrefault) at = at.unwrap();
  };
  for (const step of path) {
    unwrap();
    if (at instanceof z.ZodObject) at = (at.shape as Record<string, unknown>)[String(step)];
    else if (at instanceof z.ZodArray) at = at.element;
    else if (at instanceof z.ZodRecord) at = at.valueType;
    else return [];
  }
  unwrap();
  return at instanceof z.ZodObject ? Object.keys(at.shape) : [];
}

/** One fault that the schema found, in the words of a person. */
function explained(issue: z.core.$ZodIssue, raw: unknown, schema: z.ZodType): Diagnostic[] {
  const path = issue.path.map((step) => (typeof step === 'symbol' ? step.toString() : step));
  const name = pathText(path);
  const value = path.reduce<unknown>(
    (at, step) => (typeof at === 'object' && at !== null ? (at as Record<string, unknown>)[step] : undefined),
    raw,
  );
  if (issue.code === 'unrecognized_keys') {
    const known = knownKeys(schema, issue.path);
    return issue.keys.map((key) => {
      const near = nearestWord(key, known);
      const remedy = near === null ? `known here: ${known.join(', ')}` : `did you mean ${near}?`;
      const where = name === '' ? '' : ` in ${name}`;
      return diagnostic('unknown-key', [...path, key], `unknown key ${shown(key)}${where}`, remedy);
    });
  }
  if (value === undefined) {
    const needed = issue.code === 'invalid_type' ? (expectedWords[issue.expected] ?? 'a value') : 'a length';
    return [diagnostic('missing-key', path, `${name} is missing`, `it needs ${needed}`)];
  }
  if (issue.code === 'invalid_value') {
    const remedy = `it must be one of ${issue.values.map(String).join(', ')}`;
    return [diagnostic('wrong-value', path, `${name} is ${shown(value)}`, remedy)];
  }
  if (issue.code === 'invalid_type') {
    const remedy = `it must be ${expectedWords[issue.expected] ?? issue.expected}`;
    return [diagnostic('wrong-type', path, `${name} is ${shown(value)}`, remedy)];
  }
  if (issue.code === 'invalid_union') {
    const remedy = 'write a number, or text with a unit such as 450 mm';
    return [diagnostic('wrong-type', path, `${name} is ${shown(value)}`, remedy)];
  }
  const subject = name === '' ? '' : issue.message.startsWith('is ') ? `${name} ` : `${name}: `;
  const { code = 'wrong-value', remedy } = (issue.code === 'custom' ? (issue.params ?? {}) : {}) as KeyFault;
  return [diagnostic(code, path, `${subject}${issue.message}`, remedy)];
}

/** A text that is no design file whatever its keys say. */
class NoDesign extends Error {
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
function documentOf(text: string, lines: LineCounter) {
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
function keysOf(raw: unknown): object {
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

/**
 * Reads and completes a design.
 * @param text the design file, YAML
 * @param file its name, for the places of diagnostics
 * @returns the design with every default filled in, or every problem at once; never throws on any text
 */
export function readDesign(text: string, file?: string): DesignReading {
  try {
    checkText(text);
    const lines = new LineCounter();
    const document = documentOf(text, lines);
    const raw = keysOf(document.toJS({ maxAliasCount: 0 }));
    const locate = locator(document, lines, file);
    const schema = designSchema(unitOf(raw));
    const parsed = schema.safeParse(raw);
    if (!parsed.success) {
      const problems = parsed.error.issues.flatMap((issue) => explained(issue, raw, schema));
      return { kind: 'refused', problems: problems.map(locate) };
    }
    const { design, problems } = complete(parsed.data, raw);
    const placed = problems.map(locate);
    const light = placed.every(({ code, severity }) => severity !== 'error' || workshop.has(code));
    return hasError(placed)
      ? { kind: 'refused', problems: placed, ...(light ? { unbuilt: { design, locate } } : {}) }
      : { kind: 'design', design, problems: placed, locate };
  } catch (error) {
    if (!(error instanceof NoDesign)) throw error;
    const { diagnostic: fault } = error;
    const place = { path: [], ...(file === undefined ? {} : { file }), ...fault.place };
    return { kind: 'refused', problems: [{ ...showHidden(fault), place }] };
  }
}
