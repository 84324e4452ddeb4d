/** Splice plates under the joints of a board in segments: their bolts meet nuts, their screws meet wood. */
import { mm } from '../faults.js';
import type { ProofPoint } from '../types.js';
import {
  axisTolerance,
  type Built,
  nearestDrill,
  openingsOf,
  outlineOf,
  overlapTolerance,
  pocketsOf,
  turned,
} from './built.js';
import type { Report } from './report.js';

const fullTurn = 2 * Math.PI;
/** Holes of the bolts in a plate lie on the half that stays dry; those of screws on the other, or on both. */
const sameHole = 0.01;

/** Directions in which segments begin, anticlockwise; the corner on the axis comes before them. */
function jointsOf({ boards }: Built): number[] {
  return boards.flatMap((board) => {
    const ring = outlineOf(board);
    const axis = ring.findIndex(({ x, y }) => Math.hypot(x, y) < sameHole);
    const next = ring[(axis + 1) % ring.length];
    return axis < 0 || next === undefined ? [] : [Math.atan2(next.y, next.x)];
  });
}

/** Radius of the plates' inner ends: past the hole on the axis, and where three or more do not meet. */
function innerEnd({ design }: Built, joints: readonly number[]): number {
  const { spliceWidth, centreHole } = design.board;
  const sorted = [...joints].sort((a, b) => a - b);
  const gaps = sorted.map(
    (joint, i) => (i + 1 < sorted.length ? (sorted[i + 1] ?? 0) : (sorted[0] ?? 0) + fullTurn) - joint,
  );
  const apart = joints.length > 2 ? spliceWidth / 2 / Math.tan(Math.min(...gaps) / 2) + 5 : 0;
  return Math.max(40, centreHole, apart);
}

const inRing = (ring: readonly ProofPoint[], { x, y }: ProofPoint): boolean =>
  ring.reduce((within, p, i) => {
    const q = ring[(i + 1) % ring.length] ?? p;
    return p.y > y !== q.y > y && x < p.x + ((y - p.y) / (q.y - p.y)) * (q.x - p.x) ? !within : within;
  }, false);

/** Both edges of every joint meet, from the axis outward: that of the segment that begins there, and of the one before it. */
function checkSeams({ boards }: Built, report: Report): void {
  if (boards.length < 2) return;
  const sides = boards.map((board) => {
    const ring = outlineOf(board);
    const away = ring.map(({ x, y }) => Math.hypot(x, y));
    const axis = away.indexOf(Math.min(...away));
    const corner = (step: number): ProofPoint => ring[(axis + step + ring.length) % ring.length] ?? { x: 0, y: 0 };
    return { offAxis: away[axis] ?? Infinity, begins: corner(1), ends: corner(-1) };
  });
  sides.forEach(({ begins, offAxis }, i) => {
    const before = sides[(i + sides.length - 1) % sides.length];
    const outer = before === undefined ? Infinity : Math.hypot(begins.x - before.ends.x, begins.y - before.ends.y);
    const gap = Math.max(outer, offAxis);
    if (gap > overlapTolerance) report('board-seam', { gap: mm(gap) });
  });
}

export function checkSplices(built: Built, report: Report): void {
  checkSeams(built, report);
  const { splice, boards, design } = built;
  if (splice === null) return;
  const joints = jointsOf(built);
  const from = innerEnd(built, joints);
  const half = design.board.spliceWidth / 2;
  const drills = boards.flatMap((board) => board.drills);
  const cuts = [...boards.flatMap(openingsOf), ...boards.flatMap(pocketsOf).map(({ ring }) => ring)];
  // the screws of a plate are all of one size; what differs from them on the dry half are bolts
  const screw = splice.drills.find(({ y }) => y < half)?.diameter ?? 0;
  const placeOf = (hole: ProofPoint, joint: number): ProofPoint =>
    // from below: the plate's y runs to the right of its joint
    turned({ x: from + hole.x, y: half - hole.y }, joint);
  const screws = splice.drills.filter(({ diameter }) => Math.abs(diameter - screw) <= sameHole);
  // pilots are bored by the machine for all of them or, where it has no bit for them, at the bench
  const pilots = joints.some((joint) =>
    screws.some((hole) => nearestDrill(drills, placeOf(hole, joint)).off <= axisTolerance),
  );
  for (const joint of joints)
    for (const hole of splice.drills) {
      const place = placeOf(hole, joint);
      const { off, diameter } = nearestDrill(drills, place);
      if (Math.abs(hole.diameter - screw) > sameHole) {
        if (off > axisTolerance) report('splice-nut', { off: mm(off) });
      } else if (pilots && off > axisTolerance) report('splice-pilot', { off: mm(off) });
      else if (
        (!pilots && off < (diameter + hole.diameter) / 2) ||
        (pilots && diameter >= hole.diameter) ||
        cuts.some((ring) => inRing(ring, place))
      )
        report('splice-screw', {});
    }
}
