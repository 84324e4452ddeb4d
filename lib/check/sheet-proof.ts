/** The proof of one sheet: both its files against the record. */
import { checkAgreement } from './agreement.js';
import type { ReadBackSheet } from './drawn.js';
import { readDxfLines } from './dxf-reader.js';
import { type FaultList, FaultList as Faults, mm } from './faults.js';
import type { LaserMachineRead, RecordRead, PartRead, ProcessRead, SheetRead } from './job-reader.js';
import { cutTolerance } from './limits.js';
import { checkLaserHead } from './head/index.js';
import { checkKey, type LayerColours } from './key.js';
import { readLaserPath } from './laser-path/index.js';
import { checkLines } from './lines.js';
import { messages } from './messages/index.js';
import { compareMarks } from './marks.js';
import { match } from './match.js';
import { axesOf, boreOf, widthOfCut, nameOf, type Nominal, placePart, processOf } from './nominal.js';
import { checkOrder } from './order.js';
import { checkPage } from './page.js';
import { reachedEntity } from './reached.js';
import { type Line, lineOf } from './ring.js';
import { checkKeepOuts, minMargin, minSpacing } from './spacing.js';
import { readSvg } from './svg-reader.js';
import { sweepHole, sweepRing, reportErrors } from './sweep.js';
import type { CutError, ProofPoint, SheetProof } from './types.js';

export type TextFiles = ReadonlyMap<string, string>;

/** $INSUNITS of a DXF for millimetres. */
const dxfMillimetres = 4;

/** Reads one file; a fault and null when it is not there or cannot be read. */
function read<T>(files: TextFiles, name: string, reader: (text: string) => T, faults: FaultList): T | null {
  const text = files.get(name);
  if (text === undefined) {
    faults.add('file-missing', name, {});
    return null;
  }
  try {
    return reader(text);
  } catch (error) {
    faults.refuse(error, name);
    return null;
  }
}

/** Reads the DXF and the SVG of a drawing, checks each by itself, and that they agree. */
export function readPair(
  files: TextFiles,
  file: string,
  colours: LayerColours | undefined,
  faults: FaultList,
): { dxf: ReadBackSheet | null; svg: ReadBackSheet | null } {
  const dxf = read(files, `${file}.dxf`, readDxfLines, faults);
  const svg = read(files, `${file}.svg`, readSvg, faults);
  if (dxf && dxf.unit !== dxfMillimetres)
    faults.add('dxf-unit', `${file}.dxf`, { unit: dxf.unit, wanted: dxfMillimetres });
  if (svg && Math.abs(svg.scale - 1) > 1e-9)
    faults.add('svg-unit', `${file}.svg`, { scale: Number(svg.scale.toPrecision(6)) });
  for (const [drawing, name] of [
    [dxf?.sheet, `${file}.dxf`],
    [svg?.sheet, `${file}.svg`],
  ] as const) {
    if (!drawing) continue;
    checkLines(drawing, name, faults);
    checkKey(drawing, colours, name, faults);
  }
  if (dxf && svg) checkAgreement(dxf.sheet, svg.sheet, `${file}.svg`, faults);
  return { dxf: dxf?.sheet ?? null, svg: svg?.sheet ?? null };
}

/** What a process can make of a part: a laser cuts no countersinks, so a circle for one belongs to nothing. */
function cuttable(part: PartRead, kind: ProcessRead['kind']): PartRead {
  if (kind !== 'laser') return part;
  return { ...part, drills: part.drills.map((drill) => ({ ...drill, countersink: undefined })) };
}

function nominalsOf(
  parts: ReadonlyMap<string, PartRead>,
  sheet: SheetRead,
  kind: ProcessRead['kind'],
  faults: FaultList,
): Nominal[] {
  return sheet.placed.flatMap((placement) => {
    const part = parts.get(placement.part);
    if (part?.contours.some(({ operation }) => operation === 'outline') === true)
      return [placePart(cuttable(part, kind), placement)];
    faults.add('part-unknown', 'job.json', { sheet: sheet.file, part: placement.part });
    return [];
  });
}

/** The edge of a sheet by the record: an offcut's outline, or the rectangle. */
function edgeOf({ width, height }: SheetRead, outline: readonly ProofPoint[] | undefined): Line {
  const rectangle = [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
  ];
  return lineOf(
    (outline ?? rectangle).map(({ x, y }) => ({ x, y, bulge: 0 })),
    true,
  );
}

interface Worst {
  outward: CutError | null;
  inward: CutError | null;
}

const worse = (a: CutError | null, b: CutError): CutError => (a === null || b.mm > a.mm ? b : a);

/** Reports lettering that is not as it should be, and scribed lines of nothing; those of parts are swept. */
function checkDrawnMarks(
  nominals: readonly Nominal[],
  drawing: Pick<ReadBackSheet, 'entities'>,
  file: string,
  faults: FaultList,
): void {
  const edges = drawing.entities.flatMap((entity) =>
    entity.kind === 'path' && entity.layer === 'scribe' ? entity.line.edges : [],
  );
  const { labels, stray } = compareMarks(nominals, edges);
  for (const { nominal, text, place } of labels)
    faults.add('mark-missing', file, { text, part: nameOf(nominal) }, place);
  for (const place of stray) faults.add('mark-stray', file, {}, place);
}

