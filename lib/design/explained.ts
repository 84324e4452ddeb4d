/** What the schema finds, in the words of a person. */
import { type Document, isNode } from 'yaml';
import * as z from 'zod';
import { type Diagnostic, diagnostic, type KeyPath, pathText } from '../diagnostic/index.js';
import type { KeyFault } from './keys.js';
import { type KeyEntry, keyEntries } from './reference.js';
import { entryPath } from './entry-at.js';
import { unknownKey } from './unknown-key.js';
import { dateMeant, needed, plainName, shown, wrongChoice, wrongKind } from './wrong-value.js';

/** A file of keys whose faults are explained. */
export interface KeyFile {
  readonly raw: unknown;
  readonly schema: z.ZodType;
  readonly document: Document;
  /** What its paths begin with in a design: nothing, or `machine` for a file of its own. */
  readonly under: KeyPath;
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

const at = (raw: unknown, path: KeyPath): unknown =>
  path.reduce<unknown>(
    (value, step) =>
      typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[step] : undefined,
    raw,
  );

/** A comment that stands where the value of a key should be: `name: #1 dish`. */
function commentInPlace(document: Document, path: KeyPath): string | null {
  const node = document.getIn(path, true);
  return isNode(node) && node.comment ? node.comment : null;
}

/** Nothing stands at a key. */
function emptyValue(
  path: KeyPath,
  entry: KeyEntry | undefined,
  entries: readonly KeyEntry[],
  file: KeyFile,
): Diagnostic {
  const name = pathText(path);
  const comment = commentInPlace(file.document, path);
  if (comment !== null)
    return diagnostic(
      'wrong-type',
      path,
      `${name} is empty: the text after the # is a comment`,
      `put the text in quotes: ${String(path.at(-1))}: "#${comment}"`,
    );
  const remedy = `after the colon, write ${needed(entry, entries)}; or remove the key`;
  return diagnostic('wrong-type', path, `${name} is empty`, remedy);
}

/** The limits that zod itself holds, and patterns. */
function plainIssue(
  issue: z.core.$ZodIssue,
  name: string,
  value: unknown,
): readonly [message: string, remedy: string | undefined] {
  if (issue.code === 'too_small' && issue.origin === 'number')
    return [`${name} is ${shown(value)}`, `it must be at least ${issue.minimum}`];
  if (issue.code === 'too_big' && issue.origin === 'number')
    return [`${name} is ${shown(value)}`, `it must be at most ${issue.maximum}`];
  const date = dateMeant(value);
  const must = /^must /.test(issue.message);
  const remedy = date === null ? `it ${issue.message}` : `write ${date}: year, month, day`;
  if (must) return [`${name} is ${shown(value)}`, remedy];
  const subject = name === '' ? '' : issue.message.startsWith('is ') ? `${name} ` : `${name}: `;
  return [`${subject}${issue.message}`, undefined];
}

/** One fault other than an unknown key. */
function explainedIssue(issue: z.core.$ZodIssue, path: KeyPath, file: KeyFile): Diagnostic {
  const name = pathText(path);
  const value = at(file.raw, path);
  const entries = keyEntries();
  const entry = entries.find((one) => one.path === entryPath([...file.under, ...path]));
  if (value === undefined)
    return diagnostic('missing-key', path, `${name} is missing`, `it needs ${needed(entry, entries)}`);
  if (value === null) return emptyValue(path, entry, entries, file);
  if (issue.code === 'invalid_key') {
    const key = String(path.at(-1));
    const remedy = `write ${plainName(key) || 'a short name'}: letters a to z, digits, - and _ (at most 40), as files are named after it`;
    return diagnostic('wrong-value', path, `"${key}" cannot be the name of a material`, remedy);
  }
  if (issue.code === 'invalid_value') {
    const { message, remedy } = wrongChoice(name, value, issue.values.map(String));
    return diagnostic('wrong-value', path, message, remedy);
  }
  if (issue.code === 'invalid_type' || issue.code === 'invalid_union') {
    const keyFor = (word: string): string | null => {
      const inner = entries.filter(({ path: other }) => other.startsWith(`${entry?.path ?? ''}.`));
      const chosen = inner.find(({ choices }) => choices?.includes(word));
      const material = inner.find(({ path: other }) => other === `${entry?.path ?? ''}.material`);
      const known = at(file.raw, ['materials', word]) !== undefined;
      const found = known ? material : chosen;
      return found?.path.split('.').at(-1) ?? null;
    };
    const { message, remedy } = wrongKind(name, value, entry, { keyFor });
    return diagnostic('wrong-type', path, message, remedy);
  }
  const { code = 'wrong-value', remedy } = (issue.code === 'custom' ? (issue.params ?? {}) : {}) as KeyFault;
  const [message, plain] = plainIssue(issue, name, value);
  return diagnostic(code, path, message, remedy ?? plain);
}

const begins = (path: KeyPath, start: KeyPath): boolean => start.every((step, i) => path[i] === step);

/**
 * Every fault that the schema found, in the words of a person. A key that stands there under another name is not said
 * to be missing too.
 */
export function explained(issues: readonly z.core.$ZodIssue[], file: KeyFile): Diagnostic[] {
  const pathOf = (issue: z.core.$ZodIssue): KeyPath =>
    issue.path.map((step) => (typeof step === 'symbol' ? step.toString() : step));
  const unknown = issues.flatMap((issue) =>
    issue.code === 'unrecognized_keys'
      ? issue.keys.map((key) =>
          unknownKey(key, pathOf(issue), knownKeys(file.schema, issue.path), file.document, file.under),
        )
      : [],
  );
  const meant = unknown.flatMap(({ meant }) => (meant === null ? [] : [meant]));
  const others = issues
    .filter(({ code }) => code !== 'unrecognized_keys')
    .map((issue) => explainedIssue(issue, pathOf(issue), file))
    .filter(({ code, message, place }) => {
      const gone = code === 'missing-key' || message.endsWith(' is empty');
      return !(gone && meant.some((path) => begins(path, place?.path ?? path)));
    });
  return [...unknown.map((one) => one.diagnostic), ...others];
}
