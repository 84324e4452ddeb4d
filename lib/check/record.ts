/**
 * The record held against the design that it contains: what follows from the design by plain formulas is worked out
 * here once more, without the code that made it.
 */
import * as z from 'zod';
import { calibrationRead, checkCorrection, processRead } from './corrections.js';
import { FaultList, mm } from './faults.js';
import { recordName } from './job-reader.js';
import type { ComparisonId } from './messages/index.js';
import type { Fault } from './types.js';

/** Lengths of the record are rounded far below this (mm). */
const sameLength = 1e-5;

const number = z.number();
const schema = z.object({
  version: z.string(),
  seed: number,
  coupon: z.literal(true).optional(),
  design: z.object({
    dish: z.object({
      aperture: number,
      focalLength: number,
      profile: z.string(),
      ribs: number,
      baseHeight: number,
    }),
    materials: z.record(z.string(), z.object({ thickness: number, thickest: number.optional(), cut: z.string() })),
    stock: z.array(
      z.object({
        id: z.string(),
        material: z.string(),
        size: z.object({ width: number, height: number }).optional(),
        rollWidth: number.optional(),
        margin: number,
        outline: z.array(z.object({ x: number, y: number })).optional(),
      }),
    ),
    process: z.object({ kind: z.string(), toolDiameter: number, kerf: number }),
    router: z.object({ overcut: number, markDepth: number }),
    machine: z.looseObject({
      kind: z.string(),
      materials: z.record(z.string(), z.object({ kerf: number.optional() })),
      calibration: calibrationRead.optional(),
    }),
    nest: z.object({ seed: number }),
    rib: z.object({ material: z.string() }),
    panel: z.object({ material: z.string().optional() }),
    reflector: z.object({ material: z.string().optional() }),
    extra: z.array(z.object({ quantity: number })),
    template: z.object({ material: z.string().optional(), kerf: number }),
  }),
  dish: z.object({
    apertureRadius: number,
    baseHeight: number,
    depth: number,
    ribThickness: number,
    profile: z.object({ focusHeight: number }),
    layout: z.object({ ribs: z.array(z.unknown()) }),
  }),
  parts: z.array(z.object({ id: z.string(), material: z.string(), thickness: number, quantity: number })),
  sheets: z.array(
    z.object({
      file: z.string(),
      stock: z.string(),
      width: number,
      height: number,
      margin: number,
      placed: z.array(z.object({ part: z.string() })),
      process: processRead.optional(),
      router: z
        .object({
          limits: z.object({
            thickness: number,
            overcut: number,
            markDepth: number,
            machine: z.record(z.string(), z.unknown()),
          }),
        })
        .optional(),
    }),
  ),
  process: processRead,
  offcuts: z.array(z.object({ sheet: z.string(), x: number, y: number, width: number, height: number })),
});

type Recorded = z.infer<typeof schema>;

interface Printing {
  /** The part or sheet whose value it is. */
  readonly of?: string;
  /** How the values are printed; as lengths when left out. */
  readonly print?: (value: number) => string;
}

/** Reports what differs. */
type Compare = (id: ComparisonId, recorded: number, byDesign: number, printing?: Printing) => void;

function checkDish({ design, dish }: Recorded, compare: Compare): void {
  const { aperture, focalLength, profile, ribs, baseHeight } = design.dish;
  compare('dish-radius', dish.apertureRadius, aperture / 2);
  compare('dish-base', dish.baseHeight, baseHeight);
  compare('dish-ribs', dish.layout.ribs.length, ribs, { print: String });
  compare('rib-thickness', dish.ribThickness, design.materials[design.rib.material]?.thickness ?? NaN);
  if (profile !== 'paraboloid') return;
  // z = r²/4f
  compare('focal-length', dish.profile.focusHeight, focalLength);
  compare('dish-depth', dish.depth, aperture ** 2 / (16 * focalLength));
}

function checkParts({ coupon, design, parts }: Recorded, compare: Compare): void {
  for (const { id, material, thickness } of parts)
    compare('part-thickness', thickness, design.materials[material]?.thickness ?? NaN, { of: id });
  // a coupon is cut for a dish, and is none
  if (coupon) return;
  const ribs = parts.find(({ id }) => id === 'rib');
  compare('rib-count', ribs?.quantity ?? 0, design.dish.ribs, { print: String });
}

/**
 * Keys of a machine that are not for a router's files (what was measured of it stands in the process of each sheet), and
 * those that its files take a default for.
 */
const notRouted = new Set(['kind', 'calibration', 'materials', 'order', 'colours', 'toolPaths', 'beam', 'fullPower']);
const filledIn = new Set(['travelSpeed', 'acceleration']);

