/** The files of a job, by name. */
import type { Design } from '../design/index.js';
import type { Dish } from '../dish/index.js';
import type { Process } from '../machining/index.js';
import {
  drawPart,
  drawSheet,
  type JobProcess,
  recordPart,
  writeCutList,
  writeDxf,
  writeJob,
  writeMarkingOut,
  writeSvg,
} from '../output/index.js';
import { contourFromPoints } from '../geometry/index.js';
import { heightOnPath, markOut, type MarkingOut, type Part } from '../parts/index.js';
import type { Job, JobSheet } from '../pipeline.js';

export type Files = Map<string, string | Uint8Array>;

/** Version of the record's form, and of the program. */
const version = '0.1.0';

function recordProcess(process: Process): JobProcess {
  switch (process.kind) {
    case 'router':
      return { kind: 'router', toolDiameter: process.toolDiameter, compensated: true };
    case 'laser':
      return { kind: 'laser', kerf: process.kerf, compensated: true };
    case 'hand':
      return { kind: 'hand', compensated: false };
  }
}

const fileOf = (sheet: JobSheet): string => `sheets/${sheet.cut.id}`;

function sheetFiles(job: Job, files: Files): void {
  for (const sheet of job.sheets) {
    const offcut = job.design.stock.find((item) => item.id === sheet.nested.stock)?.outline;
    const drawing = drawSheet(sheet.cut, job.design.colours, offcut && contourFromPoints(offcut));
    files.set(`${fileOf(sheet)}.dxf`, writeDxf(drawing));
    files.set(`${fileOf(sheet)}.svg`, writeSvg(drawing));
  }
}

/** The rib's top as marks on a rule, in the design's unit. */
export function ribMarks(design: Design, dish: Dish): MarkingOut {
  const inch = design.units === 'in' || design.units === 'ft';
  const { path } = dish.ribTop;
  const height = heightOnPath(path);
  const start = path[0]?.x ?? 0;
  const end = path.at(-1)?.x ?? 0;
  // adding the start back may pass the end by the last bit of a number
  return markOut((x) => height(Math.min(start + x, end)), end - start, {
    step: design.marking.step,
    sagLimit: design.marking.sag,
    rule: inch ? { unit: 'in', under: design.marking.fraction } : { unit: 'mm', division: 0.5 },
  });
}

/** One aid as drawings at true size. */
export function aidFiles(aid: Part, design: Design, files: Files): void {
  const drawing = drawPart(aid, design.colours);
  files.set(`templates/${aid.id}.dxf`, writeDxf(drawing));
  files.set(`templates/${aid.id}.svg`, writeSvg(drawing));
}

function jobRecord(job: Job): string {
  const { design, dish, parts, sheets } = job;
  const main = job.processes.find((process) => process.kind === design.process.kind) ?? job.processes[0];
  const mainRecord = main ? recordProcess(main) : { kind: 'hand' as const, compensated: false };
  return writeJob({
    version,
    units: 'mm',
    seed: design.nest.seed,
    design,
    dish,
    parts: parts.map(recordPart),
    sheets: sheets.map((sheet) => ({
      file: fileOf(sheet),
      stock: sheet.nested.stock,
      width: sheet.nested.width,
      height: sheet.nested.height,
      margin: sheet.cut.margin,
      placed: sheet.nested.placed,
      ...(sheet.cut.process.kind === mainRecord.kind ? {} : { process: recordProcess(sheet.cut.process) }),
    })),
    process: mainRecord,
    optics: null,
    problems: job.problems,
    offcuts: sheets.flatMap((sheet) => (sheet.nested.offcut ? [{ sheet: fileOf(sheet), ...sheet.nested.offcut }] : [])),
    extras: parts.flatMap((part) => (part.kind === 'extra' ? [{ part: part.id, file: part.name }] : [])),
  });
}

/** Every file that `cut` writes. */
export function jobFiles(job: Job): Files {
  const files: Files = new Map();
  sheetFiles(job, files);
  for (const aid of job.aids) aidFiles(aid, job.design, files);
  files.set(
    'cut-list.csv',
    writeCutList(
      job.parts,
      job.sheets.map(({ cut, nested }) => ({ id: cut.id, placed: nested.placed })),
      job.design.units,
    ),
  );
  files.set('marking-out.csv', writeMarkingOut(ribMarks(job.design, job.dish)));
  files.set('job.json', jobRecord(job));
  return files;
}
