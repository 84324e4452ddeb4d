/** Drawings as a PDF: vector lines and real text, a page each. */
import { PDFDocument, PDFName, PrintScaling, StandardFonts } from 'pdf-lib';
import { plainText, points } from '../print/pen.js';
import { contentOf, FONT } from './pdf-content.js';
import type { ShopDrawing } from './types.js';

/** The same drawings give the same bytes: the file bears no date of its making. */
const NO_DATE = new Date(0);

/** All pages of the drawings, as `drawings.pdf` holds them. */
export async function writeDrawings(title: string, drawings: readonly ShopDrawing[]): Promise<Uint8Array> {
  const document = await PDFDocument.create({ updateMetadata: false });
  const font = await document.embedFont(StandardFonts.Helvetica);
  document.setTitle(plainText(title, font), { showInWindowTitleBar: true });
  document.setCreator('dishwright');
  document.setProducer('dishwright');
  document.setCreationDate(NO_DATE);
  document.setModificationDate(NO_DATE);
  // printers are to leave the scale alone
  document.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
  for (const drawn of drawings.flatMap(({ pages }) => pages)) {
    const page = document.addPage([points(drawn.width), points(drawn.height)]);
    page.node.setFontDictionary(PDFName.of(FONT), font.ref);
    page.node.addContentStream(document.context.register(document.context.flateStream(contentOf(drawn))));
  }
  return document.save();
}
