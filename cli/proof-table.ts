/** What the proof measured, a line a sheet. */
import type { Proof } from '../lib/check/index.js';
import { table } from './table.js';

const um = (mm: number | null): string => (mm === null ? '' : mm.toFixed(4));
const distance = (mm: number | null): string => (mm === null ? '' : mm.toFixed(2));

/** Lines of the table; lengths in mm; `width` is the terminal's. */
export function proofTable(proof: Proof, width: number): string[] {
  const rows = proof.sheets.map((sheet) => [
    sheet.file,
    String(sheet.parts),
    um(sheet.worstOutward?.mm ?? null),
    um(sheet.worstInward?.mm ?? null),
    distance(sheet.minSpacing),
    distance(sheet.minMargin),
    sheet.faults.length === 0 ? 'proven' : `${sheet.faults.length} faults`,
  ]);
  return table(
    [
      { head: 'sheet (mm)' },
      { head: 'parts', right: true },
      { head: 'left over', right: true },
      { head: 'cut into', right: true },
      { head: 'spacing', right: true },
      { head: 'margin', right: true },
      { head: '' },
    ],
    rows,
    width,
  );
}
