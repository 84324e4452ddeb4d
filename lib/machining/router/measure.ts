/** Lengths and times of a tool path. */
import { distance, element } from '../../geometry/index.js';
import { drivingOf, secondsOf } from '../motion-time.js';
import { lengthOf, type Move, type Point3 } from '../moves.js';
import type { RouterMachine } from './machine.js';
import type { ToolRun, ToolWear } from './types.js';

export interface RouteMeasures {
  readonly cuttingSeconds: number;
  readonly travelLength: number;
  readonly toolWear: readonly ToolWear[];
}

/** The runs of a tool path, each with its time. */
export function timed(runs: readonly Omit<ToolRun, 'seconds'>[], machine: RouterMachine): ToolRun[] {
  const driving = drivingOf(machine);
  let level = { x: 0, y: 0 };
  return runs.map((run) => {
    const moves: Move[] = run.cuts.flatMap((cut) => cut.moves);
    const start: Point3 = { ...level, z: element(moves, 0).to.z };
    level = element(moves, moves.length - 1).to;
    return { ...run, seconds: machine.spinUp + secondsOf(start, moves, driving) };
  });
}

/** Time of all runs (s), length of the level travel, and the length that each tool cuts. */
export function measure(runs: readonly ToolRun[]): RouteMeasures {
  let travelLength = 0;
  const toolWear: ToolWear[] = [];
  let level = { x: 0, y: 0 };
  for (const { tool, cuts } of runs) {
    const moves: Move[] = cuts.flatMap((cut) => cut.moves);
    let at: Point3 = { ...level, z: element(moves, 0).to.z };
    let length = 0;
    for (const move of moves) {
      if (move.kind === 'rapid') travelLength += distance(at, move.to);
      else if (move.to.z < 0) length += lengthOf(at, move);
      at = move.to;
    }
    level = at;
    toolWear.push({ tool: tool.number, length });
  }
  return { cuttingSeconds: runs.reduce((sum, { seconds }) => sum + seconds, 0), travelLength, toolWear };
}
