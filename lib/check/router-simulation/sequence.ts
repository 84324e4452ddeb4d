/** The order of cuts: a part is drilled, marked and opened while its outline still holds it. */
import { gap, inside } from '../ring.js';
import { type Nominal, nameOf } from '../nominal.js';
import { EdgeSet } from '../edge-set.js';
import type { ProofPoint } from '../types.js';
import type { Findings } from './findings.js';
import { placeOn } from './level.js';
import type { Motion, SimulationLimits } from './types.js';

/** Rounding, and what a path may stand off besides its allowance, mm. */
const slack = 0.1;

/** One cut: what a tool does between two travels, by the first place where it is in the material. */
interface CutStart {
  readonly motion: Motion;
  readonly place: ProofPoint;
}

function cutsOf(motions: readonly Motion[]): CutStart[] {
  const cuts: CutStart[] = [];
  let within = false;
  for (const motion of motions) {
    if (motion.rapid) within = false;
    else if (!within && Math.min(motion.from.z, motion.to.z) < 0) {
      within = true;
      cuts.push({ motion, place: placeOn(motion, 0.5) });
    }
  }
  return cuts;
}

/** Reports parts within whose outline something is cut after the cut of that outline has begun. */
export function checkSequence(
  nominals: readonly Nominal[],
  motions: readonly Motion[],
  { finishing }: SimulationLimits,
  findings: Findings,
): void {
  const cuts = cutsOf(motions);
  for (const nominal of nominals) {
    const outline = new EdgeSet(nominal.outlines.flatMap(({ edges }) => edges));
    let begun = false;
    for (const { motion, place } of cuts) {
      const radius = motion.tool.diameter / 2;
      const at = { minX: place.x, minY: place.y, maxX: place.x, maxY: place.y };
      if (gap(at, nominal.box) > radius + finishing + slack) continue;
      const within = nominal.outlines.some(({ edges }) => inside(edges, place));
      if (within && begun) {
        findings.add('cut-order', motion.file, { part: nameOf(nominal) }, { line: motion.line, place });
        break;
      }
      if (within || motion.tool.kind !== 'mill') continue;
      const { distance } = outline.nearestTo(place.x, place.y);
      if (distance > radius - slack && distance < radius + finishing + slack) begun = true;
    }
  }
}
