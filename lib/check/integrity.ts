/**
 * Whether a folder holds what was written, file by file: the record lists every other file with its size and SHA-256
 * (FIPS 180-4), and carries a hash of its own text. What is read back is judged by its content as well; a print, a
 * table or the book, which cannot be judged by independent means, is judged by this alone.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import * as z from 'zod';
import { FaultList } from './faults.js';
import { recordName } from './job-reader.js';
import type { Fault } from './types.js';

export type FolderFiles = ReadonlyMap<string, string | Uint8Array>;

const listed = z.object({
  files: z.array(z.object({ name: z.string(), bytes: z.number().int().nonnegative(), sha256: z.string().length(64) })),
  recordHash: z.string().length(64),
  coupon: z.literal(true).optional(),
});

/** Files of a coupon that a person fills in. */
const filledIn = /^measured-[A-Za-z0-9_-]+\.yaml$/;

const bytesOf = (content: string | Uint8Array): Uint8Array =>
  typeof content === 'string' ? utf8ToBytes(content) : content;

const hashOf = (content: string | Uint8Array): string => bytesToHex(sha256(bytesOf(content)));

/** The record's own hash is that of its text with zeros in the place of the hash. */
function recordIsIntact(text: string, recordHash: string): boolean {
  const field = `"recordHash": "${recordHash}"`;
  const at = text.lastIndexOf(field);
  if (at < 0) return false;
  return hashOf(`${text.slice(0, at)}"recordHash": "${'0'.repeat(64)}"${text.slice(at + field.length)}`) === recordHash;
}

/**
 * A fault for each file that is missing, was changed, or is not one of the folder's.
 * @param text the record as it stands in the folder
 * @param record the same as JSON
 */
export function checkIntegrity(files: FolderFiles, text: string, record: unknown): Fault[] {
  const faults = new FaultList();
  const list = listed.safeParse(record).data;
  if (!list) {
    faults.add('record-unlisted', recordName, {});
    return faults.all(recordName);
  }
  if (!recordIsIntact(text, list.recordHash)) faults.add('record-changed', recordName, {});
  const known = new Map(list.files.map((file) => [file.name, file]));
  for (const { name, bytes, sha256: hash } of list.files) {
    const content = files.get(name);
    if (content === undefined) {
      faults.add('file-missing', name, {});
      continue;
    }
    if (list.coupon && filledIn.test(name)) continue;
    const size = bytesOf(content).length;
    if (size !== bytes) faults.add('file-size', name, { bytes: size, written: bytes });
    else if (hashOf(content) !== hash) faults.add('file-content', name, {});
  }
  for (const name of files.keys()) {
    if (name !== recordName && !known.has(name)) faults.add('file-stray', name, {});
  }
  return faults.all(recordName);
}
