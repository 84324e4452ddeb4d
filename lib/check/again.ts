/**
 * The record held against the same made again from the design in it, by whoever made it first: parts, fasteners, limits
 * of the tool paths and warnings. How it is made again is handed in; here two documents are compared.
 */
import * as z from 'zod';
import { Unreadable } from './drawn.js';
import { FaultList } from './faults.js';
import type { FolderFiles } from './integrity.js';
import { parseRecord, recordName } from './job-reader.js';
import { checkRecord } from './record.js';
import type { Fault } from './types.js';

/** A record made again, or why it could not be. */
export type MadeAgain =
  { readonly kind: 'made'; readonly record: unknown } | { readonly kind: 'failed'; readonly why: string };

/** Records are rounded far below this: mm, or as a share of the value. */
const same = 1e-5;
const sameShare = 1e-9;

const named = z.looseObject({ id: z.string() });
const warning = z.object({ code: z.string(), message: z.string() });
const madeSchema = z.object({
  parts: z.array(named),
  fasteners: z.array(z.unknown()),
  limits: z.record(z.string(), z.record(z.string(), z.unknown())),
  problems: z.array(warning),
});
const recordSchema = madeSchema.omit({ limits: true, fasteners: true }).extend({
  fasteners: z.array(z.unknown()).default([]),
  sheets: z.array(
    z.object({
      file: z.string(),
      router: z.object({ limits: z.record(z.string(), z.unknown()) }).optional(),
    }),
  ),
  extras: z.array(z.object({ part: z.string() })).default([]),
});

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The first place where two documents differ, as keys; null where they are alike. */
function difference(a: unknown, b: unknown, at = ''): string | null {
  if (typeof a === 'number' && typeof b === 'number')
    return Math.abs(a - b) <= Math.max(same, sameShare * Math.abs(b)) ? null : at;
  if (Array.isArray(a) && Array.isArray(b)) {
    if (a.length !== b.length) return `${at === '' ? 'in number' : at} (${a.length}, not ${b.length})`;
    for (const [i, one] of a.entries()) {
      const found = difference(one, b[i], `${at}[${i}]`);
      if (found !== null) return found;
    }
    return null;
  }
  if (!isObject(a) || !isObject(b)) return a === b ? null : at;
  for (const key of new Set([...Object.keys(a), ...Object.keys(b)])) {
    const found = difference(a[key], b[key], at === '' ? key : `${at}.${key}`);
    if (found !== null) return found;
  }
  return null;
}

/**
 * The record of a folder made again.
 * @param make gives parts, fasteners, limits by sheet and problems of a record (as JSON)
 * @returns null where the record cannot be read or does not agree with itself, which `proveFolder` reports
 */
export function madeAgain(files: FolderFiles, make: (record: unknown) => unknown): MadeAgain | null {
  const content = files.get(recordName);
  try {
    const record = parseRecord(content instanceof Uint8Array ? new TextDecoder().decode(content) : content);
    if (checkRecord(record).length > 0) return null;
    // as a record holds it: without what JSON has no word for
    return { kind: 'made', record: JSON.parse(JSON.stringify(make(record))) as unknown };
  } catch (error) {
    if (error instanceof Unreadable) return null;
    return { kind: 'failed', why: error instanceof Error ? error.message : String(error) };
  }
}

/** A fault for everything of the record (as JSON) that is not as its design makes it. */
export function checkAgain(data: unknown, again: MadeAgain): Fault[] {
  const faults = new FaultList();
  const made = madeSchema.safeParse(again.kind === 'made' ? again.record : null);
  const found = recordSchema.safeParse(data);
  if (!made.success || !found.success) {
    const why = again.kind === 'failed' ? again.why : 'it lacks parts, fasteners or problems';
    faults.add('design-unmade', recordName, { why });
    return faults.all(recordName);
  }
  const record = found.data;
  const wanted = new Map(made.data.parts.map((part) => [part.id, part]));
  // what was read from drawings of the user's own is not in the folder
  const own = new Set(record.extras.map(({ part }) => part));
  for (const part of record.parts) {
    const other = wanted.get(part.id);
    wanted.delete(part.id);
    if (own.has(part.id)) continue;
    if (other === undefined) faults.add('part-invented', recordName, { of: part.id });
    else {
      const key = difference(part, other);
      if (key !== null) faults.add('part-other', recordName, { of: part.id, key });
    }
  }
  for (const id of wanted.keys()) faults.add('part-lacking', recordName, { of: id });
  const key = difference(record.fasteners, made.data.fasteners);
  if (key !== null) faults.add('fasteners-other', recordName, { key });
  for (const { file, router } of record.sheets) {
    const limits = made.data.limits[file];
    if (router === undefined || limits === undefined) continue;
    const own = Object.fromEntries(Object.keys(limits).map((name) => [name, router.limits[name]]));
    const other = difference(own, limits);
    if (other !== null) faults.add('limits-other', recordName, { of: file, key: other });
  }
  const stated = new Set(record.problems.map(({ code, message }) => `${code} ${message}`));
  for (const { code, message } of made.data.problems)
    if (!stated.has(`${code} ${message}`)) faults.add('warning-lacking', recordName, { warning: message });
  return faults.all(recordName);
}
