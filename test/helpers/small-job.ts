/**
 * The smallest job that has everything: two ribs of 60 x 40 mm on a board of 180 x 72 x 6 mm, with holes of three
 * kinds, an opening, a pocket, a scribed line and lettering; drawings, tool path and record as they are written. Sizes invented.
 */
import { createHash } from 'node:crypto';
import { defaultColours } from '../../lib/design/index.js';
import { circle, rectangle, reversed } from '../../lib/geometry/index.js';
import { lineMark, type Part, textMark, throughHole } from '../../lib/part/index.js';
import { drawSheet, writeDxf, writeLaserNgc, writeSvg } from '../../lib/output/index.js';
import { machine, planLaser, type RouterMachine } from '../../lib/machining/index.js';
import { sheetMarks } from '../../lib/pipeline/sheet-marks.js';
import { routerData, type Shop, shop, shopPart } from './router-sheets.js';

export type Files = Map<string, string>;

const corners = rectangle(0, 0, 60, 40);
const scribed = lineMark([
  { x: 32, y: 36, bulge: 0 },
  { x: 42, y: 36, bulge: 0 },
]);
const lettering = textMark('No {n}', { x: 16, y: 4 }, 6);
/** A groove with round ends, clockwise, from one x to another. */
export const groove = (half: number, from = 34, to = 38, y = 21): Part['pockets'][number]['ring'] => [
  { x: from, y: y - half, bulge: -1 },
  { x: from, y: y + half, bulge: 0 },
  { x: to, y: y + half, bulge: -1 },
  { x: to, y: y - half, bulge: 0 },
];
const rib = shopPart('rib', corners, {
  pockets: [{ ring: groove(7), depth: 2, from: 'front' }],
  openings: [reversed(circle({ x: 16, y: 24 }, 8))],
  holes: [
    { ...throughHole({ x: 50, y: 32 }, 4), countersink: 7 },
    throughHole({ x: 50, y: 10 }, 9),
    { ...throughHole({ x: 8, y: 8 }, 4), depth: 3 },
  ],
  marks: [scribed, lettering],
  thickness: 6,
  quantity: 2,
});
const placed = [
  { part: 'rib', copy: 1, x: 16, y: 16, rotationDeg: 0, mirrored: false },
  { part: 'rib', copy: 2, x: 164, y: 16, rotationDeg: 0, mirrored: true },
];
const size = { width: 180, height: 72, thickness: 6 };

/** The names of its files without the ending. */
export const sheetFile = 'ply-1';

/** Warnings of a plan as a record has them. */
const problemsOf = ({ plan }: Shop): { code: string; message: string }[] =>
  plan.problems.map(({ code, message }) => ({ code, message }));

const made: Shop = shop({ parts: [rib], placed, ...size });

/** Everything of the record that the proof looks at, by plain arithmetic: a dish of 1 m with a focal length of 0.4 m. */
const record = {
  version: '0',
  units: 'mm',
  seed: 1,
  design: {
    name: 'test',
    dish: { aperture: 1000, focalLength: 400, profile: 'paraboloid', ribs: 2, baseHeight: 60 },
    materials: { ply: { thickness: 6, cut: 'router', description: 'plywood' } },
    stock: [{ id: 'ply', material: 'ply', size: { width: 180, height: 72 }, margin: 10, keepOuts: [] }],
    process: { kind: 'router', toolDiameter: 6, kerf: 0.2, web: 4 },
    router: {
      overcut: made.plan.limits.overcut,
      markDepth: made.plan.limits.markDepth,
      safeHeight: made.plan.toolpath.safeHeight,
    },
    machine: { kind: 'router', materials: {}, ...made.plan.limits.machine },
    nest: { seed: 1 },
    rib: { material: 'ply' },
    panel: {},
    reflector: {},
    extra: [],
    template: { kerf: 0.2 },
    colours: defaultColours,
  },
  dish: {
    apertureRadius: 500,
    baseHeight: 60,
    // D squared over 16 f
    depth: 1000 ** 2 / (16 * 400),
    ribThickness: 6,
    profile: { focusHeight: 400 },
    layout: { ribs: [0, 0] },
  },
  parts: [...made.nominal.values()],
  sheets: [
    {
      file: sheetFile,
      stock: 'ply',
      width: size.width,
      height: size.height,
      margin: 10,
      placed,
      router: {
        files: [...made.files.keys()],
        limits: made.plan.limits,
        cuttingSeconds: made.plan.cuttingSeconds,
        toolWear: made.plan.toolWear,
      },
    },
  ],
  process: { kind: 'router', toolDiameter: 6, compensated: true },
  problems: problemsOf(made),
  offcuts: [{ sheet: sheetFile, x: 0, y: 0, width: 10, height: 72 }],
};

/** The record as a test may change it. */
type Mutable<T> = T extends object ? { -readonly [K in keyof T]: Mutable<T[K]> } : T;
export type SmallRecord = Mutable<typeof record>;

