/** Parts and stock as the nest sees them: shapes, rotations narrowed by grain, one request for each process. */
import type { Design, ProcessKind } from '../design/index.js';
import { flatten } from '../geometry/index.js';
import { type Process, spacingFor } from '../machining/index.js';
import type { NestOptions, NestPart, NestStock } from '../nest/index.js';
import type { Grain, Part } from '../part/index.js';

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

/** The process that cuts a material, with its sizes. */
function processOf(design: Design, kind: ProcessKind): Process {
  const { toolDiameter, kerf, web, relief, drillBits } = design.process;
  if (kind === 'router') return { kind, toolDiameter, web, relief, drills: drillBits };
  if (kind === 'laser') return { kind, kerf, web };
  return { kind, web };
}

function nestPart(design: Design, part: Part): NestPart {
  const kind = design.materials[part.material]?.kind;
  return {
    id: part.id,
    quantity: part.quantity,
    outline: flatten(part.outline, outlineTolerance, 'outside'),
    openings: part.openings.map((ring) => flatten(ring, outlineTolerance, 'outside')),
    group: part.material,
    rotations: rotations(part.grain, kind === 'plywood' || kind === 'card'),
    // marks and heads belong to a face, and an outline of one's own may have a good side
    faces: [part.up],
  };
}

function nestStock(design: Design): NestStock[] {
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
  const kinds: readonly ProcessKind[] = ['router', 'laser', 'hand'];
  const groups = kinds.map((kind) => {
    const own = parts.filter(({ material }) => design.materials[material]?.cut === kind);
    return { kind, own, pieces: own.reduce((sum, { quantity }) => sum + quantity, 0) };
  });
  const max = Math.max(...groups.map(({ pieces }) => pieces));
  return groups.flatMap(({ kind, own, pieces }) => {
    if (own.length === 0) return [];
    const process = processOf(design, kind);
    return [
      {
        process,
        parts: own.map((part) => nestPart(design, part)),
        stock: stock.filter(({ group }) => design.materials[group]?.cut === kind),
        options: {
          spacing: spacingFor(process),
          seed: design.nest.seed,
          effort: (design.nest.effort * pieces) / max,
        },
      },
    ];
  });
}
