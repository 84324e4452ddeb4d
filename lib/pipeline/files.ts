/** The files of a job, by name. */
import type { Design } from '../design/index.js';
import type { Dish } from '../dish/index.js';
import { contourFromPoints } from '../geometry/index.js';
import type { Process } from '../machining/index.js';
import {
  drawSheet,
  type RecordedProcess,
  type JobRecord,
  type ListedSheet,
  listFiles,
  recordPart,
  sealJob,
  writeCutList,
  writeDxf,
  writeMarkingOut,
  writeSheetList,
  writeSvg,
} from '../output/index.js';
import { type HungSheet, sheetDrawings } from '../output/sheet/index.js';
import type { ShopDrawing } from '../output/shop/index.js';
import type { Part } from '../part/index.js';
import { heightOnPath, markOut, type MarkingOut } from '../parts/index.js';
import { recordFasteners } from './fasteners.js';
import { processOf } from './nesting-request.js';
import { printedParts, printFiles } from './prints.js';
import { beamPictures, laserRecord } from './laser-files.js';
import { shopDrawings } from './shop.js';
import { routedPictures, routerRecord } from './router-files.js';
import type { JobFiles, Job, JobSheet } from './types.js';
import { inInches } from '../units/index.js';

/** Version of the program, written into its records. */
const version = '0.1.0';

function recordProcess(process: Process): RecordedProcess {
  if (process.kind === 'hand') return { kind: 'hand', compensated: false };
  const { bore, axes } = process;
  const corrections = { ...(bore === undefined ? {} : { bore }), ...(axes === undefined ? {} : { axes }) };
  if (process.kind === 'laser') return { kind: 'laser', kerf: process.kerf, compensated: true, ...corrections };
  const { toolDiameter, width } = process;
  const measured = width === undefined ? {} : { width };
  return { kind: 'router', toolDiameter, ...measured, compensated: true, ...corrections };
}

const same = (a: RecordedProcess, b: RecordedProcess): boolean => JSON.stringify(a) === JSON.stringify(b);

/** DXF and SVG of a sheet. */
function drawingFiles(sheet: JobSheet, design: Design): [string, string][] {
  const offcut = design.stock.find((item) => item.id === sheet.nested.stock)?.outline;
  const drawing = drawSheet(sheet.cut, design.colours, offcut && contourFromPoints(offcut));
  return [
    [`${sheet.file}.dxf`, writeDxf(drawing)],
    [`${sheet.file}.svg`, writeSvg(drawing)],
  ];
}

/** The rib's top as marks on a rule, in the design's unit. */
function ribMarks(design: Design, dish: Dish): MarkingOut {
  const inch = inInches(design.units);
  const { path } = dish.ribTop;
  const height = heightOnPath(path);
  const start = path[0]?.x ?? 0;
  const end = path.at(-1)?.x ?? 0;
  // adding the start back may pass the end by the last bit of a number
  return markOut((x) => height(Math.min(start + x, end)), end - start, {
    step: design.marking.step,
    sagLimit: design.marking.sag,
    rule: inch ? { unit: 'in', under: design.marking.fraction } : { unit: 'mm', division: 0.1 },
  });
}

/** Drawings of the sheets of templates, gauges and jigs, with full-size prints of those and of what is cut by hand. */
export async function aidFiles(
  design: Design,
  printed: readonly Part[],
  sheets: readonly JobSheet[],
): Promise<JobFiles> {
  const drawings = sheets.flatMap((sheet) => drawingFiles(sheet, design));
  return new Map<string, string | Uint8Array>([...drawings, ...(await printFiles(design, printed))]);
}

function jobRecord(job: Job, files: JobFiles, coupon: boolean): string {
  const { design, dish, parts, aids, sheets } = job;
  const main = job.requests.find(({ process }) => process.kind === design.process.kind) ?? job.requests[0];
  const mainRecord = recordProcess(processOf(design, main?.process.kind ?? 'hand'));
  const all = [...sheets, ...job.aidSheets];
  const record: JobRecord = {
    version,
    units: 'mm',
    seed: design.nest.seed,
    ...(coupon ? { coupon } : {}),
    design,
    dish,
    parts: [...parts, ...aids].map(recordPart),
    fasteners: recordFasteners(job.assembly),
    sheets: all.map(({ file, nested, cut }) => ({
      file,
      stock: nested.stock,
      width: nested.width,
      height: nested.height,
      margin: cut.margin,
      placed: nested.placed,
      ...(same(recordProcess(cut.process), mainRecord) ? {} : { process: recordProcess(cut.process) }),
      ...routerRecord(job.routes, file),
      ...laserRecord(job.lasered, file),
    })),
    process: mainRecord,
    optics: job.forecast,
    problems: job.problems,
    offcuts: sheets.flatMap(({ file, nested }) => (nested.offcut ? [{ sheet: file, ...nested.offcut }] : [])),
    extras: parts.flatMap((part) => (part.file === undefined ? [] : [{ part: part.id, file: part.file }])),
  };
  return sealJob(record, listFiles(files));
}

