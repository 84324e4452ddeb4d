/** The paper that a book is printed on: one page of its own for each leaf, so that its numbers are known beforehand. */
import { inInches, type LengthUnit } from '../../units/index.js';

export interface Paper {
  readonly name: 'A4' | 'letter';
  /** What is printed on, between the margins, mm. */
  readonly width: number;
  readonly height: number;
}

/** Margins above, beside and below, mm: below stands the number of the page. */
export const margins = { top: 8, side: 11, bottom: 11 } as const;

const sizes = { A4: [210, 297], letter: [215.9, 279.4] } as const;

/** Who measures in inches prints on Letter. */
export function paperFor(unit: LengthUnit): Paper {
  const name = inInches(unit) ? 'letter' : 'A4';
  const [width, height] = sizes[name];
  return { name, width: width - 2 * margins.side, height: height - margins.top - margins.bottom };
}
