/**
 * Whether a folder holds what was written, file by file: the record lists every other file with its size and SHA-256
 * (FIPS 180-4), and carries a hash of its own text. What is read back is judged by its content as well; a print, a
 * table or the book, which cannot be judged by independent means, is judged by this alone.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import * as z from 'zod';
import { FaultList } from './faults.js';
import type { Fault } from './types.js';

export type FolderFiles = ReadonlyMap<string, string | Uint8Array>;

const recordName = 'job.json';

const listed = z.object({
  files: z.array(z.object({ name: z.string(), bytes: z.number().int().nonnegative(), sha256: z.string().length(64) })),
  recordHash: z.string().length(64),
});

const bytesOf = (content: string | Uint8Array): Uint8Array =>
  typeof content === 'string' ? utf8ToBytes(content) : content;

const hashOf = (content: string | Uint8Array): string => bytesToHex(sha256(bytesOf(content)));

/** The record's own hash is that of its text with zeros in the place of the hash. */
function recordIsWhole(text: string, recordHash: string): boolean {
  const field = `"recordHash": "${recordHash}"`;
  const at = text.lastIndexOf(field);
  if (at < 0) return false;
  return hashOf(`${text.slice(0, at)}"recordHash": "${'0'.repeat(64)}"${text.slice(at + field.length)}`) === recordHash;
}

function listOf(text: string): z.infer<typeof listed> | null {
  try {
    return listed.safeParse(JSON.parse(text)).data ?? null;
  } catch {
    return null;
  }
}

/** A fault for each file that is missing, was changed, or is not one of the folder's. */
export function checkIntegrity(files: FolderFiles): Fault[] {
  const faults = new FaultList();
  const record = files.get(recordName);
  // a record that is missing or no JSON is reported where it is read
  if (record === undefined) return [];
  const text = typeof record === 'string' ? record : new TextDecoder().decode(record);
  const list = listOf(text);
  if (!list) {
    faults.add('changed', recordName, 'it has no list of the files with their hashes, or no hash of its own');
    return faults.all(recordName);
  }
  if (!recordIsWhole(text, list.recordHash)) faults.add('changed', recordName, 'it was changed after it was written');
  const known = new Map(list.files.map((file) => [file.name, file]));
  for (const { name, bytes, sha256: hash } of list.files) {
    const content = files.get(name);
    if (content === undefined) {
      faults.add('missing-file', name, 'the file is missing');
      continue;
    }
    const size = bytesOf(content).length;
    if (size !== bytes) faults.add('changed', name, `it was changed after it was written: ${size} bytes, not ${bytes}`);
    else if (hashOf(content) !== hash)
      faults.add('changed', name, 'it was changed after it was written: same size, other content');
  }
  for (const name of files.keys()) {
    if (name !== recordName && !known.has(name))
      faults.add('stray-file', name, 'the record does not name this file: it belongs to another job, do not cut by it');
  }
  return faults.all(recordName);
}
