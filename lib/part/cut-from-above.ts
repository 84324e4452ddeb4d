/** What a machine that works from above makes of a part. */
import type { Contour } from '../geometry/index.js';
import type { Hole, LineMark, PartShape, Pocket, TextMark } from './types.js';

/** The outline, then the openings: the rings that `EdgeRun` and `SeatCorner` count. */
export function ringsOf({ outline, openings }: Pick<PartShape, 'outline' | 'openings'>): readonly Contour[] {
  return [outline, ...openings];
}

type Marked = Pick<PartShape, 'marks' | 'up'>;

/** Lines on the face that is up. */
export function linesUp({ marks, up }: Marked): LineMark[] {
  return marks.flatMap((mark) => (mark.kind === 'line' && mark.face === up ? [mark] : []));
}

/** Lettering on the face that is up. */
export function textsUp({ marks, up }: Marked): TextMark[] {
  return marks.flatMap((mark) => (mark.kind === 'text' && mark.face === up ? [mark] : []));
}

/** Pockets that are cleared from the face that is up; those of the other face are work for the bench. */
export function pocketsUp({ pockets, up }: Pick<PartShape, 'pockets' | 'up'>): Pocket[] {
  return pockets.filter(({ from }) => from === up);
}

/**
 * Holes that are made from the face that is up. Of those from the other face, one that goes through loses its
 * countersink and a blind one is left out: both are work for the bench.
 */
export function holesUp({ holes, up }: Pick<PartShape, 'holes' | 'up'>): Hole[] {
  return holes.flatMap((hole): Hole[] => {
    if (hole.from === up) return [hole];
    const { x, y, diameter, depth } = hole;
    return depth === 'through' ? [{ x, y, diameter, depth, from: up }] : [];
  });
}
