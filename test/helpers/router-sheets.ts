/** Small hand-made jobs for the router, from true-size parts to the written files. */
import { type Contour, circle, rectangle, reversed } from '../../lib/geometry/index.js';
import {
  type CutSheet,
  machine,
  planRouter,
  type Process,
  type RouterData,
  type RouterMachine,
  type RouterPlan,
} from '../../lib/machining/index.js';
import { type Part, textMark, throughHole } from '../../lib/part/index.js';
import { recordPart, writeJob } from '../../lib/output/index.js';
import { type PartRead, parseRecord, readJob } from '../../lib/check/job-reader.js';
import { routerOf } from '../../lib/design/index.js';
import { plainPart } from './plain-part.js';
import { headNotes } from '../../lib/pipeline/router-files.js';
import { sheetMarks } from '../../lib/pipeline/sheet-marks.js';
import { writeNgc } from '../../lib/output/gcode/index.js';
import { designOf } from './fixtures.js';
import { simulate, type Simulation } from '../../lib/check/router-simulation/index.js';

export function shopPart(
  id: string,
  outline: Contour,
  { barred = [], ...more }: { readonly barred?: readonly number[] } & Partial<Part> = {},
): Part {
  const edges = barred.map((edge) => ({ ring: 0, from: edge, to: edge, role: 'seat' as const }));
  return plainPart(id, outline, { edges, ...more });
}

/** A plate of 200 x 120 with an opening, holes of four kinds and a slot in which something seats. */
function plate(id = 'plate'): Part {
  const slot = reversed(rectangle(120, 70, 132.2, 100));
  return shopPart(id, rectangle(0, 0, 200, 120), {
    openings: [reversed(circle({ x: 55, y: 60 }, 30)), slot],
    holes: [
      { ...throughHole({ x: 20, y: 20 }, 4), countersink: 8 },
      throughHole({ x: 180, y: 20 }, 6),
      throughHole({ x: 180, y: 100 }, 9),
      { ...throughHole({ x: 150, y: 30 }, 20), depth: 5 },
      { ...throughHole({ x: 100, y: 20 }, 4), depth: 6 },
    ],
    marks: [textMark('No {n}', { x: 100, y: 45 }, 8, 0.3)],
    seatCorners: [0, 1, 2, 3].map((vertex) => ({ ring: 2, vertex })),
  });
}

const design = designOf(`
name: test
dish: { aperture: 1000, focalLength: 400, ribs: 12 }
materials: { ply: { kind: plywood, thickness: 12 } }
stock: [{ material: ply, size: 2440 x 1220 }]
rib: { material: ply }
panel: { material: ply }
`);

/** The machine with every default, changed as asked. */
export function machineData(changes: Partial<RouterMachine> = {}): RouterMachine {
  return { ...routerOf(design), ...changes };
}

/** A machine that goes no faster in a cut than this, mm/min. */
export const feedingAt = (feed: number): RouterMachine => machineData({ maxFeed: { x: feed, y: feed, z: feed } });

/** The design's router data with every default, changed as asked. */
export function routerData(changes: Partial<RouterData> = {}): RouterData {
  return { ...design.router, machine: routerOf(design), ...changes };
}

export const routerProcess = (changes: Partial<Extract<Process, { kind: 'router' }>> = {}): Process => ({
  kind: 'router',
  toolDiameter: 6,
  web: 4,
  relief: 'dogbone',
  drills: [4],
  ...changes,
});

export interface ShopJob {
  readonly parts: readonly Part[];
  readonly placed: readonly {
    part: string;
    copy: number;
    x: number;
    y: number;
    rotationDeg: number;
    mirrored: boolean;
  }[];
  readonly width: number;
  readonly height: number;
  readonly thickness: number;
  readonly kind?: string;
  readonly process?: Process;
  readonly data?: RouterData;
  readonly keepOuts?: readonly (readonly { x: number; y: number }[])[];
}

export interface Shop {
  readonly cut: CutSheet;
  readonly plan: RouterPlan;
  /** The parts as the proof reads them, by id. */
  readonly nominal: ReadonlyMap<string, PartRead>;
  readonly files: ReadonlyMap<string, string>;
  readonly simulate: (files?: ReadonlyMap<string, string>) => Simulation;
}

const boreOf = (process: Process): number => (process.kind === 'hand' ? 0 : (process.bore ?? 0));

/** Machines, plans and writes a job, ready to be simulated as written or with changed files. */
export function shop(job: ShopJob): Shop {
  const process = job.process ?? routerProcess();
  const data = job.data ?? routerData();
  const { width, height, placed, parts, thickness } = job;
  const [cut] = machine([{ stock: 'ply', width, height, margin: 10, placed }], parts, process, { compensated: true });
  const marks = sheetMarks({ placed }, new Map(parts.map((part) => [part.id, part])));
  const marked = { ...cut!, marks };
  const sheet = { cut: marked, placed, ...(job.keepOuts ? { keepOuts: job.keepOuts } : {}) };
  const plan = planRouter(sheet, new Map(parts.map((part) => [part.id, part])), data, {
    kind: job.kind ?? 'plywood',
    thickness,
  });
  const files = writeNgc(plan.toolpath, { job: 'test', material: 'plywood', notes: headNotes(plan, null) });
  // as the proof reads it: from the record
  const { parts: nominalParts } = readJob(
    parseRecord(
      writeJob({
        version: '0',
        units: 'mm',
        seed: 1,
        design: { process: { web: 4 } },
        dish: null,
        parts: parts.map((part) => recordPart({ ...part, thickness })),
        fasteners: [],
        sheets: [],
        process: { kind: 'hand', compensated: false },
        optics: null,
        problems: [],
        offcuts: [],
        extras: [],
      }),
    ),
  );
  const nominal = new Map(nominalParts.map((part) => [part.id, part]));
  return {
    cut: marked,
    nominal,
    plan,
    files,
    simulate: (given = files) =>
      simulate(
        [...given].map(([name, text]) => ({ name, text })),
        { width, height, parts: nominal, placed },
        { ...plan.limits, travelHeight: data.safeHeight, axes: plan.toolpath.axes, bore: boreOf(process) },
      ),
  };
}

/** Two plates side by side, one turned. */
export function twoPlates(changes: Partial<ShopJob> = {}): Shop {
  return shop({
    parts: [plate()],
    placed: [
      { part: 'plate', copy: 1, x: 20, y: 20, rotationDeg: 0, mirrored: false },
      { part: 'plate', copy: 2, x: 452, y: 30, rotationDeg: 0, mirrored: true },
    ],
    width: 480,
    height: 200,
    thickness: 12,
    ...changes,
  });
}
