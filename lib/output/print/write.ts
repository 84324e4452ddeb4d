import { PDFDocument, PrintScaling, StandardFonts } from 'pdf-lib';
import type { Drawing } from '../types.js';
import { drawMapPage, mapPage } from './map.js';
import type { Page, PrintOptions } from './paper.js';
import { type Fonts, plainText, points } from './pen.js';
import { drawSheetPage } from './sheet.js';
import { tile } from './tiles.js';

/** The same drawing gives the same bytes: the file bears no date of its making. */
const NO_DATE = new Date(0);

/**
 * A drawing at full size as a PDF in pages: first a map of the pages with instructions, then every page on which
 * something lies, each with its name, diamonds at the joints, the check line, and the cautions. In
 * black and white, with the fonts that every PDF reader has.
 * @throws RangeError, naming the key of the design, when paper, margin, overlap or measured length do not go together;
 *   for a number that is not finite
 */
export async function writePrint(drawing: Drawing, options: PrintOptions): Promise<Uint8Array> {
  const tiling = tile(drawing, options);
  const document = await PDFDocument.create({ updateMetadata: false });
  const fonts: Fonts = {
    plain: await document.embedFont(StandardFonts.Helvetica),
    bold: await document.embedFont(StandardFonts.HelveticaBold),
  };
  document.setTitle(plainText(drawing.title, fonts.plain), { showInWindowTitleBar: true });
  document.setCreator('dishwright');
  document.setProducer('dishwright');
  document.setCreationDate(NO_DATE);
  document.setModificationDate(NO_DATE);
  // printers are to leave the size alone
  document.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
  const newPage = ({ width, height }: Page) => document.addPage([points(width), points(height)]);
  drawMapPage(newPage(mapPage(tiling, options)), drawing, tiling, options, fonts);
  const printed = tiling.tiles.filter(({ blank }) => !blank);
  printed.forEach((one, i) => {
    drawSheetPage(newPage(tiling.page), tiling, one, { number: i + 1, of: printed.length }, options, fonts);
  });
  return document.save();
}
