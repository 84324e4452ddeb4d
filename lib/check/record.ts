/**
 * The record held against the design that it contains: what follows from the design by plain formulas is worked out
 * here once more, without the code that made it.
 */
import * as z from 'zod';
import { FaultList, mm } from './faults.js';
import type { Fault } from './types.js';

const recordName = 'job.json';
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
    router: z.object({ overcut: number, markDepth: number, maxFeed: number }),
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
        .object({ limits: z.object({ thickness: number, overcut: number, markDepth: number, maxFeed: number }) })
        .optional(),
    }),
  ),
  process: z.object({ kind: z.string(), toolDiameter: number.optional(), kerf: number.optional() }),
  offcuts: z.array(z.object({ sheet: z.string(), x: number, y: number, width: number, height: number })),
});

type Recorded = z.infer<typeof schema>;

/** Reports what differs; lengths where no printer is given. */
type Compare = (what: string, recorded: number, byDesign: number, print?: (value: number) => string) => void;

function checkDish({ design, dish }: Recorded, compare: Compare): void {
  const { aperture, focalLength, profile, ribs, baseHeight } = design.dish;
  compare('the dish has a radius of', dish.apertureRadius, aperture / 2);
  compare('the dish has a base height of', dish.baseHeight, baseHeight);
  compare('the dish has a number of ribs of', dish.layout.ribs.length, ribs, String);
  compare('the ribs are as thick as', dish.ribThickness, design.materials[design.rib.material]?.thickness ?? NaN);
  if (profile !== 'paraboloid') return;
  // z = r²/4f
  compare('the dish has a focal length of', dish.profile.focusHeight, focalLength);
  compare('the dish has a depth of', dish.depth, aperture ** 2 / (16 * focalLength));
}

function checkParts({ design, parts }: Recorded, compare: Compare): void {
  for (const { id, material, thickness } of parts)
    compare(`part "${id}" has a thickness of`, thickness, design.materials[material]?.thickness ?? NaN);
  const ribs = parts.find(({ id }) => id === 'rib');
  compare('the number of ribs to be made is', ribs?.quantity ?? 0, design.dish.ribs, String);
}

function checkSheets({ design, sheets, parts, process, seed }: Recorded, compare: Compare, faults: FaultList): void {
  compare('the seed of the nest is', seed, design.nest.seed, String);
  if (process.toolDiameter !== undefined)
    compare('the tool has a diameter of', process.toolDiameter, design.process.toolDiameter);
  if (process.kerf !== undefined && process.kind === design.process.kind)
    compare('the kerf is', process.kerf, design.process.kerf);
  const thickness = new Map(parts.map((part) => [part.id, part.thickness]));
  for (const sheet of sheets) {
    const { file, stock: name, width, height, margin, placed, router } = sheet;
    const stock = design.stock.find(({ id }) => id === name);
    if (router) {
      const { limits } = router;
      compare(`${file}: the material is as thick as`, limits.thickness, thickness.get(placed[0]?.part ?? '') ?? NaN);
      compare(`${file}: the overcut is`, limits.overcut, design.router.overcut);
      compare(`${file}: the depth of marks is`, limits.markDepth, design.router.markDepth);
      compare(`${file}: the maximum feed (mm/min) is`, limits.maxFeed, design.router.maxFeed, String);
    }
    // templates and gauges lie on sheets of their own size
    if (!stock) continue;
    const cut = (sheet.process ?? process).kind;
    const asked = design.materials[stock.material]?.cut ?? 'nothing';
    if (cut !== asked) faults.add('record', recordName, `${file} is cut by ${cut}, by its design by ${asked}`);
    compare(`${file}: the margin is`, margin, stock.margin);
    if (stock.rollWidth !== undefined) compare(`${file}: the roll has a width of`, height, stock.rollWidth);
    else if (stock.size) {
      compare(`${file}: the sheet has a width of`, width, stock.size.width);
      compare(`${file}: the sheet has a height of`, height, stock.size.height);
    }
  }
}

function checkOffcuts({ offcuts, sheets }: Recorded, faults: FaultList): void {
  for (const { sheet, x, y, width, height } of offcuts) {
    const of = sheets.find(({ file }) => file === sheet);
    if (!of) faults.add('record', recordName, `an offcut is said to be left of ${sheet}, which is no sheet`);
    else if (x < -sameLength || y < -sameLength || x + width > of.width + 1e-3 || y + height > of.height + 1e-3)
      faults.add('record', recordName, `the offcut of ${sheet} reaches beyond the sheet`);
  }
}

/** A fault for each value of the record that does not follow from the design in it. */
export function checkRecord(text: string): Fault[] {
  const faults = new FaultList();
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    // reported where the record is read
    return [];
  }
  const result = schema.safeParse(data);
  if (!result.success) {
    const [issue] = result.error.issues;
    faults.add('record', recordName, `${issue?.path.join('.') ?? ''}: ${issue?.message ?? 'it cannot be read'}`);
    return faults.all(recordName);
  }
  const compare: Compare = (what, recorded, byDesign, print = mm) => {
    if (!(Math.abs(recorded - byDesign) <= sameLength))
      faults.add('record', recordName, `${what} ${print(recorded)}, by its design ${print(byDesign)}`);
  };
  checkDish(result.data, compare);
  checkParts(result.data, compare);
  checkSheets(result.data, compare, faults);
  checkOffcuts(result.data, faults);
  return faults.all(recordName);
}
