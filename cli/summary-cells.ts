import { formatLength, type LengthUnit, proseIn, type SummaryRow } from '../lib/index.js';

/** A row of the forecast as cells; lengths in the user's unit. */
export function summaryCells(row: SummaryRow, units: LengthUnit): string[] {
  const { value, unit, digits, standardError } = row;
  const [label, note] = [proseIn(row.label, units), proseIn(row.note ?? '', units)];
  if (typeof value === 'string') return [label, value, '', note];
  const shown = (number: number) =>
    unit === 'mm' ? formatLength(number, units) : proseIn(`${number.toFixed(digits)} ${unit}`.trim(), units);
  // an error too small to print says nothing
  const error = standardError === undefined ? '' : shown(standardError);
  return [label, shown(value), /[1-9]/.test(error) ? `± ${error}` : '', note];
}
