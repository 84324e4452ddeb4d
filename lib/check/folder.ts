/** The proof of a folder as it stands on a disk: its drawings and tool paths, its record, and every other file. */
import { checkAgain, type MadeAgain } from './again.js';
import { checkAssembly } from './assembly/index.js';
import { Unreadable } from './drawn.js';
import { checkIntegrity, type FolderFiles } from './integrity.js';
import { checkRecord } from './record.js';
import type { Proof, SheetProof } from './types.js';
import { parseRecord, recordName } from './job-reader.js';
import { proveCuts, proveSheets, provenBy } from './verify.js';

/** What stands in a text file: bytes that are no UTF-8 become characters that no reader takes. */
const textOf = (content: string | Uint8Array): string =>
  typeof content === 'string' ? content : new TextDecoder().decode(content);

/** Files that `verify` reads; prints are judged by their hash alone. */
const isText = (name: string): boolean => !/\.pdf$/i.test(name);

const textsOf = (files: FolderFiles): Map<string, string> =>
  new Map([...files].flatMap(([name, content]) => (isText(name) ? [[name, textOf(content)]] : [])));

/**
 * Proves some sheets of a folder, for `proveFolder` in another thread to go on with.
 * @param files content of all the folder's files by name, with `/` between folders
 * @param take gives the number of the next sheet to prove, from 0; a number that the record does not have ends it
 * @returns the proofs by the number of the sheet; none where the record cannot be read, which `proveFolder` reports
 */
export function proveSomeSheets(files: FolderFiles, take: () => number): ReadonlyMap<number, SheetProof> {
  const texts = textsOf(files);
  try {
    return proveSheets(texts, parseRecord(texts.get(recordName)), take);
  } catch (error) {
    if (error instanceof Unreadable) return new Map();
    throw error;
  }
}

/**
 * Proves a folder: what its drawings and tool paths cut (`verify`), whether the record follows from the design in it,
 * whether the parts go together, and whether every file is the one that was written.
 * @param files content of all the folder's files by name, with `/` between folders
 * @param proven proofs of sheets of these files that are there already (`proveSomeSheets`)
 * @param again the record made again from its design (`madeAgain`); where there is none, that is not asked
 */
export function proveFolder(
  files: FolderFiles,
  proven?: ReadonlyMap<number, SheetProof>,
  again: MadeAgain | null = null,
): Proof {
  const texts = textsOf(files);
  return provenBy(() => {
    const text = texts.get(recordName) ?? '';
    const record = parseRecord(texts.get(recordName));
    const added = [
      ...checkRecord(record),
      ...(again === null ? [] : checkAgain(record, again)),
      ...checkAssembly(record),
      ...checkIntegrity(files, text, record),
    ];
    const proof = proveCuts(texts, record, proven);
    // a file that is missing is one fault, whoever looks for it
    const known = new Set(proof.faults.map(({ code, file }) => `${code} ${file}`));
    const more = added.filter(({ code, file }) => code !== 'missing-file' || !known.has(`${code} ${file}`));
    const faults = [...proof.faults, ...more];
    return { ...proof, faults, ok: faults.length === 0 };
  });
}
