/** The shop drawings of a job, for the book and for print. */
import { facetAt } from '../dish/index.js';
import { bounds, type Bounds } from '../geometry/index.js';
import { partDrawings, sectionDrawing, type ShopDrawing } from '../output/shop/index.js';
import type { Prepared } from './types.js';

type Drawn = Pick<Prepared, 'design' | 'dish' | 'parts' | 'aids' | 'assembly' | 'cleatStart'>;

/** Chords of the mirror in the section. */
const CHORDS = 40;

function hubsOf({ assembly }: Drawn): Bounds[] {
  return assembly.placed.flatMap((one) => {
    if (one.form !== 'plate' || one.part.kind !== 'hub') return [];
    const { minX, maxX } = bounds(one.part.outline);
    const bottom = one.frame.origin[2];
    return [{ minX, maxX, minY: bottom, maxY: bottom + one.part.thickness }];
  });
}

function sectionOf(source: Drawn): ShopDrawing[] {
  const { design, dish, parts, cleatStart } = source;
  const first = parts.find(({ kind }) => kind === 'board');
  if (first === undefined) return [];
  const focus = dish.baseHeight + dish.focusHeight.atRim;
  const underside = focus + (design.vessel?.offset ?? 0);
  const section = {
    parts,
    innerRadius: dish.innerRadius,
    evenRibs: dish.layout.ribs.length % 2 === 0,
    board: { size: design.board.size, thickness: first.thickness },
    hubs: hubsOf(source),
    cleatStart,
    mirror: Array.from({ length: CHORDS + 1 }, (_, i) => {
      const { u, z } = facetAt(dish, dish.litFrom + ((dish.litTo - dish.litFrom) * i) / CHORDS);
      return { x: u, y: dish.baseHeight + z };
    }),
    focus,
    vessel: design.vessel
      ? { radius: design.vessel.diameter / 2, underside, top: underside + design.vessel.height }
      : null,
  };
  return [sectionDrawing(design, section)];
}

/** The dish in section, then every part and aid. */
export const shopDrawings = (source: Drawn): ShopDrawing[] => [
  ...sectionOf(source),
  ...partDrawings(source.design, [...source.parts, ...source.aids]),
];
