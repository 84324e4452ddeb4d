/** The proof of a folder as it stands on a disk: its drawings and tool paths, its record, and every other file. */
import { checkIntegrity, type FolderFiles } from './integrity.js';
import { checkRecord } from './record.js';
import type { Proof } from './types.js';
import { parseRecord, recordName } from './job-reader.js';
import { proveCuts, provenBy } from './verify.js';

/** What stands in a text file: bytes that are no UTF-8 become characters that no reader takes. */
const textOf = (content: string | Uint8Array): string =>
  typeof content === 'string' ? content : new TextDecoder().decode(content);

/** Files that `verify` reads; prints are judged by their hash alone. */
const isText = (name: string): boolean => !/\.pdf$/i.test(name);

/**
 * Proves a folder: what its drawings and tool paths cut (`verify`), whether the record follows from the design in it,
 * and whether every file is the one that was written.
 * @param files content of all the folder's files by name, with `/` between folders
 */
export function proveFolder(files: FolderFiles): Proof {
  const texts = new Map([...files].flatMap(([name, content]) => (isText(name) ? [[name, textOf(content)]] : [])));
  return provenBy(() => {
    const text = texts.get(recordName) ?? '';
    const record = parseRecord(texts.get(recordName));
    const added = [...checkRecord(record), ...checkIntegrity(files, text, record)];
    const proof = proveCuts(texts, record);
    // a file that is missing is one fault, whoever looks for it
    const known = new Set(proof.faults.map(({ code, file }) => `${code} ${file}`));
    const more = added.filter(({ code, file }) => code !== 'missing-file' || !known.has(`${code} ${file}`));
    const faults = [...proof.faults, ...more];
    return { ...proof, faults, ok: faults.length === 0 };
  });
}
