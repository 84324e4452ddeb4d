/** Paper, and what of it can be drawn on. Lengths in mm. */
import type { LengthUnit } from '../../units/index.js';

/** ISO 216 (A4, A3) and ANSI/ASME Y14.1 (size A, the letter sheet), upright. */
const sheets = {
  a4: { name: 'A4', width: 210, height: 297 },
  letter: { name: 'Letter', width: 215.9, height: 279.4 },
  a3: { name: 'A3', width: 297, height: 420 },
} as const;

/** A page of a roll is no longer than this: PDF readers need not take more than 200 in (ISO 32000-1, annex C). */
const LONGEST = 5000;

export type Paper =
  { readonly kind: keyof typeof sheets } | { readonly kind: 'roll'; /** mm */ readonly width: number };

export interface PrintOptions {
  readonly paper: Paper;
  /** Edge that the printer cannot reach, mm. */
  readonly margin: number;
  /** How far neighbouring pages show the same, mm. */
  readonly overlap: number;
  /** What the builder measures in: sizes and the check line are in it. */
  readonly unit: LengthUnit;
  /** What the printer makes of the check line, as measured on an earlier print, mm; its length when it is true. */
  readonly measured: number;
}

/** A page lying as it is read. */
export interface Page {
  readonly width: number;
  readonly height: number;
}

export function paperName(paper: Paper): string {
  return paper.kind === 'roll' ? `roll ${paper.width} mm wide` : sheets[paper.kind].name;
}

/**
 * The pages to choose from: upright and lying; of a roll, as long as the drawing needs.
 * @param needed size of a page on which the whole drawing would fit
 */
export function pagesOf(paper: Paper, needed: { readonly width: number; readonly height: number }): Page[] {
  if (paper.kind !== 'roll') {
    const { width, height } = sheets[paper.kind];
    return [
      { width, height },
      { width: height, height: width },
    ];
  }
  return [
    { width: paper.width, height: Math.min(LONGEST, needed.height) },
    { width: Math.min(LONGEST, needed.width), height: paper.width },
  ];
}
