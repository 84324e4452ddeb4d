/** Ribs in grooves of the board: every groove holds the base of a rib, with the play that the design asks for. */
import { bounds } from '../../geometry/index.js';
import { nameOf } from '../copies.js';
import { toPart, toSpace } from '../frame.js';
import type { AssembledPlate } from '../types.js';
import type { AssemblyFault } from './fault.js';
import { type Stretch, stretches, toRing } from './stretch.js';

/** Play may be off by this much, mm. */
const tolerance = 0.01;

/** The grooves of a board about the middle of a base; in the face on which the ribs stand, or there is wood in them. */
function grooveAbout(board: AssembledPlate, rib: AssembledPlate, { from, to, middle }: Stretch) {
  const [x, y] = toPart(board.frame, toSpace(rib.frame, (from + to) / 2, middle, rib.part.thickness / 2));
  return board.part.pockets
    .map((pocket) => ({ pocket, box: bounds(pocket.ring) }))
    .map(({ pocket, box }) => ({
      pocket,
      off: Math.hypot((box.minX + box.maxX) / 2 - x, (box.minY + box.maxY) / 2 - y),
    }))
    .filter(({ off }) => off < rib.part.thickness)
    .sort((a, b) => a.off - b.off)[0]?.pocket;
}

/** One base in its groove: play across it along its whole length, and under it. */
function baseInGroove(fit: number, board: AssembledPlate, rib: AssembledPlate, base: Stretch): AssemblyFault[] | null {
  const pocket = grooveAbout(board, rib, base);
  if (pocket === undefined) return null;
  const between = [nameOf(rib), nameOf(board)] as const;
  const { from, to } = base;
  const across = [0.01, 0.5, 0.99].map((share) => {
    const x = from + share * (to - from);
    return [0, rib.part.thickness].reduce((sum, h) => sum + toRing(board, pocket.ring, rib, base, x, h), 0);
  });
  const worst = across.reduce((a, b) => (Math.abs(b - fit) > Math.abs(a - fit) ? b : a));
  const under = pocket.depth + bounds(rib.part.outline).minY;
  return [worst, under].flatMap((play) =>
    Math.abs(play - fit) > tolerance ? [{ kind: 'play', between, play, wanted: fit } as const] : [],
  );
}

/** Bases of all ribs in the grooves of the pieces of the board. */
export function housingFaults(
  fit: number,
  ribs: readonly AssembledPlate[],
  boards: readonly AssembledPlate[],
): AssemblyFault[] {
  const [rib] = ribs;
  const lowest = rib === undefined ? 0 : bounds(rib.part.outline).minY;
  const bases = rib === undefined || lowest >= -tolerance ? [] : stretches(rib.part, lowest, 0);
  let filled = 0;
  const faults = ribs.flatMap((one) =>
    bases.flatMap((base) =>
      boards.flatMap((board) => {
        const found = baseInGroove(fit, board, one, base);
        if (found !== null) filled += 1;
        return found ?? [];
      }),
    ),
  );
  const grooves = boards.reduce((sum, { part }) => sum + part.pockets.length, 0);
  if (filled !== grooves || filled !== ribs.length)
    faults.push({ kind: 'parts', what: 'grooves of the board with a rib in them', found: filled, wanted: ribs.length });
  return faults;
}
