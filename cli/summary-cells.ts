import type { SummaryRow } from '../lib/index.js';

/** A row of the forecast as cells; lengths in the user's unit. */
export function summaryCells(row: SummaryRow, length: (mm: number) => string): string[] {
  const { label, value, unit, digits, standardError, note = '' } = row;
  if (typeof value === 'string') return [label, value, '', note];
  const shown = (number: number) => (unit === 'mm' ? length(number) : `${number.toFixed(digits)} ${unit}`.trim());
  // an error too small to print says nothing
  const error = standardError === undefined ? '' : shown(standardError);
  return [label, shown(value), /[1-9]/.test(error) ? `± ${error}` : '', note];
}
