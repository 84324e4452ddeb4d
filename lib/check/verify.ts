/** The proof of a whole folder. */
import { Unreadable } from './drawn.js';
import { FaultList } from './faults.js';
import { type Job, readJob } from './job-reader.js';
import { checkRouterFile } from './router-file.js';
import { type Files, proveSheet, readPair } from './sheet-proof.js';
import type { Fault, Proof } from './types.js';

const recordName = 'job.json';

/** Parts complete, each copy once, and no name twice. */
function checkQuantities(job: Job, faults: FaultList): void {
  const placed = new Map<string, Map<number, number>>();
  for (const { part, copy } of job.sheets.flatMap((sheet) => sheet.placed)) {
    const copies = placed.get(part) ?? new Map<number, number>();
    copies.set(copy, (copies.get(copy) ?? 0) + 1);
    placed.set(part, copies);
  }
  const names = new Set<string>();
  for (const { id, quantity } of job.parts) {
    if (names.has(id)) faults.add('quantity', recordName, `part "${id}" stands twice`);
    names.add(id);
    const copies = placed.get(id) ?? new Map<number, number>();
    const count = [...copies.values()].reduce((sum, one) => sum + one, 0);
    if (count !== quantity)
      faults.add('quantity', recordName, `${count} of ${quantity} pieces of "${id}" are on the sheets`);
    for (const [copy, times] of copies) {
      if (times > 1) faults.add('quantity', recordName, `copy ${copy} of "${id}" is placed ${times} times`);
      if (copy > quantity) faults.add('quantity', recordName, `copy ${copy} of "${id}" is placed, of ${quantity}`);
    }
  }
  const sheets = job.sheets.map(({ file }) => file);
  if (new Set(sheets).size !== sheets.length) faults.add('quantity', recordName, 'two sheets have the same file');
}

/** Drawings of the folder that are no sheets: templates and the like, at finished size. */
function otherDrawings(files: Files, job: Job): string[] {
  const sheets = new Set(job.sheets.map(({ file }) => file));
  const names = [...files.keys()].flatMap((name) => /^(.+)\.(?:dxf|svg)$/.exec(name)?.[1] ?? []);
  return [...new Set(names)].filter((name) => !sheets.has(name));
}

/**
 * Proves a written folder: reads `job.json` and every DXF and SVG anew, and holds the drawings against the record.
 * Nothing here is shared with what made the files.
 * @param files texts of the folder's files by name, with `/` between folders
 * @returns a proof a sheet, and every fault; it throws for no content of the files
 */
export function verify(files: Files): Proof {
  const faults = new FaultList();
  let job: Job;
  try {
    job = readJob(files.get(recordName) ?? '');
  } catch (error) {
    if (!(error instanceof Unreadable)) throw error;
    const message = files.has(recordName) ? `${recordName}: ${error.message}` : `${recordName} is missing`;
    return { sheets: [], faults: [{ code: 'unreadable', file: recordName, message }], ok: false };
  }
  checkQuantities(job, faults);
  const parts = new Map(job.parts.map((part) => [part.id, part]));
  const sheets = job.sheets.map((sheet) => {
    const proof = proveSheet(files, job, parts, sheet);
    const routed = new FaultList();
    checkRouterFile(files, job, parts, sheet, routed);
    return { ...proof, faults: [...proof.faults, ...routed.all(sheet.file)] };
  });
  const others = otherDrawings(files, job);
  for (const name of others) readPair(files, name, faults);
  const all: Fault[] = [...faults.all(recordName), ...sheets.flatMap((sheet) => sheet.faults)];
  return { sheets, faults: all, ok: all.length === 0 };
}
