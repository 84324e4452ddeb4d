/** Marks as the router engraves them: every one in its place, to its depth, and no others. */
import { type ProofEdge } from '../edge.js';
import { mm } from '../faults.js';
import { compareMarks } from '../marks.js';
import { nameOf, type Nominal } from '../nominal.js';
import type { Findings } from './findings.js';
import { edgesOfMotion, isUpright } from './level.js';
import type { Motion, SimulationLimits } from './types.js';

/** Rounding of a file's depths, mm. */
const rounding = 0.002;

/** Reports marks that are missing, out of place, deeper than set, or of nothing. */
export function checkMarks(
  nominals: readonly Nominal[],
  motions: readonly Motion[],
  limits: SimulationLimits,
  file: string,
  findings: Findings,
): void {
  const { markDepth, tools } = limits;
  // without a V-bit a router leaves marks out, which the job warns of
  if (!tools.some(({ kind }) => kind === 'v')) return;
  const engraved = motions.filter(
    (motion) =>
      !motion.rapid && motion.tool.kind === 'v' && !isUpright(motion) && Math.min(motion.from.z, motion.to.z) < 0,
  );
  for (const { from, to, file: name, line } of engraved) {
    const deep = -Math.min(from.z, to.z);
    if (deep > markDepth + rounding)
      findings.add('mark-deep', name, { depth: mm(deep), wanted: mm(markDepth) }, { line, place: to });
  }
  const edgesOf = (some: readonly Motion[]): ProofEdge[] => some.flatMap(edgesOfMotion);
  const whole = engraved.filter(({ from, to }) => Math.max(from.z, to.z) <= rounding - markDepth);
  const { labels, scribes, stray } = compareMarks(nominals, edgesOf(whole), edgesOf(engraved));
  for (const { nominal, text, place } of labels)
    findings.add('engraving-missing', file, { text, part: nameOf(nominal) }, { place });
  for (const { nominal, place } of scribes)
    findings.add('engraving-scribe', file, { part: nameOf(nominal) }, { place });
  for (const place of stray) findings.add('engraving-stray', file, {}, { place });
}
