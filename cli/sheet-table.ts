/** The sheets of a job as a table. */
import { formatLength, type Job } from '../lib/index.js';
import { table } from './table.js';

/** Lines of the table; `width` is the terminal's. */
export function sheetTable(job: Job, width: number): string[] {
  const unit = job.design.units;
  const size = (mm: number) => formatLength(mm, unit);
  const minutes = new Map<string, string>(
    job.routes.map(({ sheet, plan }) => [sheet.file, `${Math.ceil(plan.cuttingSeconds / 60)} min`]),
  );
  for (const { sheet, plan } of job.lasered)
    if (plan.seconds !== null)
      minutes.set(sheet.file, `${plan.atLeast ? 'over ' : ''}${Math.ceil(plan.seconds / 60)} min`);
  const rows = job.sheets.map(({ file, cut, nested }) => [
    cut.id,
    `${size(nested.width)} x ${size(nested.height)}`,
    String(nested.placed.length),
    size(nested.usedLength),
    nested.offcut ? `${size(nested.offcut.width)} x ${size(nested.offcut.height)}` : '',
    cut.process.kind,
    minutes.get(file) ?? '',
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

/** What is not known of the laser, so that it has no time; nothing where it has, or where nothing is described. */
export function untimedLines({ design, lasered }: Pick<Job, 'design' | 'lasered'>): string[] {
  const untimed = lasered.filter((route) => route.unknown.length > 0);
  if (untimed.length === 0) return [];
  const unknown = [...new Set(untimed.flatMap((route) => route.unknown))];
  const keys = design.machine.kind === 'laser' ? unknown.join(', ') : 'a machine of kind laser with its speeds';
  const aids = untimed.every(({ sheet }) => sheet.file.startsWith('templates/')) ? ' for templates and gauges' : '';
  return [`The time of the laser${aids} is not estimated: the design does not state ${keys}.`];
}
