/** A design file's text to its keys, with every problem found in one pass and the line of each. */
import { isAlias, isMap, isNode, LineCounter, parseDocument, visit, type Document } from 'yaml';
import { z } from 'zod';
import { complete } from './complete.js';
import type { Design } from './design.js';
import { nearest } from './nearest.js';
import { pathText, type Place, type Problem } from './problem.js';
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
      readonly problems: readonly Problem[];
      /** The line of a problem that is found later on, told by the path of its key. */
      readonly located: (problem: Problem) => Problem;
    }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] };

interface Located {
  place(path: readonly (string | number)[]): Place;
}

function locator(document: Document, lines: LineCounter): Located {
  return {
    place(path) {
      // the deepest part of the path that is in the file has the line; a missing key is shown at its section
      for (let depth = path.length; depth >= 0; depth -= 1) {
        const head = path.slice(0, depth);
        const parent = depth === 0 ? null : document.getIn(head.slice(0, -1), true);
        const last = head[depth - 1];
        const pair = isMap(parent)
          ? parent.items.find((item) => isNode(item.key) && String(item.key) === String(last))
          : undefined;
        const node = pair?.key ?? (depth === 0 ? document.contents : document.getIn(head, true));
        if (isNode(node) && node.range) return { path, line: lines.linePos(node.range[0]).line };
      }
      return { path };
    },
  };
}

function refuse(code: string, message: string, line?: number): DesignReading {
  return {
    kind: 'refused',
    problems: [{ code, severity: 'error', message, ...(line === undefined ? {} : { place: { path: [], line } }) }],
  };
}

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

function problemsOf(error: z.ZodError, raw: unknown, schema: z.ZodType, located: Located): Problem[] {
  return error.issues.flatMap((issue): Problem[] => {
    const path = issue.path.map((step) => (typeof step === 'symbol' ? step.toString() : step));
    const name = pathText(path);
    const value = path.reduce<unknown>(
      (at, step) => (typeof at === 'object' && at !== null ? (at as Record<string, unknown>)[step] : undefined),
      raw,
    );
    const error = (code: string, message: string, at: readonly (string | number)[] = path): Problem => ({
      code,
      severity: 'error',
      message,
      place: located.place(at),
    });
    if (issue.code === 'unrecognized_keys') {
      const known = knownKeys(schema, issue.path);
      return issue.keys.map((key) => {
        const near = nearest(key, known);
        const advice = near === null ? `known here: ${known.join(', ')}` : `did you mean ${near}?`;
        const where = name === '' ? '' : ` in ${name}`;
        return error('unknown-key', `unknown key ${shown(key)}${where}; ${advice}`, [...path, key]);
      });
    }
    if (value === undefined) {
      const about = issue.code === 'invalid_type' ? (expectedWords[issue.expected] ?? 'a value') : 'a length';
      return [error('missing-key', `${name} is missing; it needs ${about}`)];
    }
    if (issue.code === 'invalid_value')
      return [
        error('wrong-value', `${name} is ${shown(value)}; it must be one of ${issue.values.map(String).join(', ')}`),
      ];
    if (issue.code === 'invalid_type')
      return [
        error(
          'wrong-type',
          `${name} is ${shown(value)}; it must be ${expectedWords[issue.expected] ?? issue.expected}`,
        ),
      ];
    if (issue.code === 'invalid_union')
      return [error('wrong-type', `${name} is ${shown(value)}; write a number, or text with a unit such as 450 mm`)];
    const whole = name === '' ? '' : `${name}: `;
    return [error('wrong-value', `${whole}${issue.message}`)];
  });
}

/**
 * Reads and completes a design.
 * @param text the design file, YAML
 * @returns the design with every default filled in, or every problem at once; never throws on any text
 */
export function readDesign(text: string): DesignReading {
  if (text.length > longestFile)
    return refuse('too-large', 'the design file is larger than 64 KB; is it a design file?');
  const longLine = text.split('\n').findIndex((line) => line.length > longestLine);
  if (longLine >= 0)
    return refuse(
      'too-large',
      `line ${longLine + 1} has more than ${longestLine} characters; break it, or is this no design file?`,
      longLine + 1,
    );
  if (text.includes('\0')) return refuse('not-text', 'this is not a text file; a design file is YAML text');
  if (tooDeep(text)) return refuse('too-deep', `the design file is nested deeper than ${deepestNesting} levels`);
  const lines = new LineCounter();
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
    const line = lines.linePos(fault.pos[0]).line;
    return refuse('not-yaml', `not readable as YAML: ${fault.message.split('\n')[0] ?? ''}`, line);
  }
  let aliasLine: number | undefined;
  visit(document, {
    Node(_, node) {
      if (!isAlias(node)) return undefined;
      aliasLine = lines.linePos(node.range?.[0] ?? 0).line;
      return visit.BREAK;
    },
  });
  if (aliasLine !== undefined)
    return refuse('alias', 'aliases (*name) are not used in design files; write the value out', aliasLine);
  const raw: unknown = document.toJS({ maxAliasCount: 0 });
  if (raw === null || raw === undefined)
    return refuse('empty', 'the design file is empty; `dishwright new` writes one to start from');
  if (typeof raw !== 'object' || Array.isArray(raw))
    return refuse('wrong-type', 'a design file is a list of keys with values (name: …, dish: …)', 1);
  const schema = designSchema(unitOf(raw));
  const located = locator(document, lines);
  const parsed = schema.safeParse(raw);
  if (!parsed.success) return { kind: 'refused', problems: problemsOf(parsed.error, raw, schema, located) };
  const { design, problems } = complete(parsed.data, raw);
  const withLine = (problem: Problem): Problem =>
    problem.place ? { ...problem, place: located.place(problem.place.path) } : problem;
  const placed = problems.map(withLine);
  if (placed.some((problem) => problem.severity === 'error')) return { kind: 'refused', problems: placed };
  return { kind: 'design', design, problems: placed, located: withLine };
}
