/** The record `job.json` as the proof needs it, read and checked independently. */
import * as z from 'zod';
import { unreadable } from './drawn.js';
import { farthest } from './limits.js';

const length = z.number().min(-farthest).max(farthest);
const size = z.number().positive().max(farthest);
const name = z.string().min(1).max(200);

const vertex = z.tuple([length, length, z.number().min(-farthest).max(farthest)]);
const contour = z.object({
  operation: z.enum(['outline', 'opening', 'pocket', 'scribe']),
  depth: size.optional(),
  closed: z.literal(false).optional(),
  vertices: z.array(vertex).min(2),
});
const drill = z.object({
  x: length,
  y: length,
  diameter: size,
  depth: z.union([size, z.literal('through')]),
  countersink: size.optional(),
});
const label = z.object({
  text: z.string().max(1000),
  x: length,
  y: length,
  height: size,
  angleDeg: z.number().min(-36000).max(36000),
  face: z.enum(['front', 'back']),
});
const part = z.object({
  id: name,
  name: z.string(),
  material: z.string(),
  thickness: z.number().nonnegative(),
  quantity: z.number().int().min(0).max(1e6),
  contours: z.array(contour).min(1),
  drills: z.array(drill),
  labels: z.array(label).max(1000),
});
const scale = z.number().min(0.9).max(1.1);
const axes = z.object({ scaleX: scale, scaleY: scale, lean: z.number().min(-0.1).max(0.1) });
const corrections = { bore: z.number().min(-2).max(2).optional(), axes: axes.optional() };
const processOf = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('router'),
    toolDiameter: size,
    width: size.optional(),
    compensated: z.boolean(),
    ...corrections,
  }),
  z.object({
    kind: z.literal('laser'),
    kerf: z.number().nonnegative().max(farthest),
    compensated: z.boolean(),
    ...corrections,
  }),
  z.object({ kind: z.literal('hand'), compensated: z.boolean() }),
]);
const placement = z.object({
  part: name,
  copy: z.number().int().min(1).max(1e6),
  x: length,
  y: length,
  rotationDeg: z.number().min(-36000).max(36000),
  mirrored: z.boolean(),
});
const count = z.number().int().min(0).max(1e6);
const corners = z.array(z.object({ x: length, y: length })).min(3);
const keepOuts = z.array(corners);
const point = z.object({ x: length, y: length });
const machine = z.object({
  programUnits: z.enum(['mm', 'in']),
  arcs: z.enum(['arcs', 'lines']),
  commentLength: count,
  toolChange: z.enum(['automatic', 'by-hand', 'none']),
  lengthOffsets: z.boolean(),
  changeAt: point,
  changeHeight: size,
  pathMode: z.enum(['exact', 'exact-stop', 'continuous']),
  pathTolerance: size,
  maxFeed: z.object({ x: size, y: size, z: size }),
  spinUp: z.number().nonnegative(),
  coolant: z.enum(['off', 'mist', 'flood']),
  parking: point.optional(),
  end: z.enum(['M2', 'M30']),
});
const power = z.number().positive().max(farthest).optional();
/** The machine of a design where it is a laser. */
const laserMachine = z.object({
  kind: z.literal('laser'),
  order: z.array(z.string()),
  beam: z.enum(['M3', 'M4']),
  fullPower: power,
  materials: z.record(z.string(), z.object({ cutSpeed: power, markSpeed: power, cutPower: power, markPower: power })),
  programUnits: z.enum(['mm', 'in']),
  arcs: z.enum(['arcs', 'lines']),
  commentLength: count,
  pathMode: z.enum(['exact', 'exact-stop', 'continuous']),
  pathTolerance: size,
  coolant: z.enum(['off', 'mist', 'flood']),
  parking: point.optional(),
  end: z.enum(['M2', 'M30']),
});
const router = z.object({
  files: z.array(name).min(1).max(100),
  limits: z.object({
    tools: z
      .array(
        z.object({
          number: count,
          kind: z.enum(['mill', 'drill', 'v']),
          diameter: size,
          sold: size.optional(),
          cuttingDepth: size,
          passDepth: size,
          spindle: size,
          feed: size,
          plunge: size,
          flutes: z.number().int().min(1).max(100),
          range: z.object({
            minChip: size.optional(),
            maxChip: size.optional(),
            maxPlunge: size.optional(),
            maxSpindle: size.optional(),
            outside: z.literal(true).optional(),
          }),
        }),
      )
      .max(100),
    thickness: size,
    overcut: z.number().nonnegative().max(farthest),
    rampAngleDeg: size,
    finishing: z.number().nonnegative().max(farthest),
    markDepth: z.number().nonnegative().max(farthest),
    hopHeight: size,
    tabWidth: size,
    tabHeight: size,
    onionSkin: size,
    minSpindle: size,
    maxSpindle: size,
    machine,
    holding: z.array(z.object({ part: name, copy: count, tabs: count, onionSkin: z.boolean() })),
    tabs: z.array(corners),
    keepOuts,
  }),
  cuttingSeconds: z.number().nonnegative(),
  toolWear: z.array(z.object({ tool: count, length: z.number().nonnegative() })).max(100),
});
const sheet = z.object({
  file: name,
  stock: z.string(),
  width: size,
  height: size,
  margin: z.number().nonnegative().max(farthest),
  placed: z.array(placement),
  process: processOf.optional(),
  router: router.optional(),
  laser: z.object({ files: z.array(name).max(100), seconds: z.number().nonnegative().nullable() }).optional(),
});
const record = z.object({
  version: z.string(),
  units: z.literal('mm'),
  design: z.object({
    name: z.string().max(1000).optional(),
    materials: z.record(z.string(), z.object({ description: z.string().max(1000).optional() })).optional(),
    process: z.object({ web: z.number().nonnegative().max(farthest) }),
    router: z.object({ safeHeight: size }).optional(),
    machine: z.union([laserMachine, z.object({ kind: z.string() })]).optional(),
    colours: z.record(z.string(), z.string()).optional(),
    stock: z
      .array(z.object({ id: z.string(), material: z.string(), outline: corners.optional(), keepOuts }))
      .optional(),
  }),
  parts: z.array(part),
  sheets: z.array(sheet),
  process: processOf,
  problems: z.array(z.object({ code: z.string(), message: z.string() })).optional(),
});