/** Pairs what is drawn with the parts, sweeps every cut, and checks the order. */
function checkCuts(
  nominals: readonly Nominal[],
  drawing: Pick<ReadBackSheet, 'entities'>,
  process: ProcessRead,
  order: readonly string[] | undefined,
  file: string,
  faults: FaultList,
): Worst {
  const { kind } = process;
  const width = widthOfCut(process);
  const matches = match(nominals, drawing.entities, { width, bore: boreOf(process) }, file, faults);
  const worst: Worst = { outward: null, inward: null };
  const take = ({ outward, inward }: { outward: CutError; inward: CutError }): void => {
    worst.outward = worse(worst.outward, outward);
    worst.inward = worse(worst.inward, inward);
  };
  for (const cut of matches.rings) {
    if (cut.paths.length === 0) continue;
    const swept = sweepRing(cut, width);
    if (cut.operation !== 'scribe') take(swept);
    reportErrors(cut, swept, file, faults);
  }
  for (const hole of matches.holes) {
    const swept = sweepHole(hole);
    const error = Math.max(swept.outward.mm, swept.inward.mm);
    const named = { hole: `${mm(hole.diameter)} ${hole.operation}`, part: nameOf(hole.nominal) };
    if (hole.operation === 'drill') take(swept);
    if (error > cutTolerance) faults.add('hole-off', file, { ...named, off: mm(error) }, hole.circle);
    // a beam follows every line, so the circle would come out wider by its width
    if (kind === 'laser' && hole.operation === 'drill' && width > 0 && hole.diameter > width + 2 * cutTolerance)
      faults.add('hole-bare', file, { ...named, kerf: mm(width) }, hole.circle);
  }
  checkOrder(matches, drawing.entities, order, file, faults);
  checkDrawnMarks(nominals, drawing, file, faults);
  return worst;
}

/** The drawing as its lines come out on a machine with these axes. */
function cutBy<Read extends Pick<ReadBackSheet, 'entities'>>(drawing: Read, axes: ReturnType<typeof axesOf>): Read {
  if (axes === undefined) return drawing;
  return { ...drawing, entities: drawing.entities.map((entity) => reachedEntity(axes, entity)) };
}

/** What a laser follows by a tool path, which is judged like a drawing; null for a file that cannot be read. */
function readFollowed(
  files: TextFiles,
  name: string,
  job: RecordRead,
  sheet: SheetRead,
  faults: FaultList,
): Pick<ReadBackSheet, 'entities'> | null {
  const machine = laserOf(job);
  const material = job.design.stock?.find(({ id }) => id === sheet.stock)?.material ?? sheet.stock;
  if (machine === null) {
    faults.take('laser', 'beam-described', name, messages['beam-described'].text);
    return null;
  }
  const followed = read(files, name, (text) => readLaserPath(name, text, machine, material), faults);
  if (followed !== null) checkLaserHead(name, files.get(name) ?? '', job, sheet, followed.limits, faults);
  for (const { id, file, line, what, place } of followed?.findings ?? [])
    faults.take('laser', id, file === '' ? name : file, line === undefined ? what : `line ${line}: ${what}`, place);
  return followed;
}

/** The laser that the design describes; null where it describes none. */
function laserOf({ design: { machine } }: RecordRead): LaserMachineRead | null {
  return machine !== undefined && 'order' in machine ? machine : null;
}

/** The proof of one sheet of the record. */
export function proveSheet(
  files: TextFiles,
  job: RecordRead,
  parts: ReadonlyMap<string, PartRead>,
  sheet: SheetRead,
): SheetProof {
  const faults = new Faults();
  const process = processOf(job, sheet);
  const width = widthOfCut(process);
  const laser = process.kind === 'laser' ? laserOf(job) : null;
  const order = laser?.order;
  const nominals = nominalsOf(parts, sheet, process.kind, faults);
  const stock = job.design.stock?.find(({ id }) => id === sheet.stock);
  const recorded = edgeOf(sheet, stock?.outline);
  const { dxf, svg } = readPair(files, sheet.file, job.design.colours, faults);
  const worst: Worst = { outward: null, inward: null };
  const take = ({ outward, inward }: Worst): void => {
    if (outward) worst.outward = worse(worst.outward, outward);
    if (inward) worst.inward = worse(worst.inward, inward);
  };
  let edge: Line | null = null;
  for (const [drawing, ending] of [
    [dxf, 'dxf'],
    [svg, 'svg'],
  ] as const) {
    if (!drawing) continue;
    const name = `${sheet.file}.${ending}`;
    const made = cutBy(drawing, axesOf(process));
    const drawnEdge = checkPage(made, sheet, process.kind, recorded, width / 2, name, faults);
    edge ??= drawnEdge;
    if (!drawnEdge) continue;
    take(checkCuts(nominals, made, process, order, name, faults));
  }
  for (const name of sheet.laser?.files ?? []) {
    const followed = readFollowed(files, name, job, sheet, faults);
    if (followed === null) continue;
    checkLines(followed, name, faults);
    take(checkCuts(nominals, cutBy(followed, axesOf(process)), process, order, name, faults));
  }
  const spacing = 2 * widthOfCut({ ...process, compensated: true }) + job.design.process.web;
  if (stock !== undefined) checkKeepOuts(nominals, stock.keepOuts, spacing, 'job.json', faults);
  return {
    file: sheet.file,
    parts: nominals.length,
    worstOutward: worst.outward,
    worstInward: worst.inward,
    minSpacing: minSpacing(nominals, spacing, 'job.json', faults),
    minMargin: minMargin(nominals, edge ?? recorded, sheet.margin, 'job.json', faults),
    faults: faults.all(sheet.file),
  };
}
