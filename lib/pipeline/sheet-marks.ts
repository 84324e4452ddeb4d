/** The lettering of placed parts, as strokes on the sheet; `{n}` in a label is the number of the copy. */
import { type Path, placeVertices, strokeText } from '../geometry/index.js';
import type { NestedSheet } from '../nest/index.js';
import type { Part } from '../parts/index.js';

export interface SheetMark {
  readonly part: string;
  readonly copy: number;
  readonly vertices: Path;
}

/** Strokes of every label on a sheet. A mirrored part has no lettering: it would stand in mirror writing. */
export function sheetMarks(sheet: NestedSheet, parts: ReadonlyMap<string, Part>): SheetMark[] {
  return sheet.placed.flatMap((placed) => {
    if (placed.mirrored) return [];
    const labels = parts.get(placed.part)?.labels ?? [];
    return labels.flatMap(({ text, x, y, height, angle }) =>
      strokeText(text.replaceAll('{n}', String(placed.copy)), { x, y }, height, angle).map((vertices) => ({
        part: placed.part,
        copy: placed.copy,
        vertices: placeVertices(vertices, placed),
      })),
    );
  });
}
