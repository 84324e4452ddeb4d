import { type Vertex, bounds } from '../geometry/index.js';
import { type LengthUnit, mmPer } from '../units/index.js';
import { type Cell, writeCsv } from './csv.js';

/** A part, as far as the list of parts to cut needs it. */
export interface PartToList {
  readonly id: string;
  readonly name: string;
  readonly quantity: number;
  readonly material: string;
  readonly thickness: number;
  readonly grain: string;
  /** The outline is contours[0]. */
  readonly contours: readonly { readonly vertices: readonly Vertex[] }[];
  readonly notes: readonly string[];
}

/** Which parts lie on a sheet. */
export interface SheetToList {
  readonly id: string;
  readonly placed: readonly { readonly part: string }[];
}

/** Decimals that come to 0.1 mm or better. */
const digitsOf: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 2, m: 4, in: 3, ft: 4 };

/** `sheet-1 (12), sheet-2 (12)`: where the copies of a part lie. */
function sheetsOf(part: string, sheets: readonly SheetToList[]): string {
  return sheets
    .map(({ id, placed }) => ({ id, count: placed.filter((one) => one.part === part).length }))
    .filter(({ count }) => count > 0)
    .map(({ id, count }) => `${id} (${count})`)
    .join(', ');
}

/**
 * `cut-list.csv`: a row for each part. Length is the larger side of the box around the outline as drawn along the
 * part's own axes, width the smaller; both at finished size, in `unit`.
 * @throws RangeError for a part without an outline
 */
export function writeCutList(parts: readonly PartToList[], sheets: readonly SheetToList[], unit: LengthUnit): string {
  const length = (mm: number, digits = digitsOf[unit]): Cell => ({ value: mm / mmPer[unit], digits });
  const heading = [
    'part',
    'name',
    'quantity',
    'material',
    `thickness (${unit})`,
    `length (${unit})`,
    `width (${unit})`,
    'grain',
    'sheets',
    'notes',
  ];
  const rows = parts.map((part): Cell[] => {
    const box = bounds(part.contours[0]?.vertices ?? []);
    const sides = [box.maxX - box.minX, box.maxY - box.minY];
    return [
      part.id,
      part.name,
      { value: part.quantity, digits: 0 },
      part.material,
      // thin sheet is told apart by hundredths
      length(part.thickness, digitsOf[unit] + 1),
      length(Math.max(...sides)),
      length(Math.min(...sides)),
      part.grain,
      sheetsOf(part.id, sheets),
      part.notes.join(' '),
    ];
  });
  return writeCsv([heading, ...rows]);
}
