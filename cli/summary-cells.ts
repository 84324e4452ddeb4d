import { type LengthUnit, rowIn, type SummaryRow } from '../lib/index.js';

/** A row of the forecast as cells; lengths in the user's unit. */
export function summaryCells(row: SummaryRow, units: LengthUnit): string[] {
  const { label, value, error, note = '' } = rowIn(row, units);
  return [label, value, error, note];
}
