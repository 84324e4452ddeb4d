/** The sheets of a job as a table. */
import { formatLength, type Job } from '../lib/index.js';
import { table } from './table.js';

/** Lines of the table; `width` is the terminal's. */
export function sheetTable(job: Job, width: number): string[] {
  const unit = job.design.units;
  const size = (mm: number) => formatLength(mm, unit);
  const minutes = new Map(job.routes.map(({ sheet, plan }) => [sheet.file, Math.ceil(plan.cuttingSeconds / 60)]));
  const rows = job.sheets.map(({ file, cut, nested }) => [
    cut.id,
    `${size(nested.width)} x ${size(nested.height)}`,
    String(nested.placed.length),
    size(nested.usedLength),
    nested.offcut ? `${size(nested.offcut.width)} x ${size(nested.offcut.height)}` : '',
    cut.process.kind,
    minutes.has(file) ? `${minutes.get(file) ?? 0} min` : '',
  ]);
  return table(
    [
      { head: 'sheet' },
      { head: 'size' },
      { head: 'parts', right: true },
      { head: 'used', right: true },
      { head: 'left over' },
      { head: 'cut by' },
      { head: 'cutting', right: true },
    ],
    rows,
    width,
  );
}
