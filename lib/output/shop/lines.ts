/**
 * Lines by ISO 128-2: wide 0.5 mm and narrow 0.25 mm (line group 0.5), 01.2 for visible edges, 02.1 dashed for hidden
 * ones, 04.1 long-dashed dotted for centre lines, 04.2 wide long-dashed dotted for edges with a demand of their own,
 * 02.2 wide dashed, 05.1 long-dashed double-dotted for neighbours, 01.1 for all else. Lengths in line widths: long dash 24,
 * dash 12, gap 3, dot 0.5.
 */
import type { LineKind } from './types.js';

export interface LineLook {
  /** mm */
  readonly width: number;
  /** Dash, gap, dash, gap, mm; none for a full line. */
  readonly dashes: readonly number[];
}

const WIDE = 0.5;
const NARROW = 0.25;
const inWidths = (width: number, widths: readonly number[]): number[] => widths.map((one) => one * width);

export const lineLooks: Readonly<Record<LineKind, LineLook>> = {
  outline: { width: WIDE, dashes: [] },
  hidden: { width: NARROW, dashes: inWidths(NARROW, [12, 3]) },
  centre: { width: NARROW, dashes: inWidths(NARROW, [24, 3, 0.5, 3]) },
  thin: { width: NARROW, dashes: [] },
  mark: { width: NARROW, dashes: [] },
  optical: { width: WIDE, dashes: inWidths(WIDE, [24, 3, 0.5, 3]) },
  seat: { width: WIDE, dashes: inWidths(WIDE, [12, 3]) },
  phantom: { width: NARROW, dashes: inWidths(NARROW, [24, 3, 0.5, 3, 0.5, 3]) },
  hatch: { width: 0.18, dashes: [] },
  frame: { width: 0.7, dashes: [] },
  rule: { width: 0.18, dashes: [] },
};
