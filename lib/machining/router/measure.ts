/** Lengths and times of a tool path. */
import { distance, element, type Point } from '../../geometry/index.js';
import type { Move, Point3, ToolRun, ToolWear } from './types.js';

/** Length of a feed move from a place (mm). */
function moveLength(from: Point3, move: Move): number {
  const { to } = move;
  if (move.kind !== 'arc') return Math.hypot(to.x - from.x, to.y - from.y, to.z - from.z);
  const { centre, clockwise } = move;
  const radius = distance(centre, to);
  const a = Math.atan2(from.y - centre.y, from.x - centre.x);
  const b = Math.atan2(to.y - centre.y, to.x - centre.x);
  const turn = 2 * Math.PI;
  const sweep = clockwise ? (((a - b) % turn) + turn) % turn : (((b - a) % turn) + turn) % turn;
  return Math.hypot(radius * sweep, to.z - from.z);
}

export interface RouteMeasures {
  readonly cuttingSeconds: number;
  readonly travelLength: number;
  readonly toolWear: readonly ToolWear[];
}

/** Time of all moves (s), length of the level travel, and the length that each tool cuts. */
export function measure(runs: readonly ToolRun[], travelSpeed: number): RouteMeasures {
  let minutes = 0;
  let travelLength = 0;
  const toolWear: ToolWear[] = [];
  let level: Point = { x: 0, y: 0 };
  for (const { tool, cuts } of runs) {
    let length = 0;
    for (const { moves } of cuts) {
      let at: Point3 = { ...level, z: element(moves, 0).to.z };
      for (const move of moves) {
        if (move.kind === 'rapid') {
          const across = distance(at, move.to);
          travelLength += across;
          minutes += Math.hypot(across, move.to.z - at.z) / travelSpeed;
        } else {
          const long = moveLength(at, move);
          minutes += long / move.feed;
          if (move.to.z < 0) length += long;
        }
        at = move.to;
      }
      level = at;
    }
    toolWear.push({ tool: tool.number, length });
  }
  return { cuttingSeconds: minutes * 60, travelLength, toolWear };
}
