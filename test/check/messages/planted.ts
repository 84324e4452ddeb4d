/** A fault in the small job, words of the message that it has to raise, and the record as its design would make it. */
import { expect } from 'vitest';
import type { MadeAgain } from '../../../lib/check/index.js';
import { type Files, sealed, type SmallRecord, smallRecord } from '../../helpers/small-job.js';

export type Planted = readonly [make: () => Files, words: string, again?: MadeAgain];

/** The files with the text of one changed; it has to change something. */
export function mutated(files: Files, name: string, change: (text: string) => string): Files {
  const before = files.get(name) ?? '';
  const after = change(before);
  expect(after, `nothing planted in ${name}`).not.toBe(before);
  return files.set(name, after);
}

/** The files with a record changed in place, or another one if `change` returns it, which lists them as they are. */
export function withRecord(files: Files, change: (record: SmallRecord) => unknown): Files {
  const record = smallRecord();
  const other = change(record);
  return files.set('job.json', sealed(typeof other === 'object' && other !== null ? other : record, files));
}

/** The record of the small job as its design would make it, changed as asked. */
export function smallAgain(change: (record: SmallRecord) => void = () => undefined): MadeAgain {
  const record = smallRecord();
  change(record);
  const { parts, problems, sheets } = record;
  const limits = Object.fromEntries(sheets.map(({ file, router }) => [file, router.limits]));
  return { kind: 'made', record: { parts, problems, fasteners: [], limits } };
}
