/** Plain tables: columns padded, numbers to the right, and cells wrapped where the terminal is narrower. */
import { element } from '../lib/geometry/index.js';
import { wrapped } from '../lib/index.js';

export interface Column {
  readonly head: string;
  readonly right?: boolean;
}

/** A column is never narrower than that for the sake of the others (characters). */
const narrowest = 8;
const gap = 2;

/** Widths of columns that fit into the line: the widest text column gives way first, then any other. */
function widthsFor(columns: readonly Column[], rows: readonly (readonly string[])[], width: number): number[] {
  const widths = columns.map((column, i) => Math.max(column.head.length, ...rows.map((row) => row[i]?.length ?? 0)));
  for (const all of [false, true]) {
    for (;;) {
      const over = widths.reduce((sum, w) => sum + w + gap, -gap) - width;
      const free = columns.flatMap(({ right }, i) => ((all || !right) && element(widths, i) > narrowest ? [i] : []));
      const [first] = free;
      if (over <= 0 || first === undefined) break;
      const widest = free.reduce((best, i) => (element(widths, i) > element(widths, best) ? i : best), first);
      // no further than to the next widest, so that two long columns share what is lacking
      const next = Math.max(narrowest, ...free.filter((i) => i !== widest).map((i) => element(widths, i) - 1));
      const own = element(widths, widest);
      widths[widest] = Math.max(narrowest, own - over, Math.min(next, own - 1));
    }
  }
  return widths;
}

/** A cell in lines of at most `space` characters; a word that is longer is broken, and nothing is left out. */
function linesOf(cell: string, space: number): string[] {
  if (cell.length <= space) return [cell];
  return wrapped(cell, space).flatMap((line) => {
    const pieces: string[] = [];
    for (let i = 0; i < line.length; i += space) pieces.push(line.slice(i, i + space));
    return pieces;
  });
}

/**
 * Lays out a table.
 * @param width characters that a line may take; without a limit for a program that reads
 */
export function table(columns: readonly Column[], rows: readonly (readonly string[])[], width: number): string[] {
  const widths = widthsFor(columns, rows, width);
  const row = (cells: readonly string[]): string[] => {
    const wrappedCells = cells.map((cell, i) => linesOf(cell, widths[i] ?? cell.length));
    const height = Math.max(...wrappedCells.map((lines) => lines.length));
    return Array.from({ length: height }, (_, k) =>
      wrappedCells
        .map((lines, i) => {
          const text = lines[k] ?? '';
          return columns[i]?.right ? text.padStart(widths[i] ?? 0) : text.padEnd(widths[i] ?? 0);
        })
        .join(' '.repeat(gap))
        .trimEnd(),
    );
  };
  return [
    ...row(columns.map((column) => column.head)),
    widths.map((w) => '-'.repeat(w)).join(' '.repeat(gap)),
    ...rows.flatMap(row),
  ];
}
