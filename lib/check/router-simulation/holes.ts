/** Holes and countersinks: each in its place, to its depth, and no others. */
import { mm } from '../faults.js';
import type { PartRead } from '../job-reader.js';
import { nameOf, type Nominal } from '../nominal.js';
import type { ProofPoint } from '../types.js';
import { boredError, edgeTolerance, passesOf } from './edges.js';
import type { Findings } from './findings.js';
import type { Motion, SimulatedSheet, SimulationLimits } from './types.js';

/** A bit this much off a hole's diameter still makes it, mm: a thousandth of an inch, and rounding. */
const sameBit = 0.031;
const rounding = 0.002;

/** The deepest point of each tool at each place where it went straight down or stood lowest. */
interface Sink extends ProofPoint {
  readonly diameter: number;
  readonly kind: 'mill' | 'drill' | 'v';
  z: number;
  readonly motion: Motion;
  used: boolean;
}

function sinksOf(motions: readonly Motion[]): Sink[] {
  const sinks = new Map<string, Sink>();
  for (const motion of motions) {
    const { rapid, tool, from, to, turn } = motion;
    const upright = turn === null && Math.hypot(to.x - from.x, to.y - from.y) < 1e-6;
    if (rapid || !upright || to.z >= 0) continue;
    const key = `${tool.number} ${to.x.toFixed(3)} ${to.y.toFixed(3)}`;
    const known = sinks.get(key);
    if (known === undefined)
      sinks.set(key, {
        x: to.x,
        y: to.y,
        z: to.z,
        diameter: tool.sold ?? tool.diameter,
        kind: tool.kind,
        motion,
        used: false,
      });
    else known.z = Math.min(known.z, to.z);
  }
  return [...sinks.values()];
}

const close = (sink: Sink, hole: ProofPoint): boolean => Math.hypot(sink.x - hole.x, sink.y - hole.y) <= edgeTolerance;

/** Where a hole is and what it is called. */
interface Named {
  readonly file: string;
  readonly hole: string;
  readonly part: string;
  readonly place: ProofPoint;
}

function checkDepth(
  deepest: number,
  wanted: number | 'through',
  thickness: number,
  { file, hole, part, place }: Named,
  findings: Findings,
): void {
  const named = { hole, part, depth: mm(deepest) };
  if (wanted === 'through') {
    if (!(deepest > thickness - rounding))
      findings.add('hole-not-through', file, { ...named, thickness: mm(thickness) }, { place });
  } else if (!(Math.abs(deepest - wanted) <= edgeTolerance))
    findings.add('hole-depth', file, { ...named, wanted: mm(wanted) }, { place });
}

/** Proves all holes of the sheet; returns the greatest error of the edge of a bored one. */
export function checkHoles(
  nominals: readonly Nominal[],
  sheet: SimulatedSheet,
  motions: readonly Motion[],
  passes: ReturnType<typeof passesOf>,
  limits: SimulationLimits,
  file: string,
  findings: Findings,
): number {
  const sinks = sinksOf(motions);
  let worst = 0;
  for (const nominal of nominals) {
    const drills: PartRead['drills'] = sheet.parts.get(nominal.part)?.drills ?? [];
    nominal.holes.forEach((hole, i) => {
      const depth = drills[i]?.depth ?? 'through';
      const named = { hole: mm(hole.diameter), part: nameOf(nominal) };
      const drilled = sinks.find(
        (sink) => sink.kind !== 'v' && Math.abs(sink.diameter - hole.diameter) <= sameBit && close(sink, hole),
      );
      if (drilled !== undefined) {
        drilled.used = true;
        checkDepth(-drilled.z, depth, limits.thickness, { ...named, file, place: hole }, findings);
      } else {
        const floor = depth === 'through' ? -limits.thickness : -depth;
        const error = boredError({ ...hole, diameter: hole.diameter - (limits.bore ?? 0) }, passes, floor);
        worst = Math.max(worst, error ?? 0);
        if (error === null) findings.add('hole-missing', file, named, { place: hole });
        else if (error > edgeTolerance) findings.add('bore-off', file, { ...named, off: mm(error) }, { place: hole });
      }
      if (hole.countersink === undefined) return;
      const sunk = sinks.find((sink) => sink.kind === 'v' && close(sink, hole));
      if (sunk !== undefined) sunk.used = true;
      // a bit of 90 degrees is as deep as half the width that it opens
      if (sunk === undefined || Math.abs(-2 * sunk.z - hole.countersink) > 2 * edgeTolerance)
        findings.add('countersink-wrong', file, named, { place: hole });
    });
  }
  for (const sink of sinks) {
    if (sink.used || sink.kind === 'mill') continue;
    if (sink.kind === 'v' && -sink.z <= limits.markDepth + rounding) continue;
    findings.add('hole-stray', sink.motion.file, {}, { line: sink.motion.line, place: { x: sink.x, y: sink.y } });
  }
  return worst;
}