/** Node's own SHA-256, which the hashes of the record have to agree with. */
const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex');

/** The text of a record with the list of the other files and a hash of itself. */
export function sealed(content: object, files: ReadonlyMap<string, string>): string {
  const list = [...files]
    .filter(([name]) => name !== 'job.json')
    .map(([name, text]) => ({ name, bytes: Buffer.byteLength(text), sha256: sha256(text) }));
  const open = JSON.stringify({ ...content, files: list, recordHash: '0'.repeat(64) }, null, 1);
  return open.replace('0'.repeat(64), sha256(open));
}

/** Drawings and tool path of a job. */
function cutFiles({ cut, files }: Shop): Files {
  const drawing = drawSheet(cut, defaultColours);
  return new Map([[`${sheetFile}.dxf`, writeDxf(drawing)], [`${sheetFile}.svg`, writeSvg(drawing)], ...files]);
}

const written = cutFiles(made);
written.set('job.json', sealed(record, written));

/** The folder; what is changed is the test's own. */
export function smallJob(): Files {
  return new Map(written);
}

/** A copy of its record. */
export function smallRecord(): SmallRecord {
  return structuredClone(record) as SmallRecord;
}

/** Without tool paths, which take the longest to prove. */
export function drawingsOnly(): Files {
  const files = smallJob();
  for (const name of made.files.keys()) files.delete(name);
  const content = smallRecord();
  delete (content.sheets[0] as Partial<SmallRecord['sheets'][number]>).router;
  return files.set('job.json', sealed(content, files));
}

/** The same job for another machine. */
export function jobFor(described: RouterMachine): Files {
  const other = shop({ parts: [rib], placed, ...size, data: routerData({ machine: described }) });
  const content = smallRecord();
  Object.assign(content.design, { machine: { kind: 'router', materials: {}, ...described } });
  const { limits, cuttingSeconds, toolWear } = other.plan;
  Object.assign(content, { problems: problemsOf(other) });
  Object.assign(content.sheets[0]!, { router: { files: [...other.files.keys()], limits, cuttingSeconds, toolWear } });
  const files = cutFiles(other);
  return files.set('job.json', sealed(content, files));
}

/** The laser that the same job is for, as a design has it; speeds and powers are invented. */
export const laserKeys = {
  ...routerData().machine,
  kind: 'laser',
  materials: { ply: { kerf: 0.2, cutSpeed: 900, markSpeed: 6000, cutPower: 80, markPower: 12 } },
  order: ['drill', 'scribe', 'opening', 'outline'],
  beam: 'M3',
  fullPower: 1000,
} as const;

/** The same job for a laser with tool paths; a laser makes no pockets. */
export function laserJob(
  changes: Partial<Omit<typeof laserKeys, 'beam'>> & { readonly beam?: 'M3' | 'M4' } = {},
): Files {
  const laser = { ...laserKeys, ...changes };
  const [cut] = machine(
    [{ stock: 'ply', width: size.width, height: size.height, margin: 10, placed }],
    [rib],
    { kind: 'laser', kerf: 0.2, web: 4, order: laser.order },
    { compensated: true },
  );
  const marked = { ...cut!, marks: sheetMarks({ placed }, new Map([[rib.id, rib]])) };
  const { cuts } = planLaser(marked, { ...laser, cutSpeed: 900, markSpeed: 6000 });
  const drawing = drawSheet(marked, defaultColours);
  const path = { sheet: sheetFile, width: size.width, height: size.height, cuts, cutPower: 800, markPower: 120 };
  const text = writeLaserNgc(path, laser, { job: 'test', material: 'plywood', notes: [] });
  const files: Files = new Map([
    [`${sheetFile}.dxf`, writeDxf(drawing)],
    [`${sheetFile}.svg`, writeSvg(drawing)],
    [`${sheetFile}.ngc`, text],
  ]);
  const content = smallRecord();
  Object.assign(content.design, {
    machine: laser,
    materials: { ply: { thickness: 6, cut: 'laser', description: 'plywood' } },
  });
  for (const part of content.parts) part.contours = part.contours.filter(({ operation }) => operation !== 'pocket');
  Object.assign(content.sheets[0]!, { router: undefined, laser: { files: [`${sheetFile}.ngc`], seconds: null } });
  Object.assign(content, { process: { kind: 'laser', kerf: 0.2, compensated: true } });
  return files.set('job.json', sealed(content, files));
}

/** The good parts of the rib, to put it together otherwise. */
export const ribParts = { outline: corners, openings: rib.openings, holes: rib.holes, scribed, lettering };

/** Files that cut another rib, beside the record of the right one: as if the writer of them all had a fault. */
export function cutOtherwise(changes: Partial<Part>): Files {
  const files = cutFiles(shop({ parts: [{ ...rib, ...changes }], placed, ...size }));
  return files.set('job.json', sealed(record, files));
}
