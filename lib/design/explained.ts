/** What the schema finds, in the words of a person. */
import * as z from 'zod';
import { type Diagnostic, diagnostic, pathText } from '../diagnostic/index.js';
import type { KeyFault } from './keys.js';
import { nearestWord } from './nearest.js';

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

/** What a key that is missing has to be. */
function neededBy(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return expectedWords[issue.expected] ?? 'a value';
    case 'invalid_value':
      return `one of ${issue.values.map(String).join(', ')}`;
    default:
      return 'a length';
  }
}

/** One fault that the schema found, in the words of a person. */
export function explained(issue: z.core.$ZodIssue, raw: unknown, schema: z.ZodType): Diagnostic[] {
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
    return [diagnostic('missing-key', path, `${name} is missing`, `it needs ${neededBy(issue)}`)];
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
