import { placePoint, placeVertices } from '../geometry/index.js';
import { holesUp, type PartShape, type PlacedPart } from '../part/index.js';
import { contourOperations, openingProblems } from './contours.js';
import { holeOperations, holeProblems, type PartOperation } from './holes.js';
import { inCuttingOrder } from './order.js';
import type { CutOperation, CutProblem, CutSheet, MachinedSheet, Process, Unreached } from './types.js';

export interface MachineOptions {
  /** Paths of the tool's centre rather than finished edges. By hand there is nothing to compensate. */
  readonly compensated: boolean;
}

/** Everything about the parts that the process cannot cut: holes and openings smaller than the tool. */
export function cutProblems(parts: readonly PartShape[], process: Process): CutProblem[] {
  return parts.flatMap((part) => [...holeProblems(part, process), ...openingProblems(part, process)]);
}

/** One part worked through once, in its own axes, for all its copies. */
interface WorkedPart {
  readonly operations: readonly PartOperation[];
  readonly unreached: readonly Omit<Unreached, 'part' | 'copy'>[];
}

function work(part: PartShape, process: Process, compensated: boolean): WorkedPart {
  const contours = contourOperations(part, process, compensated);
  const holes = holesUp(part).flatMap((hole) => holeOperations(hole, process, compensated));
  return { operations: [...holes, ...contours.operations], unreached: contours.unreached };
}

function placeOperation(operation: PartOperation, placed: PlacedPart): CutOperation {
  const { bore, ...rest } = operation;
  return {
    ...rest,
    part: placed.part,
    copy: placed.copy,
    vertices: placeVertices(operation.vertices, placed),
    ...(bore === undefined ? {} : { bore: placeVertices(bore, placed) }),
  };
}

/**
 * The nested sheets as what is cut on them: every placed part's operations on the sheet, compensated when asked,
 * with seats relieved and what the tool leaves behind listed, in cutting order.
 *
 * @param sheets as nested; placements turn a part about its own origin, then move it
 * @param parts all that the sheets place, true size
 * @throws RangeError when a sheet places a part that is not given, or a part cannot be cut by the process (ask
 * `cutProblems` first; its messages are in the error)
 */
export function machine(
  sheets: readonly MachinedSheet[],
  parts: readonly PartShape[],
  process: Process,
  options: MachineOptions,
): CutSheet[] {
  const compensated = options.compensated && process.kind !== 'hand';
  const used = new Set(sheets.flatMap((sheet) => sheet.placed.map((placed) => placed.part)));
  const needed = parts.filter((part) => used.has(part.id));
  const problems = cutProblems(needed, process);
  if (problems.length > 0) throw new RangeError(problems.map((problem) => problem.message).join('\n'));
  const worked = new Map(needed.map((part) => [part.id, work(part, process, compensated)]));
  const counts = new Map<string, number>();

  return sheets.map((sheet): CutSheet => {
    const count = (counts.get(sheet.stock) ?? 0) + 1;
    counts.set(sheet.stock, count);
    const operations: CutOperation[] = [];
    const unreached: Unreached[] = [];
    for (const placed of sheet.placed) {
      const part = worked.get(placed.part);
      if (part === undefined) throw new RangeError(`the layout places '${placed.part}', which is not one of the parts`);
      for (const operation of part.operations) operations.push(placeOperation(operation, placed));
      for (const left of part.unreached) {
        unreached.push({ part: placed.part, copy: placed.copy, ...placePoint(left, placed), area: left.area });
      }
    }
    const { stock, width, height, margin } = sheet;
    return {
      id: `${stock}-${count}`,
      stock,
      width,
      height,
      margin,
      process,
      compensated,
      operations: inCuttingOrder(operations, process.kind === 'laser' ? process.order : undefined),
      unreached,
    };
  });
}