/** The first key that a sheet's router and the machine of the design do not have alike. */
function differing(sheet: Readonly<Record<string, unknown>>, design: Readonly<Record<string, unknown>>): string | null {
  const keys = new Set([...Object.keys(sheet), ...Object.keys(design)]);
  const unlike = (key: string): boolean =>
    !notRouted.has(key) &&
    !(filledIn.has(key) && design[key] === undefined) &&
    JSON.stringify(sheet[key]) !== JSON.stringify(design[key]);
  return [...keys].find(unlike) ?? null;
}

/** Width of a laser's cut by the design: the machine's in that material, or else the one that is stated for all. */
function kerfOf({ machine, process, template }: Recorded['design'], material: string, aid: boolean): number {
  const measured = machine.calibration?.materials[material];
  const stated = machine.kind === 'laser' ? machine.materials[material]?.kerf : undefined;
  const own = measured?.cutBy === 'laser' ? measured.width : stated;
  return own ?? (aid ? template.kerf : process.kerf);
}

function checkSheets({ design, sheets, parts, process, seed }: Recorded, compare: Compare, faults: FaultList): void {
  compare('nest-seed', seed, design.nest.seed, { print: String });
  if (process.toolDiameter !== undefined) compare('tool-diameter', process.toolDiameter, design.process.toolDiameter);
  // cuts have to go through the thickest place of a sheet
  const thickness = new Map(
    parts.map((part) => [part.id, design.materials[part.material]?.thickest ?? part.thickness]),
  );
  for (const sheet of sheets) {
    const { file: of, stock: name, width, height, margin, placed, router } = sheet;
    const stock = design.stock.find(({ id }) => id === name);
    if (router) {
      const { limits } = router;
      compare('sheet-thickness', limits.thickness, thickness.get(placed[0]?.part ?? '') ?? NaN, { of });
      compare('sheet-overcut', limits.overcut, design.router.overcut, { of });
      compare('sheet-mark-depth', limits.markDepth, design.router.markDepth, { of });
      const key = design.machine.kind === 'router' ? differing(limits.machine, design.machine) : null;
      if (key !== null) faults.add('sheet-machine', recordName, { of, key });
    }
    const cutBy = sheet.process ?? process;
    // the sheets of templates and gauges bear the name of their material
    const material = stock?.material ?? name;
    if (cutBy.kerf !== undefined) compare('kerf', cutBy.kerf, kerfOf(design, material, stock === undefined), { of });
    checkCorrection(cutBy, design.machine.calibration, material, of, compare);
    // templates and gauges lie on sheets of their own size
    if (!stock) continue;
    const cut = cutBy.kind;
    const asked = design.materials[stock.material]?.cut ?? 'nothing';
    if (cut !== asked) faults.add('design-process', recordName, { sheet: of, recorded: cut, byDesign: asked });
    compare('sheet-margin', margin, stock.margin, { of });
    if (stock.rollWidth !== undefined) compare('roll-width', height, stock.rollWidth, { of });
    else if (stock.size) {
      compare('sheet-width', width, stock.size.width, { of });
      compare('sheet-height', height, stock.size.height, { of });
    }
  }
}

function checkOffcuts({ offcuts, sheets }: Recorded, faults: FaultList): void {
  for (const { sheet, x, y, width, height } of offcuts) {
    const of = sheets.find(({ file }) => file === sheet);
    if (!of) faults.add('offcut-of-nothing', recordName, { sheet });
    else if (x < -sameLength || y < -sameLength || x + width > of.width + 1e-3 || y + height > of.height + 1e-3)
      faults.add('offcut-beyond', recordName, { sheet });
  }
}

/** A fault for each value of the record (as JSON) that does not follow from the design in it. */
export function checkRecord(data: unknown): Fault[] {
  const faults = new FaultList();
  const result = schema.safeParse(data);
  if (!result.success) {
    const [issue] = result.error.issues;
    faults.add('design-value', recordName, { issue: `${issue?.path.join('.') ?? ''}: ${issue?.message ?? ''}` });
    return faults.all(recordName);
  }
  const compare: Compare = (id, recorded, byDesign, { of = '', print = mm } = {}) => {
    if (!(Math.abs(recorded - byDesign) <= sameLength))
      faults.add(id, recordName, { of, recorded: print(recorded), byDesign: print(byDesign) });
  };
  checkDish(result.data, compare);
  checkParts(result.data, compare);
  checkSheets(result.data, compare, faults);
  checkOffcuts(result.data, faults);
  return faults.all(recordName);
}