/** The sheets with their times. */
function sheetList({ design, sheets, aidSheets, routes, lasered }: Job): string {
  const routed = new Map(routes.map(({ sheet, plan }) => [sheet.file, plan.cuttingSeconds]));
  const followed = new Map(lasered.map(({ sheet, plan }) => [sheet.file, plan]));
  const listed = [...sheets, ...aidSheets].map(({ file, nested, cut }): ListedSheet => {
    const laser = followed.get(file);
    return {
      file,
      width: nested.width,
      height: nested.height,
      parts: nested.placed.length,
      cutBy: cut.process.kind,
      seconds: routed.get(file) ?? laser?.seconds ?? null,
      atLeast: laser?.atLeast ?? false,
    };
  });
  return writeSheetList(listed, design.units);
}

/** Every sheet on a page, to hang at the machine. */
function hungSheets({ design, parts, aids, sheets, aidSheets }: Job): ShopDrawing[] {
  const hung =
    (own: readonly Part[]) =>
    ({ file, nested, cut }: JobSheet): HungSheet => {
      const { material = nested.stock, outline } = design.stock.find(({ id }) => id === nested.stock) ?? {};
      const edge = outline && contourFromPoints(outline);
      return { file, laid: nested, material, cutBy: cut.process.kind, edge, parts: own };
    };
  return sheetDrawings(design, [...sheets.map(hung(parts)), ...aidSheets.map(hung(aids))]);
}

/** Drawings, tool paths, prints and lists. */
export async function cutFiles(job: Job, drawings: readonly ShopDrawing[] = shopDrawings(job)): Promise<JobFiles> {
  const { design, parts, sheets } = job;
  const { writeDrawings } = await import('../output/shop/pdf.js');
  const files = new Map<string, string | Uint8Array>(sheets.flatMap((sheet) => drawingFiles(sheet, design)));
  for (const [name, bytes] of await aidFiles(design, [...job.aids, ...printedParts(job)], job.aidSheets))
    files.set(name, bytes);
  for (const [name, text] of [...job.routes, ...job.lasered].flatMap((route) => [...route.files]))
    files.set(name, text);
  const lists = sheets.map(({ cut, nested }) => ({ id: cut.id, placed: nested.placed }));
  files.set('cut-list.csv', writeCutList(parts, lists, design.units));
  files.set('sheet-list.csv', sheetList(job));
  files.set('marking-out.csv', writeMarkingOut(ribMarks(design, job.dish)));
  files.set('sheets.pdf', await writeDrawings(`${design.name}: sheets`, hungSheets(job)));
  files.set('drawings.pdf', await writeDrawings(`${design.name}: shop drawings`, drawings));
  return files;
}

/** The files with the record of the job, which lists them all. */
export function sealed(job: Job, files: JobFiles, coupon = false): JobFiles {
  return new Map([...files, ['job.json', jobRecord(job, files, coupon)]]);
}

/** Drawings and tool paths of a coupon, and what goes with them. */
export function couponJobFiles(job: Job, more: readonly (readonly [string, string])[]): JobFiles {
  const { design, parts, sheets } = job;
  const files = new Map<string, string | Uint8Array>(sheets.flatMap((sheet) => drawingFiles(sheet, design)));
  for (const [name, text] of [...job.routes.flatMap((route) => [...route.files]), ...more]) files.set(name, text);
  const lists = sheets.map(({ cut, nested }) => ({ id: cut.id, placed: nested.placed }));
  files.set('cut-list.csv', writeCutList(parts, lists, design.units));
  files.set('sheet-list.csv', sheetList(job));
  return sealed(job, files, true);
}

/** Every file that `cut` writes. */
export async function jobFiles(job: Job): Promise<JobFiles> {
  // the book is large, and only the commands that write it should wait for it to load
  const { bookWith } = await import('./book-file.js');
  const drawings = shopDrawings(job);
  const files = await cutFiles(job, drawings);
  const cutPictures = [...routedPictures(job.routes, job.design.units), ...beamPictures(job.sheets, files)];
  const book = bookWith({ ...job, cutPictures }, drawings);
  return sealed(job, new Map([...files, ['book.html', book]]));
}
