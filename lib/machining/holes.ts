/** Holes: drill points, bored circles, and those that the tool is too large for. */
import { circle, element, reversed } from '../geometry/index.js';
import { type Hole, holesUp, type PartShape } from '../part/index.js';
import { boreWidth, cutWidth, isSameBit } from './process.js';
import type { CutOperation, CutProblem, Process } from './types.js';

/** An operation on the part, before it is put on a sheet. */
export type PartOperation = Omit<CutOperation, 'part' | 'copy'>;

/** `point`: a bit of that diameter drills it. `bored`: the tool runs a circle. `too-small`: no available tool makes it. */
export type HoleKind = 'point' | 'bored' | 'too-small';

/** How the process makes a hole of this diameter (mm). */
function holeKind(diameter: number, process: Process): HoleKind {
  if (process.kind === 'hand') return 'point';
  const bits = process.kind === 'router' ? [process.toolDiameter, ...(process.drills ?? [])] : [];
  if (bits.some((bit) => isSameBit(bit, diameter))) return 'point';
  return diameter > Math.max(cutWidth(process), boreWidth(process)) ? 'bored' : 'too-small';
}

/**
 * The operations of one hole, in the part's axes. A bored hole of a compensated job holds the circle of the tool's
 * centre, half the cut's width inside the finished edge. The countersink is as deep as a 90 degree head needs; a laser
 * makes none, and would cut along any circle that stood for one.
 */
export function holeOperations(hole: Hole, process: Process, compensated: boolean): PartOperation[] {
  const { x, y, diameter, depth, countersink } = hole;
  const common = { closed: false, vertices: [{ x, y, bulge: 0 }] } as const;
  const bored = compensated && holeKind(diameter, process) === 'bored';
  const operations: PartOperation[] = [
    {
      ...common,
      operation: 'drill',
      diameter,
      depth,
      ...(bored ? { bore: reversed(circle({ x, y }, (diameter - boreWidth(process)) / 2)) } : {}),
    },
  ];
  if (countersink !== undefined && process.kind !== 'laser') {
    operations.push({
      ...common,
      operation: 'countersink',
      diameter: countersink,
      depth: (countersink - diameter) / 2,
    });
  }
  return operations;
}

const mm = (value: number): string => `${Number(value.toFixed(3))} mm`;

/** Holes of the part that no available tool can make: one problem for each diameter, at the first such hole. */
export function holeProblems(part: PartShape, process: Process): CutProblem[] {
  const tool = cutWidth(process);
  const small = holesUp(part).filter((hole) => holeKind(hole.diameter, process) === 'too-small');
  return [...new Set(small.map((hole) => hole.diameter))].map((size) => {
    const same = small.filter((hole) => hole.diameter === size);
    const { x, y } = element(same, 0);
    const which =
      same.length === 1
        ? `the ${mm(size)} hole at ${mm(x)}, ${mm(y)} is`
        : `${same.length} holes of ${mm(size)}, the first at ${mm(x)}, ${mm(y)}, are`;
    const [what, remedy] =
      process.kind === 'router'
        ? [
            `smaller than the ${mm(tool)} router bit`,
            `list a ${mm(size)} drill bit among process.drillBits, or use a router bit of at most ${mm(size)}`,
          ]
        : [`no wider than the laser's kerf of ${mm(tool)}`, 'make the hole larger, or drill it by hand'];
    const message = `${part.id}: ${which} ${what}`;
    return { code: 'hole-smaller-than-tool', part: part.id, place: { x, y }, size, tool, message, remedy };
  });
}
