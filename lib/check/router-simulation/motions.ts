/** What each motion may do: rapids in the clear, depths, bites, the sheet's edge and the clamps. */
import { EdgeSet } from '../edge-set.js';
import { edgeBetween } from '../edge.js';
import { mm } from '../faults.js';
import type { Nominal } from '../nominal.js';
import { boxOf, inside, gap } from '../ring.js';
import type { ProofPoint } from '../types.js';
import type { HeightField } from './field.js';
import type { Findings } from './findings.js';
import { checkLow } from './hops.js';
import { edgesOfMotion, isUpright, radiusAt } from './level.js';
import type { Motion, SimulatedSheet, SimulationLimits } from './types.js';

/** Rounding of a file's numbers, mm. */
const rounding = 0.001;
/** Slack of the bite: a ramp goes on falling within one step of the field, mm. */
const biteSlack = 0.1;
/**
 * A finishing pass takes its allowance over the whole depth. Where it slants in from the roughed wall, and inside an
 * arc, it may cut wider across its travel, by this share of the bit's radius.
 */
export const leadShare = 0.2;

interface Clamp {
  readonly edges: EdgeSet;
  readonly box: ReturnType<typeof boxOf>;
}

function clampsOf(limits: SimulationLimits): Clamp[] {
  return limits.keepOuts.map((ring) => {
    const edges = ring.map((a, i) => edgeBetween({ ...a, bulge: 0 }, ring[(i + 1) % ring.length]!));
    return { edges: new EdgeSet(edges), box: boxOf(edges) };
  });
}

/** A place to the micrometre as one number; a text would take longer to make than all else that a motion is asked. */
const key = ({ x, y }: ProofPoint): number => Math.round(x * 1000) * 2 ** 26 + Math.round(y * 1000);

/** How deep each place was drilled or plunged, and by how wide a tool: a rapid may go back down there. */
class Plunges {
  readonly #low = new Map<number, { z: number; diameter: number }>();

  take({ to, tool }: Motion): void {
    const known = this.#low.get(key(to));
    if (known === undefined || to.z < known.z) this.#low.set(key(to), { z: to.z, diameter: tool.diameter });
  }

  /** z down to which a place is open for a tool of this diameter; 0 where it is not. */
  at(place: Motion['to'], diameter: number): number {
    const known = this.#low.get(key(place));
    return known !== undefined && known.diameter >= diameter - rounding ? Math.min(0, known.z) : 0;
  }
}

function checkRapid(
  motion: Motion,
  plunges: Plunges,
  nominals: readonly Nominal[],
  limits: SimulationLimits,
  findings: Findings,
): void {
  const { from, to, tool, file, line } = motion;
  const where = { line, place: to };
  if (isUpright(motion)) {
    if (to.z < from.z && to.z < 0 && to.z < plunges.at(to, tool.diameter) - rounding)
      findings.add('rapid-down', file, { z: mm(to.z) }, where);
    return;
  }
  const low = Math.min(from.z, to.z);
  if (low < 0) findings.add('rapid-through', file, { z: mm(low) }, where);
  else if (low < limits.travelHeight - rounding) checkLow(motion, low, nominals, limits, findings);
}

function checkDepth({ to, tool, file, line }: Motion, limits: SimulationLimits, findings: Findings): void {
  const where = { line, place: to };
  const below = -to.z - limits.thickness;
  if (below > limits.overcut + rounding)
    findings.add('spoil-board', file, { depth: mm(below), overcut: mm(limits.overcut) }, where);
  if (-to.z > tool.cuttingDepth + rounding)
    findings.add('cutting-depth', file, { tool: tool.number, depth: mm(-to.z), max: mm(tool.cuttingDepth) }, where);
}

/** Reports motions off the sheet or into a clamp; returns how far the tool runs off. */
function checkReach(motion: Motion, sheet: SimulatedSheet, clamps: readonly Clamp[], findings: Findings): number {
  const { from, to, file, line } = motion;
  const radius = radiusAt(motion, Math.min(from.z, to.z));
  const edges = edgesOfMotion(motion);
  const box = boxOf(edges);
  const off = Math.max(
    radius - box.minX,
    radius - box.minY,
    box.maxX + radius - sheet.width,
    box.maxY + radius - sheet.height,
  );
  if (off > rounding) findings.add('off-the-sheet', file, { off: mm(off) }, { line, place: to });
  for (const clamp of clamps) {
    if (gap(box, clamp.box) >= radius) continue;
    const close = edges.some((edge) => clamp.edges.nearestWithin(edge, radius - rounding) !== null);
    if (close || inside(clamp.edges.edges, to)) findings.add('into-clamp', file, {}, { line, place: to });
  }
  return off;
}

/**
 * Goes through the motions in order, taking material off the field, and reports everything that a motion must not do.
 * @returns how deep the tools were in the spoil board
 */
export function checkMotions(
  motions: readonly Motion[],
  sheet: SimulatedSheet,
  nominals: readonly Nominal[],
  limits: SimulationLimits,
  field: HeightField,
  findings: Findings,
): number {
  const plunges = new Plunges();
  const clamps = clampsOf(limits);
  let deepest = 0;
  for (const motion of motions) {
    if (motion.rapid) {
      checkRapid(motion, plunges, nominals, limits, findings);
      continue;
    }
    const { from, to, tool, file, line } = motion;
    if (from.z >= 0 && to.z >= 0) continue;
    deepest = Math.max(deepest, -to.z - limits.thickness);
    checkDepth(motion, limits, findings);
    // what runs as far off as no machine reaches is not followed step by step
    if (checkReach(motion, sheet, clamps, findings) > sheet.width + sheet.height) continue;
    const upright = isUpright(motion);
    const radius = tool.diameter / 2;
    // straight down, the middle of the tool decides; a V-bit has no width to speak of and is judged by its depth
    const before = Math.min(0, plunges.at(to, tool.diameter), field.at(to));
    const swept = tool.kind === 'v' ? null : field.remove(motion, radius, limits.finishing + leadShare * radius);
    const bite = upright ? Math.max(0, before - to.z) : (swept?.depth ?? 0);
    if (tool.kind !== 'v' && bite > tool.passDepth + biteSlack)
      findings.add(
        'pass-depth',
        file,
        { depth: mm(bite), tool: tool.number, max: mm(tool.passDepth) },
        { line, place: swept?.place ?? to },
      );
    plunges.take(motion);
  }
  return deepest;
}
