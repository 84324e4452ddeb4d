/** Jobs for the tests of the proof: whole jobs of random designs, and single sheets of them that can be mutated. */
import { readDesign } from '../../lib/design/index.js';
import { buildCutFiles } from '../../lib/pipeline.js';
import type { Job } from '../../lib/pipeline/types.js';
import { readDxfLines } from '../../lib/check/dxf-reader.js';
import type { ReadBackSheet } from '../../lib/check/drawn.js';
import { parseRecord, readJob, type RecordRead as Record } from '../../lib/check/job-reader.js';
import { plainDxf, plainSvg } from './plain-files.js';
import { randomDesign } from './random-design.js';
import { randomNester } from './random-nester.js';

/** The text files of a job. */
export function textsOf(job: Job): Map<string, string> {
  return new Map(
    [...job.files].flatMap(([name, bytes]) => (typeof bytes === 'string' ? [[name, bytes] as const] : [])),
  );
}

export type Made =
  | { readonly kind: 'made'; readonly seed: number; readonly files: Map<string, string> }
  | { readonly kind: 'refused'; readonly seed: number; readonly messages: readonly string[] };

/** The files that are cut of the random design of a seed, or why it cannot be built. */
export async function makeRandom(seed: number): Promise<Made> {
  const { text } = randomDesign(seed);
  const reading = readDesign(text);
  if (reading.kind === 'refused')
    return { kind: 'refused', seed, messages: reading.problems.map(({ message }) => message) };
  const job = await buildCutFiles(reading.design, new Map(), randomNester(seed));
  const errors = job.problems.filter(({ severity }) => severity === 'error');
  if (errors.length > 0) return { kind: 'refused', seed, messages: errors.map(({ message }) => message) };
  return { kind: 'made', seed, files: textsOf(job) };
}

/** One sheet of a job with a record of its own, and its drawing. */
export interface OneSheet {
  readonly record: Record;
  readonly drawing: ReadBackSheet;
}

/**
 * Each sheet of a job as a job of its own: the same parts in the same places, every copy a part. Without its router
 * files, which have plants of their own.
 */
export function singleSheets(files: ReadonlyMap<string, string>): OneSheet[] {
  const record = readJob(parseRecord(files.get('job.json')));
  return record.sheets.map((recorded) => {
    const sheet = { ...recorded };
    delete sheet.router;
    const byId = new Map(record.parts.map((part) => [part.id, part]));
    // every copy becomes a part of its own, as its lettering bears the number that it has in the whole job
    const parts = sheet.placed.flatMap(({ part: id, copy }) => {
      const part = byId.get(id);
      if (part === undefined) return [];
      const labels = part.labels.map((label) => ({ ...label, text: label.text.replaceAll('{n}', String(copy)) }));
      return [{ ...part, id: `${id} ${copy}`, quantity: 1, labels }];
    });
    const placed = sheet.placed.map((one) => ({ ...one, part: `${one.part} ${one.copy}`, copy: 1 }));
    return {
      record: { ...record, parts, sheets: [{ ...sheet, placed }] },
      drawing: readDxfLines(files.get(`${sheet.file}.dxf`) ?? '').sheet,
    };
  });
}

/** The files of a single sheet; the SVG may hold another drawing than the DXF. */
export function filesOf({ record, drawing }: OneSheet, svg: ReadBackSheet = drawing): Map<string, string> {
  const file = record.sheets[0]?.file ?? '';
  return new Map([
    ['job.json', JSON.stringify(record)],
    [`${file}.dxf`, plainDxf(drawing)],
    [`${file}.svg`, plainSvg(svg)],
  ]);
}
