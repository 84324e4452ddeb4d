/** Travel below its height: a V-bit may hop low over one part, where nothing can stand in its way. */
import { edgeBetween } from '../edge.js';
import { mm } from '../faults.js';
import type { Nominal } from '../nominal.js';
import { inside } from '../ring.js';
import type { Findings } from './findings.js';
import type { Motion, SimulationLimits } from './types.js';

/** Rounding of a file's numbers, mm. */
const rounding = 0.002;

/** Whether the way of a tool stays over one part, its radius off outline and openings. */
function isOverOne(nominals: readonly Nominal[], { from, to, tool }: Motion): boolean {
  const segment = edgeBetween({ x: from.x, y: from.y, bulge: 0 }, to);
  return nominals.some(({ box, outlines, openings, edges }) => {
    if (from.x < box.minX || from.x > box.maxX || from.y < box.minY || from.y > box.maxY) return false;
    const over =
      outlines.some((line) => inside(line.edges, from)) && !openings.some((line) => inside(line.edges, from));
    return over && edges.nearestWithin(segment, tool.diameter / 2 - rounding) === null;
  });
}

/** Reports a level rapid move below travel height that is no hop, or lower than one. @param low its lowest z */
export function checkLow(
  motion: Motion,
  low: number,
  nominals: readonly Nominal[],
  { travelHeight, hopHeight }: SimulationLimits,
  findings: Findings,
): void {
  const { tool, file, line, to } = motion;
  const where = { line, place: to };
  if (tool.kind !== 'v' || hopHeight >= travelHeight)
    findings.add('rapid-low', file, { z: mm(low), height: mm(travelHeight) }, where);
  else if (low < hopHeight - rounding) findings.add('hop-low', file, { z: mm(low), height: mm(hopHeight) }, where);
  else if (!isOverOne(nominals, motion)) findings.add('hop-open', file, { z: mm(low) }, where);
}
