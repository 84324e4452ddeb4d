/** Plain tables: columns padded, numbers to the right, the widest text column shortened to fit. */
import { element } from '../lib/geometry/index.js';

export interface Column {
  readonly head: string;
  readonly right?: boolean;
}

/**
 * Lays out a table.
 * @param width characters that a line may take
 */
export function table(columns: readonly Column[], rows: readonly (readonly string[])[], width: number): string[] {
  const widths = columns.map((column, i) => Math.max(column.head.length, ...rows.map((row) => row[i]?.length ?? 0)));
  const total = () => widths.reduce((sum, w) => sum + w + 2, -2);
  while (total() > width) {
    const widest = columns.reduce(
      (best, column, i) => (!column.right && element(widths, i) > (widths[best] ?? 0) ? i : best),
      0,
    );
    if (element(widths, widest) <= 12) break;
    widths[widest] = Math.max(12, element(widths, widest) - (total() - width));
  }
  const line = (cells: readonly string[]) =>
    cells
      .map((cell, i) => {
        const space = widths[i] ?? cell.length;
        const text = cell.length > space ? `${cell.slice(0, space - 1)}…` : cell;
        return columns[i]?.right ? text.padStart(space) : text.padEnd(space);
      })
      .join('  ')
      .trimEnd();
  return [line(columns.map((column) => column.head)), line(widths.map((w) => '-'.repeat(w))), ...rows.map(line)];
}
