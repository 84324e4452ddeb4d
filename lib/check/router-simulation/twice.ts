/** Contours that are run once more at the same depth: the piece within may have come loose, and the tool rubs. */
import type { Findings } from './findings.js';
import { isUpright, levelLength, placeOn } from './level.js';
import type { Motion } from './types.js';

/** Ends that a file rounds to the same, mm. */
const sameEnd = 0.002;
/** A closed path is longer than this, mm: what is shorter is the rounding of a start. */
const shortestRing = 0.1;

/** The same for one stretch at one depth, or on one slope, whichever direction it is run in. */
function keyOf(motion: Motion): string {
  const { from, to, tool } = motion;
  const ends = [from, to].map(({ x, y, z }) => `${x.toFixed(3)},${y.toFixed(3)},${z.toFixed(3)}`).sort();
  // the two halves of a circle have the same ends
  const middle = placeOn(motion, 0.5);
  return [tool.number, ...ends, middle.x.toFixed(2), middle.y.toFixed(2)].join(' ');
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
