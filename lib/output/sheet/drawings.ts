/** Every sheet of a job as a page to hang at the machine. */
import type { Design } from '../../design/index.js';
import type { Contour } from '../../geometry/index.js';
import type { LaidSheet, Part } from '../../part/index.js';
import { paperFor, printingFor } from '../shop/drawings.js';
import type { Title } from '../shop/title-block.js';
import type { ShopDrawing } from '../shop/types.js';
import { drawnSheet } from './page.js';

export interface HungSheet {
  /** Names its files: `sheets/birch12-sheet-1`. */
  readonly file: string;
  readonly laid: LaidSheet;
  /** Key of the design's `materials`. */
  readonly material: string;
  readonly cutBy: string;
  readonly edge: Contour | undefined;
  /** Of which the sheet holds some, in the order of their list. */
  readonly parts: readonly Part[];
}

/** A page for each sheet, in the order given. */
export function sheetDrawings(design: Design, sheets: readonly HungSheet[]): ShopDrawing[] {
  const printing = printingFor(design);
  const paper = paperFor(design);
  const { length } = printing;
  return sheets.map(({ file, laid, material, cutBy, edge, parts }, i) => {
    const { description = material, thickness = 0 } = design.materials[material] ?? {};
    const title = (scale: string): Title => ({
      projection: printing.unit === 'mm' ? 'first' : 'third',
      rows: [
        [
          { head: 'dish', text: design.name, share: 60 },
          { head: 'sheet', text: file, share: 90 },
          { head: 'page', text: `${i + 1} of ${sheets.length}`, share: 30 },
        ],
        [
          { head: 'material', text: description, share: 80 },
          { head: 'thickness', text: printing.thickness(thickness), share: 25 },
          { head: 'size', text: `${length(laid.width)} x ${length(laid.height)}`, share: 50 },
          { head: 'pieces', text: String(laid.placed.length), share: 25 },
        ],
        [
          { head: 'lengths in', text: printing.name, share: 28 },
          { head: 'cut by', text: cutBy, share: 25 },
          { head: 'shown', text: 'finished size; grain along X', share: 65 },
          { head: 'scale', text: scale, share: 16 },
        ],
      ],
    });
    return drawnSheet({ id: file, sheet: laid, edge, parts, colours: design.colours, paper, printing, title });
  });
}
