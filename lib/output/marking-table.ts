import { type LengthUnit, formatFraction } from '../units/index.js';
import { type Cell, writeCsv } from './csv.js';
import { decimal } from './decimal.js';

/** A marking-out table, as the parts give it. All lengths in mm. */
export interface MarkingToWrite {
  readonly rule: { readonly unit: 'mm'; readonly division: number } | { readonly unit: 'in'; readonly under: number };
  readonly step: number;
  readonly marks: readonly { readonly x: number; readonly height: number; readonly marked: number }[];
  readonly sag: number;
  readonly rounding: number;
  readonly sagLimit: number;
  readonly advisedStep: number;
  readonly advisedSag: number;
}

export interface MarkingTable {
  readonly heading: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** What the step costs and which would do, in full sentences. */
  readonly notes: readonly string[];
}

/** How a length reads on the rule. */
function readingOf(rule: MarkingToWrite['rule']): (mm: number) => string {
  if (rule.unit === 'in') return (mm) => formatFraction(mm, rule.under);
  const digits = decimal(rule.division, 3).split('.')[1]?.length ?? 0;
  return (mm) => mm.toFixed(digits);
}

/** A small length for a sentence: to 1 µm, or a ten-thousandth of an inch. */
function fine(mm: number, unit: LengthUnit): string {
  return unit === 'in' ? `${decimal(mm / 25.4, 4)} in` : `${decimal(mm, 3)} mm`;
}

/** A rounding error, with its sign; a nought has none. */
function signed(mm: number, unit: LengthUnit): string {
  const text = unit === 'in' ? (mm / 25.4).toFixed(4) : mm.toFixed(3);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/** The table as it is read at the bench; the printed book shows the same. */
export function markingTable(marking: MarkingToWrite): MarkingTable {
  const { rule, marks, step, sag, rounding, sagLimit, advisedStep, advisedSag } = marking;
  const { unit } = rule;
  const show = readingOf(rule);
  const named = (mm: number) => (unit === 'in' ? show(mm) : `${show(mm)} mm`);
  return {
    heading: [`x from inner end (${unit})`, `height above base (${unit})`, `rounding (${unit})`],
    rows: marks.map(({ x, height, marked }) => [show(x), show(marked), signed(marked - height, unit)]),
    notes: [
      `At a step of ${named(step)}, straight lines from mark to mark deviate from the curve by at most ${fine(sag, unit)}.`,
      advisedSag <= sagLimit
        ? `A step of ${named(advisedStep)} keeps that within ${fine(sagLimit, unit)}.`
        : `Even a step of ${named(advisedStep)} leaves ${fine(advisedSag, unit)}; join the marks with a bent batten.`,
      `Reading the rule to its nearest division moves a mark by at most ${fine(rounding, unit)}.`,
    ],
  };
}

/** `marking-out.csv`: the marks in order, with the notes in the first row. */
export function writeMarkingOut(marking: MarkingToWrite): string {
  const { heading, rows, notes } = markingTable(marking);
  // plain numbers stay numbers, so that a rounding error of -0.012 is not taken for text; inch fractions are text
  const cell = (text: string): Cell =>
    /^-?\d+(?:\.\d+)?$/.test(text) ? { value: Number(text), digits: text.split('.')[1]?.length ?? 0 } : text;
  return writeCsv([[...heading, 'notes'], ...rows.map((row, i) => [...row.map(cell), i === 0 ? notes.join(' ') : ''])]);
}
