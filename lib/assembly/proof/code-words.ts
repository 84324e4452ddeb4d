/** What a builder has to know of distances below those of the timber code: where, and why they do here. */
import type { CodeDistance } from './code-distances.js';

const code = 'EN 1995-1-1';

/** Why less than the code asks for is enough: common practice, no source. */
function reasonOf({ joint, passage, boring, what }: CodeDistance): string {
  if (joint === 'batten-to-rib') return 'they only hold a thin strip';
  if (joint === 'panel-over-joint') return 'each holds a light panel only, in a hole that is drilled first';
  if (boring === 'driven') return 'they only hold until the glue has set';
  if (what === 'spacing') return 'every screw has its hole, and the faces are glued';
  return passage === 'clearance'
    ? 'the shank is loose in its hole, and the faces are glued'
    : 'the thread runs in a pilot hole, and the faces are glued';
}

const parts: Readonly<Record<string, string>> = { splice: 'splice plate', board: 'board', rib: 'rib', cleat: 'cleat' };

/** Below this, in shanks, no reason makes it enough: common practice, no source. */
const splits = 1.5;

/** One sentence for a distance below the code's. @param name of the fasteners, in the plural */
export function codeWords(name: string, one: CodeDistance): string {
  const where = one.what === 'edge' ? `from an edge or face of the ${parts[one.part] ?? one.part}` : 'from each other';
  const verdict =
    one.shanks < splits && one.boring === 'predrilled'
      ? 'too little to drive one without a hole: drill each hole first, and tighten only by hand'
      : `enough, as ${reasonOf(one)}`;
  return `${name}: ${one.shanks.toFixed(1)} shank diameters ${where}, ${one.asked} by ${code}; ${verdict}`;
}
