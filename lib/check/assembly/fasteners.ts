/** The fasteners that the record lists, against the holes of the parts and the wood that they go through. */
import { mm } from '../faults.js';
import { type Built, type BuiltFastener, outlineOf, uprightLines } from './built.js';
import type { Report } from './report.js';

/** Wood that stays over a screw's point, mm: common practice, no source. */
const cover = 2;

/** What a joint takes: how many, and how much wood there is from the entry on. */
interface Joint {
  readonly count: number;
  readonly wood: number;
}

function jointsOf({ batten, cleat, rib, hub, splice, boards, design }: Built): ReadonlyMap<string, Joint> {
  const board = Math.min(...boards.map(({ thickness }) => thickness));
  const joints = new Map<string, Joint>();
  if (cleat !== null) {
    const width = Math.max(...outlineOf(cleat).map(({ y }) => y));
    const guides = uprightLines(cleat).filter(({ low, high }) => high - low > 0.9 * width).length;
    joints.set('cleat-to-board', { count: cleat.quantity * cleat.drills.length, wood: cleat.thickness + board });
    joints.set('cleat-to-rib', { count: cleat.quantity * guides, wood: width + rib.thickness });
  }
  if (splice !== null)
    joints.set('splice-to-board', {
      count: splice.quantity * splice.drills.length,
      wood: splice.thickness + board,
    });
  if (batten !== null) {
    // a pin goes through the middle of a short mark across the batten
    const places = batten.drills.length > 0 ? batten.drills : uprightLines(batten);
    joints.set('batten-to-rib', { count: batten.quantity * places.length, wood: Infinity });
  }
  const pegs = hub.drills.filter(({ x, y }) => Math.hypot(x, y) > 0.05).length;
  joints.set('hub-dowel', { count: pegs, wood: Infinity });
  joints.set('hub-bolt', { count: design.hub.boltDiameter > 0 ? 1 : 0, wood: Infinity });
  return joints;
}

const isScrew = ({ item }: BuiltFastener): boolean => item === 'wood-screw';

export function checkFasteners(built: Built, report: Report): void {
  const joints = jointsOf(built);
  for (const [joint, { count }] of joints) {
    const listed = built.fasteners
      .filter((one) => one.joint === joint || (joint === 'splice-to-board' && one.joint === 'splice-bolt'))
      .reduce((sum, one) => sum + one.count, 0);
    if (listed !== count) report('fastener-number', { joint, count: listed, wanted: count });
  }
  for (const one of built.fasteners) {
    const wood = joints.get(one.joint)?.wood ?? Infinity;
    if (isScrew(one) && one.length !== null && one.length > wood - cover + 1e-6)
      report('screw-long', { joint: one.joint, length: mm(one.length), wood: mm(wood) });
  }
}
