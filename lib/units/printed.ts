/** The line on full-size prints by which a builder checks the printer. */
import { formatLength } from './format.js';
import { inInches, type LengthUnit } from './length.js';

export interface CheckLine {
  readonly name: string;
  /** mm */
  readonly length: number;
  /** What a printer can make of it, mm: what is farther off was fitted to the page. Common practice, no source. */
  readonly min: number;
  readonly max: number;
}

const checkLines = {
  metric: { name: '100 mm', length: 100, min: 90, max: 110 },
  inch: { name: '4 in', length: 101.6, min: 91.44, max: 111.76 },
} as const;

/** The check line of prints for a builder who measures in that unit. */
export const checkLineOf = (unit: LengthUnit): CheckLine => (inInches(unit) ? checkLines.inch : checkLines.metric);

/** What a check line measures, as a builder reads it off a rule: in decimals, which fractions of an inch would round. */
export const lineText = (mm: number, unit: LengthUnit): string =>
  inInches(unit) ? formatLength(mm, 'in', 4) : formatLength(mm, 'mm', 3);