export type LaserMachineRead = z.infer<typeof laserMachine>;
export type MachineRead = z.infer<typeof machine>;
export type LabelRead = z.infer<typeof label>;
export type PartRead = z.infer<typeof part>;
export type AxesRead = z.infer<typeof axes>;
export type ProcessRead = z.infer<typeof processOf>;
export type PlacementRead = z.infer<typeof placement>;
export type SheetRead = z.infer<typeof sheet>;
export type RecordRead = z.infer<typeof record>;

/** Name of the record in its folder. */
export const recordName = 'job.json';

/**
 * The record as JSON, read once for all that look into it.
 * @throws Unreadable when it is missing or no JSON
 */
export function parseRecord(text: string | undefined): unknown {
  if (text === undefined) throw unreadable('record-missing', {});
  try {
    return JSON.parse(text);
  } catch (error) {
    throw unreadable('record-not-json', { why: error instanceof Error ? error.message : String(error) });
  }
}

/**
 * What the proof needs of the record.
 * @throws Unreadable when a field that the proof needs is missing or out of range
 */
export function readJob(data: unknown): RecordRead {
  const result = record.safeParse(data);
  if (!result.success) {
    const issues = result.error.issues
      .slice(0, 3)
      .map(({ path, message }) => `${path.join('.') || 'the whole file'}: ${message}`);
    throw unreadable('record-value', { issues: issues.join('; ') });
  }
  return result.data;
}
