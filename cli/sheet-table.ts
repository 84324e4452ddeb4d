/** The sheets of a job as a table. */
import { formatLength, type Job } from '../lib/index.js';
import { table } from './table.js';

/** Lines of the table; `width` is the terminal's. */
export function sheetTable(job: Job, width: number): string[] {
  const unit = job.design.units;
  const size = (mm: number) => formatLength(mm, unit);
  const rows = job.sheets.map(({ cut, nested }) => [
    cut.id,
    `${size(nested.width)} x ${size(nested.height)}`,
    String(nested.placed.length),
    size(nested.usedLength),
    nested.offcut ? `${size(nested.offcut.width)} x ${size(nested.offcut.height)}` : '',
    cut.process.kind,
  ]);
  return table(
    [
      { head: 'sheet' },
      { head: 'size' },
      { head: 'parts', right: true },
      { head: 'used', right: true },
      { head: 'left over' },
      { head: 'cut by' },
    ],
    rows,
    width,
  );
}
