/** Holes, countersinks and marks: each in its place, to its depth, and none besides. */
import { mm } from '../faults.js';
import type { JobPart } from '../job-reader.js';
import type { Nominal } from '../nominal.js';
import type { Place } from '../types.js';
import { boredError, edgeTolerance, passesOf } from './edges.js';
import type { Findings } from './findings.js';
import type { Motion, SimulatedSheet, SimulationLimits } from './types.js';

/** A bit this much off a hole's diameter still makes it, mm: a thousandth of an inch, and rounding. */
const sameBit = 0.031;
const rounding = 0.002;

/** The deepest point of each tool at each place where it went straight down or stood lowest. */
interface Sink extends Place {
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
      sinks.set(key, { x: to.x, y: to.y, z: to.z, diameter: tool.diameter, kind: tool.kind, motion, used: false });
    else known.z = Math.min(known.z, to.z);
  }
  return [...sinks.values()];
}

const close = (sink: Sink, hole: Place): boolean => Math.hypot(sink.x - hole.x, sink.y - hole.y) <= edgeTolerance;

function depthFault(deepest: number, depth: number | 'through', thickness: number): string | null {
  if (depth === 'through')
    return deepest > thickness - rounding ? null : `is ${mm(deepest)} deep and not through ${mm(thickness)}`;
  return Math.abs(deepest - depth) <= edgeTolerance ? null : `is ${mm(deepest)} deep, not ${mm(depth)}`;
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
    const drills: JobPart['drills'] = sheet.parts.get(nominal.part)?.drills ?? [];
    nominal.holes.forEach((hole, i) => {
      const depth = drills[i]?.depth ?? 'through';
      const what = `the ${mm(hole.diameter)} hole of ${nominal.part} ${nominal.copy}`;
      const drilled = sinks.find(
        (sink) => sink.kind !== 'v' && Math.abs(sink.diameter - hole.diameter) <= sameBit && close(sink, hole),
      );
      if (drilled !== undefined) {
        drilled.used = true;
        const wrong = depthFault(-drilled.z, depth, limits.thickness);
        if (wrong !== null) findings.add('hole', file, `${what} ${wrong}`, { place: hole });
      } else {
        const floor = depth === 'through' ? -limits.thickness : -depth;
        const error = boredError(hole, passes, floor);
        worst = Math.max(worst, error ?? 0);
        if (error === null) findings.add('hole', file, `${what} is missing or too shallow`, { place: hole });
        else if (error > edgeTolerance)
          findings.add('hole', file, `${what} is ${mm(error)} off in place or size`, { place: hole });
      }
      if (hole.countersink === undefined) return;
      const sunk = sinks.find((sink) => sink.kind === 'v' && close(sink, hole));
      if (sunk !== undefined) sunk.used = true;
      // a bit of 90 degrees is as deep as half the width that it opens
      if (sunk === undefined || Math.abs(-2 * sunk.z - hole.countersink) > 2 * edgeTolerance)
        findings.add('hole', file, `the countersink of ${what} is missing or of the wrong size`, { place: hole });
    });
  }
  for (const sink of sinks) {
    if (sink.used || sink.kind === 'mill') continue;
    if (sink.kind === 'v' && -sink.z <= limits.markDepth + rounding) continue;
    findings.add('hole', sink.motion.file, 'the tool goes down where no part has a hole', {
      line: sink.motion.line,
      place: { x: sink.x, y: sink.y },
    });
  }
  return worst;
}

/** Tells marks that are deeper than set. */
export function checkMarks(motions: readonly Motion[], limits: SimulationLimits, findings: Findings): void {
  for (const { rapid, tool, from, to, file, line } of motions) {
    if (rapid || tool.kind !== 'v' || Math.hypot(to.x - from.x, to.y - from.y) < 1e-6) continue;
    const deep = -Math.min(from.z, to.z);
    if (deep > limits.markDepth + rounding)
      findings.add('mark', file, `a mark ${mm(deep)} deep, not ${mm(limits.markDepth)}`, { line, place: to });
  }
}
