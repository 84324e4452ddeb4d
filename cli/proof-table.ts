/** What the proof measured, a line a sheet. */
import type { Proof } from '../lib/check/index.js';
import { formatLength, inInches, type LengthUnit } from '../lib/index.js';
import { table } from './table.js';

/** As fine as the proof measures: a tenth of a micrometre, or a hundred-thousandth of an inch. */
const fine = (mm: number, units: LengthUnit): string =>
  inInches(units) ? `${(mm / 25.4).toFixed(5)} in` : `${mm.toFixed(4)} mm`;

/** Lines of the table in the units of the design; `width` is the terminal's. */
export function proofTable(proof: Proof, units: LengthUnit, width: number): string[] {
  const off = (mm: number | undefined): string => (mm === undefined ? '' : fine(mm, units));
  const distance = (mm: number | null): string => (mm === null ? '' : formatLength(mm, units));
  const rows = proof.sheets.map((sheet) => [
    sheet.file,
    String(sheet.parts),
    off(sheet.worstOutward?.mm),
    off(sheet.worstInward?.mm),
    distance(sheet.minSpacing),
    distance(sheet.minMargin),
    sheet.faults.length === 0 ? 'proven' : `${sheet.faults.length} faults`,
  ]);
  return table(
    [
      { head: 'sheet' },
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
