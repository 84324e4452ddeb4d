/** The proof of a whole folder. */
import { FaultList } from './faults.js';
import { type PartRead, type RecordRead, type SheetRead, parseRecord, readJob, recordName } from './job-reader.js';
import { checkRouterFile } from './router-file.js';
import { type TextFiles, proveSheet, readPair } from './sheet-proof.js';
import type { Fault, Proof, SheetProof } from './types.js';

/** Parts complete, each copy once, and no name twice. */
function checkQuantities(job: RecordRead, faults: FaultList): void {
  const placed = new Map<string, Map<number, number>>();
  for (const { part, copy } of job.sheets.flatMap((sheet) => sheet.placed)) {
    const copies = placed.get(part) ?? new Map<number, number>();
    copies.set(copy, (copies.get(copy) ?? 0) + 1);
    placed.set(part, copies);
  }
  const names = new Set<string>();
  for (const { id, quantity } of job.parts) {
    if (names.has(id)) faults.add('part-twice', recordName, { part: id });
    names.add(id);
    const copies = placed.get(id) ?? new Map<number, number>();
    const count = [...copies.values()].reduce((sum, one) => sum + one, 0);
    if (count !== quantity) faults.add('part-count', recordName, { count, quantity, part: id });
    for (const [copy, times] of copies) {
      if (times > 1) faults.add('copy-twice', recordName, { copy, part: id, times });
      if (copy > quantity) faults.add('copy-beyond', recordName, { copy, part: id, quantity });
    }
  }
  const sheets = job.sheets.map(({ file }) => file);
  if (new Set(sheets).size !== sheets.length) faults.add('sheet-file-twice', recordName, {});
}

/** Drawings of the folder that are not sheets: templates and the like, at finished size. */
function otherDrawings(files: TextFiles, job: RecordRead): string[] {
  const sheets = new Set(job.sheets.map(({ file }) => file));
  const names = [...files.keys()].flatMap((name) => /^(.+)\.(?:dxf|svg)$/.exec(name)?.[1] ?? []);
  return [...new Set(names)].filter((name) => !sheets.has(name));
}

/** What `read` returns; if it fails, a proof that contains only the reason. */
export function provenBy(read: () => Proof): Proof {
  const faults = new FaultList();
  try {
    return read();
  } catch (error) {
    faults.refuse(error, recordName);
    return { sheets: [], faults: faults.all(recordName), ok: false };
  }
}

const partsOf = (job: RecordRead): ReadonlyMap<string, PartRead> => new Map(job.parts.map((part) => [part.id, part]));

/** The proof of one sheet: its drawings and its tool paths. */
function provePlaced(
  files: TextFiles,
  job: RecordRead,
  parts: ReadonlyMap<string, PartRead>,
  sheet: SheetRead,
): SheetProof {
  const proof = proveSheet(files, job, parts, sheet);
  const routed = new FaultList();
  checkRouterFile(files, job, parts, sheet, routed);
  return { ...proof, faults: [...proof.faults, ...routed.all(sheet.file)] };
}

/**
 * Proves some sheets of a folder, so that several threads can share the work.
 * @param data the record as JSON
 * @param take gives the number of the next sheet to prove, from 0; a number that the record does not have ends it
 * @returns the proofs by the number of the sheet
 * @throws Unreadable when the record lacks what the proof needs
 */
export function proveSheets(files: TextFiles, data: unknown, take: () => number): Map<number, SheetProof> {
  const job = readJob(data);
  const parts = partsOf(job);
  const proofs = new Map<number, SheetProof>();
  for (;;) {
    const number = take();
    const sheet = job.sheets[number];
    if (sheet === undefined) return proofs;
    proofs.set(number, provePlaced(files, job, parts, sheet));
  }
}

/**
 * Proves the drawings and tool paths of a folder against its record.
 * @param data the record as JSON
 * @param proven proofs of sheets that already exist, by the number of the sheet
 * @throws Unreadable when the record lacks what the proof needs
 */
export function proveCuts(files: TextFiles, data: unknown, proven: ReadonlyMap<number, SheetProof> = new Map()): Proof {
  const faults = new FaultList();
  const job = readJob(data);
  checkQuantities(job, faults);
  const parts = partsOf(job);
  const sheets = job.sheets.map((sheet, i) => proven.get(i) ?? provePlaced(files, job, parts, sheet));
  const others = otherDrawings(files, job);
  for (const name of others) readPair(files, name, job.design.colours, faults);
  const all: Fault[] = [...faults.all(recordName), ...sheets.flatMap((sheet) => sheet.faults)];
  return { sheets, faults: all, ok: all.length === 0 };
}

/**
 * Proves a written folder: reads `job.json` and every DXF and SVG from the files, and checks the drawings against the record.
 * It shares no code with what made the files.
 * @param files texts of the folder's files by name, with `/` between folders
 * @returns a proof for each sheet, and every fault; no content of the files makes it throw
 */
export function verify(files: TextFiles): Proof {
  return provenBy(() => proveCuts(files, parseRecord(files.get(recordName))));
}
