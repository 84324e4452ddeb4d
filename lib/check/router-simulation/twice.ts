/** Contours that are run once more at the same depth: the piece within may have come loose, and the tool rubs. */
import type { Findings } from './findings.js';
import { isUpright, levelLength, placeOn } from './level.js';
import { placeName } from './place-name.js';
import type { Motion, ProofPoint3 } from './types.js';

/** Ends that a file rounds to the same, mm. */
const sameEnd = 0.002;
/** A closed path is longer than this, mm: what is shorter is the rounding of a start. */
const shortestRing = 0.1;

const endName = ({ x, y, z }: ProofPoint3): string => `${placeName(x, y, 1e3)},${Math.round(z * 1e3)}`;

/** The same for one stretch at one depth, or on one slope, whichever direction it is run in. */
function keyOf(motion: Motion): string {
  const { from, to, tool } = motion;
  const [first, second] = [endName(from), endName(to)];
  // the two halves of a circle have the same ends
  const middle = placeOn(motion, 0.5);
  const ends = first < second ? `${first} ${second}` : `${second} ${first}`;
  return `${tool.number} ${ends} ${placeName(middle.x, middle.y, 100)}`;
}

/**
 * Reports closed paths, and marks, that were all run before. A ring overlaps its own start a little, which is less than
 * all of it.
 */
export function checkTwice(motions: readonly Motion[], findings: Findings): void {
  const seen = new Set<string>();
  let again: Motion[] = [];
  for (const motion of motions) {
    // up to a tab and down behind it belongs to the ring round which it stands
    if (!motion.rapid && isUpright(motion)) continue;
    const cuts = !motion.rapid && Math.min(motion.from.z, motion.to.z) < 0;
    const key = cuts ? keyOf(motion) : '';
    if (!cuts || !seen.has(key)) {
      again = [];
      if (cuts) seen.add(key);
      continue;
    }
    again.push(motion);
    const { to, file, line, tool } = motion;
    const start = again.findIndex(({ from }) => Math.hypot(from.x - to.x, from.y - to.y) < sameEnd);
    const length = again.slice(start).reduce((sum, one) => sum + levelLength(one), 0);
    const closed = start >= 0 && length > shortestRing;
    if (!closed && tool.kind !== 'v') continue;
    findings.add('cut-twice', file, {}, { line, place: to });
    again = [];
  }
}
