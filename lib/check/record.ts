/**
 * The record held against the design that it contains: what follows from the design by plain formulas is worked out
 * here once more, without the code that made it.
 */
import * as z from 'zod';
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
  design: z.object({
    dish: z.object({
      aperture: number,
      focalLength: number,
      profile: z.string(),
      ribs: number,
      baseHeight: number,
    }),
    materials: z.record(z.string(), z.object({ thickness: number, cut: z.string() })),
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
    machine: z.record(z.string(), z.unknown()),
    nest: z.object({ seed: number }),
    rib: z.object({ material: z.string() }),
    panel: z.object({ material: z.string().optional() }),
    reflector: z.object({ material: z.string().optional() }),
    extra: z.array(z.object({ quantity: number })),
    template: z.object({ material: z.string().optional() }),
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
      process: z.object({ kind: z.string() }).optional(),
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
  process: z.object({ kind: z.string(), toolDiameter: number.optional(), kerf: number.optional() }),
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

function checkParts({ design, parts }: Recorded, compare: Compare): void {
  for (const { id, material, thickness } of parts)
    compare('part-thickness', thickness, design.materials[material]?.thickness ?? NaN, { of: id });
  const ribs = parts.find(({ id }) => id === 'rib');
  compare('rib-count', ribs?.quantity ?? 0, design.dish.ribs, { print: String });
}

/** The first key that two descriptions of a machine do not have alike. */
function differing(a: Readonly<Record<string, unknown>>, b: Readonly<Record<string, unknown>>): string | null {
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  // what was measured of the machine stands in the process of each sheet
  keys.delete('calibration');
  return [...keys].find((key) => JSON.stringify(a[key]) !== JSON.stringify(b[key])) ?? null;
}

function checkSheets({ design, sheets, parts, process, seed }: Recorded, compare: Compare, faults: FaultList): void {
  compare('nest-seed', seed, design.nest.seed, { print: String });
  if (process.toolDiameter !== undefined) compare('tool-diameter', process.toolDiameter, design.process.toolDiameter);
  if (process.kerf !== undefined && process.kind === design.process.kind)
    compare('kerf', process.kerf, design.process.kerf);
  const thickness = new Map(parts.map((part) => [part.id, part.thickness]));
  for (const sheet of sheets) {
    const { file: of, stock: name, width, height, margin, placed, router } = sheet;
    const stock = design.stock.find(({ id }) => id === name);
    if (router) {
      const { limits } = router;
      compare('sheet-thickness', limits.thickness, thickness.get(placed[0]?.part ?? '') ?? NaN, { of });
      compare('sheet-overcut', limits.overcut, design.router.overcut, { of });
      compare('sheet-mark-depth', limits.markDepth, design.router.markDepth, { of });
      const key = differing(limits.machine, design.machine);
      if (key !== null) faults.add('sheet-machine', recordName, { of, key });
    }
    // templates and gauges lie on sheets of their own size
    if (!stock) continue;
    const cut = (sheet.process ?? process).kind;
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
