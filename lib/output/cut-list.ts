import { bounds } from '../geometry/index.js';
import type { LaidSheet, Part } from '../part/index.js';
import { type LengthUnit, mmPer, proseIn } from '../units/index.js';
import { type Cell, writeCsv } from './csv.js';

/** Which parts lie on a sheet. */
interface ListedSheet extends Pick<LaidSheet, 'placed'> {
  readonly id: string;
}

/** Decimals that come to 0.1 mm or better. */
const digitsOf: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 2, m: 4, in: 3, ft: 4 };

/** `sheet-1 (12), sheet-2 (12)`: where the copies of a part lie. */
function sheetsOf(part: string, sheets: readonly ListedSheet[]): string {
  return sheets
    .map(({ id, placed }) => ({ id, count: placed.filter((one) => one.part === part).length }))
    .filter(({ count }) => count > 0)
    .map(({ id, count }) => `${id} (${count})`)
    .join(', ');
}

/**
 * `cut-list.csv`: a row for each part. Length is the larger side of the box around the outline as drawn along the
 * part's own axes, width the smaller; both at finished size, in `unit`.
 */
export function writeCutList(parts: readonly Part[], sheets: readonly ListedSheet[], unit: LengthUnit): string {
  const length = (mm: number, digits = digitsOf[unit]): Cell => ({ value: mm / mmPer[unit], digits });
  const heading = [
    'part',
    'name',
    'number off',
    'material',
    `thickness (${unit})`,
    `length (${unit})`,
    `width (${unit})`,
    'grain',
    'sheets',
    'notes',
  ];
  const rows = parts.map((part): Cell[] => {
    const box = bounds(part.outline);
    const sides = [box.maxX - box.minX, box.maxY - box.minY];
    return [
      part.id,
      part.name,
      { value: part.quantity, digits: 0 },
      part.material,
      // thin sheets differ by hundredths
      length(part.thickness, digitsOf[unit] + 1),
      length(Math.max(...sides)),
      length(Math.min(...sides)),
      part.grain,
      sheetsOf(part.id, sheets),
      proseIn(part.notes.join(' '), unit),
    ];
  });
  return writeCsv([heading, ...rows]);
}
