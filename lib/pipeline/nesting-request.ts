/** Parts and stock as the nest sees them: shapes, rotations narrowed by grain, one request for each process. */
import type { Design, ProcessKind } from '../design/index.js';
import { flatten } from '../geometry/index.js';
import { type Process, spacingFor } from '../machining/index.js';
import { laserProcess } from './laser.js';
import type { NestOptions, NestPart, NestStock } from '../nest/index.js';
import type { Grain, Part } from '../part/index.js';
import { calibrated } from './calibrated.js';

/** One run of the nest: all parts that are cut by the same process. */
export interface NestRequest {
  readonly process: Process;
  readonly parts: readonly NestPart[];
  readonly stock: readonly NestStock[];
  readonly options: NestOptions;
}

// arcs are covered by straight edges that stand out this far at most (mm): a hundredth of the least web in use
const outlineTolerance = 0.05;

/** Degrees that a part may be turned on a sheet whose grain runs along x. */
function rotations(grain: Grain, grained: boolean): readonly number[] | 'any' {
  if (!grained || grain === 'any') return 'any';
  return grain === 'along' ? [0, 180] : [90, 270];
}

/** The process that cuts, before anything is known of a material. */
export function processOf(design: Design, kind: ProcessKind): Process {
  const { toolDiameter, kerf, web, relief, drillBits } = design.process;
  if (kind === 'router') return { kind, toolDiameter, web, relief, drills: drillBits };
  if (kind === 'laser') return { kind, kerf, web };
  return { kind, web };
}

/** The same for a material, as the machine is described. */
function materialProcess(design: Design, kind: ProcessKind, material: string): Process {
  return kind === 'laser' ? laserProcess(design, material, design.process.kerf) : processOf(design, kind);
}

/** One run for all materials that are cut with the same sizes. */
interface ProcessGroup {
  readonly process: Process;
  readonly materials: ReadonlySet<string>;
}

/** The processes in use, in the order router, laser, hand; one for each width of the cut. */
function processGroups(design: Design, used: readonly string[]): ProcessGroup[] {
  const kinds: readonly ProcessKind[] = ['router', 'laser', 'hand'];
  return kinds.flatMap((kind) => {
    const groups = new Map<string, { process: Process; materials: Set<string> }>();
    for (const material of used.filter((id) => design.materials[id]?.cut === kind)) {
      const process = calibrated(materialProcess(design, kind, material), material, design);
      const key = JSON.stringify(process);
      const group = groups.get(key) ?? { process, materials: new Set() };
      groups.set(key, group);
      group.materials.add(material);
    }
    return [...groups.values()];
  });
}

/** A part as the nest sees it. */
export function nestPart(design: Design, part: Part): NestPart {
  const kind = design.materials[part.material]?.kind;
  return {
    id: part.id,
    quantity: part.quantity,
    outline: flatten(part.outline, outlineTolerance, 'outside'),
    openings: part.openings.map((ring) => flatten(ring, outlineTolerance, 'outside')),
    group: part.material,
    // the axes of the machine are read off a coupon, so it lies as it is drawn
    rotations: part.kind === 'coupon' ? [0] : rotations(part.grain, kind === 'plywood' || kind === 'card'),
    // marks and heads belong to a face, and an outline of the user's own may have a good side
    faces: [part.up],
  };
}

/** All stock of a design as the nest sees it. */
export function nestStock(design: Design): NestStock[] {
  return design.stock.map(({ id, material, size, outline, rollWidth, rollLength, count, price, margin, keepOuts }) => {
    const shape: NestStock['shape'] = size
      ? { kind: 'sheet', width: size.width, height: size.height }
      : outline
        ? { kind: 'offcut', outline }
        : { kind: 'roll', height: rollWidth ?? 0, maxLength: rollLength };
    return { id, group: material, shape, count: count ?? Infinity, price, margin, keepOuts };
  });
}

/**
 * What is to be nested: a request for each process in use, in the order router, laser, hand. The request with most
 * pieces gets the design's whole effort, the others theirs by the number of pieces.
 */
export function nestRequests(design: Design, parts: readonly Part[]): NestRequest[] {
  const stock = nestStock(design);
  const used = [...new Set(parts.map(({ material }) => material))];
  const groups = processGroups(design, used).map(({ process, materials }) => {
    const own = parts.filter(({ material }) => materials.has(material));
    return { process, materials, own, pieces: own.reduce((sum, { quantity }) => sum + quantity, 0) };
  });
  const max = Math.max(...groups.map(({ pieces }) => pieces));
  return groups.map(({ process, materials, own, pieces }) => ({
    process,
    parts: own.map((part) => nestPart(design, part)),
    stock: stock.filter(({ group }) => materials.has(group)),
    options: {
      spacing: spacingFor(process),
      seed: design.nest.seed,
      effort: (design.nest.effort * pieces) / max,
    },
  }));
}
