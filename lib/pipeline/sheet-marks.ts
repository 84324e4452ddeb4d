/** The lettering of placed parts, as strokes on the sheet; `{n}` in a label is the number of the copy. */
import { type Path, placeVertices } from '../geometry/index.js';
import { faceUp, type LaidSheet, type Part, textStrokes, textsUp } from '../part/index.js';

export interface SheetMark {
  readonly part: string;
  readonly copy: number;
  readonly vertices: Path;
}

/** Strokes of all lettering on a sheet. A part that lies with its other face up has none: it would be mirror writing. */
export function sheetMarks(sheet: Pick<LaidSheet, 'placed'>, parts: ReadonlyMap<string, Part>): SheetMark[] {
  return sheet.placed.flatMap((placed) => {
    const part = parts.get(placed.part);
    if (!part || faceUp(placed) !== part.up) return [];
    return textsUp(part).flatMap((mark) =>
      textStrokes({ ...mark, text: mark.text.replaceAll('{n}', String(placed.copy)) }).map((vertices) => ({
        part: placed.part,
        copy: placed.copy,
        vertices: placeVertices(vertices, placed),
      })),
    );
  });
}
