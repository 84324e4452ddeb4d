/** Widths of texts as the font Helvetica of a PDF has them. */
import { PDFDocument, StandardFonts } from 'pdf-lib';

/** Gives the width of a text whose letters have a size, in the unit of the size. */
export async function helveticaWidths(): Promise<(text: string, size: number) => number> {
  const document = await PDFDocument.create();
  const font = await document.embedFont(StandardFonts.Helvetica);
  return (text, size) => font.widthOfTextAtSize(text, size);
}
