/** What modules without units of their own state, in the units of the design. */
import type { Diagnostic } from '../diagnostic/index.js';
import type { KeyValue } from '../key-values.js';
import type { SummaryRow } from '../optics/index.js';
import type { ForecastRow } from '../output/book/index.js';
import { formatLength, type LengthUnit, proseIn } from '../units/index.js';

/** A problem in the units of the design. */
export const inWords = (problem: Diagnostic, units: LengthUnit): Diagnostic => ({
  ...problem,
  message: proseIn(problem.message, units),
  ...(problem.remedy === undefined ? {} : { remedy: proseIn(problem.remedy, units) }),
});

/** A row of a forecast in the units of the design. */
export function rowIn({ label, value, unit, digits, standardError, note }: SummaryRow, units: LengthUnit): ForecastRow {
  const shown = (number: number) =>
    unit === 'mm' ? formatLength(number, units) : proseIn(`${number.toFixed(digits)} ${unit}`.trim(), units);
  // an error too small to print says nothing
  const error = standardError === undefined ? '' : shown(standardError);
  return {
    label: proseIn(label, units),
    value: typeof value === 'string' ? value : shown(value),
    error: /[1-9]/.test(error) ? `± ${error}` : '',
    ...(note === undefined ? {} : { note: proseIn(note, units) }),
  };
}

/** A value with its remark in the units of the design. */
export const valueIn = ({ label, value, note }: KeyValue, units: LengthUnit): KeyValue => ({
  label,
  value: proseIn(value, units),
  ...(note === undefined ? {} : { note: proseIn(note, units) }),
});
