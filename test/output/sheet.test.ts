/** Labels of sheets: along their pieces, within the material, large enough to be read. */
import { PDFDocument, StandardFonts } from 'pdf-lib';
import { beforeAll, describe, expect, it } from 'vitest';
import { placeVertices, rotate, sideOfContour } from '../../lib/geometry/index.js';
import { sheetDrawings, sheetLabels } from '../../lib/output/sheet/index.js';
import { ringsOf } from '../../lib/part/index.js';
import { aidSheets } from '../../lib/pipeline/aids.js';
import { nestPrepared, prepare } from '../../lib/pipeline.js';
import { fixture, type FixtureName } from '../helpers/fixtures.js';
import { shelfNester } from '../helpers/shelf-nester.js';

/** Width of a text over the height of its capitals, by another's metrics of the same font. */
let widthOf: (text: string) => number;
beforeAll(async () => {
  const font = await (await PDFDocument.create()).embedFont(StandardFonts.Helvetica);
  // capitals of Helvetica are 718 thousandths of its size (Adobe's AFM)
  widthOf = (text) => font.widthOfTextAtSize(text, 1 / 0.718);
});

/** Scales of ISO 5455 for drawings of things that are larger than the paper, and 1:1, 2:1. */
const standardScales = ['2:1', '1:1', '1:2', '1:5', '1:10', '1:20', '1:50', '1:100', '1:200'];

/** Parts in rows on their sheets, and aids as they are nested. */
async function sheetsOf(name: FixtureName) {
  const prepared = prepare(fixture(name));
  const { sheets } = await nestPrepared(prepared, shelfNester);
  const own = sheets.map((sheet) => ({ ...sheet, parts: prepared.parts }));
  const aids = aidSheets(prepared.design, prepared.aids).map((sheet) => ({ ...sheet, parts: prepared.aids }));
  return { design: prepared.design, sheets: [...own, ...aids] };
}

describe.each(['press-house', 'hand-cut-inch', 'classroom', 'village-bakery'] as const)(
  'the labels of %s',
  (name: FixtureName) => {
    let made: Awaited<ReturnType<typeof sheetsOf>>;
    beforeAll(async () => {
      made = await sheetsOf(name);
    });
    // as in the book, on a page 180 mm wide
    const factorOf = ({ width, height }: { width: number; height: number }) => 180 / Math.max(width, height);

    it('stand on every piece, inside its edges and clear of its openings', () => {
      // as they lie, and turned over
      const laid = made.sheets.flatMap(({ nested, parts }) => [
        { nested, parts },
        { nested: { ...nested, placed: nested.placed.map((at) => ({ ...at, mirrored: !at.mirrored })) }, parts },
      ]);
      for (const { nested, parts } of laid) {
        const labels = sheetLabels(nested.placed, parts, factorOf(nested));
        // a piece without one would be nameless; only a roll of many metres is too small on a page for any
        const isRoll = nested.width > 12 * nested.height;
        if (!isRoll) expect(labels.map(({ part }) => part)).toEqual(nested.placed.map(({ part }) => part));
        labels.forEach(({ part: id, text, x, y, angleDeg, height }, i) => {
          const at = nested.placed[i]!;
          expect(at.part).toBe(id);
          const part = parts.find(({ id }) => id === at.part)!;
          const rings = ringsOf(part).map((ring) => placeVertices(ring, at));
          const half = { x: (widthOf(text) * height) / 2, y: height / 2 };
          for (const along of [-1, -0.5, 0, 0.5, 1])
            for (const across of [-1, 0, 1]) {
              const off = rotate({ x: along * half.x, y: across * half.y }, (angleDeg / 180) * Math.PI);
              const point = { x: x + off.x, y: y + off.y };
              const sides = rings.map((ring) => sideOfContour(ring, point, 1e-6));
              expect(sides, `${text} of ${nested.stock}`).toEqual(
                rings.map((_, k) => (k === 0 ? 'inside' : 'outside')),
              );
            }
        });
      }
    });

    it('are large enough to be read, and never upside down', () => {
      for (const { nested, parts } of made.sheets)
        for (const { height, angleDeg } of sheetLabels(nested.placed, parts, factorOf(nested))) {
          // 1.8 mm is the smallest nominal height of lettering of ISO 3098-1
          expect(height * factorOf(nested)).toBeGreaterThanOrEqual(1.8 - 1e-9);
          expect(angleDeg).toBeGreaterThan(-90);
          expect(angleDeg).toBeLessThanOrEqual(90);
        }
    });

    it('are on a page for each sheet, at a standard scale, with all text inside the frame', () => {
      const { design, sheets } = made;
      const pages = sheetDrawings(
        design,
        sheets.map(({ file, nested, cut, parts }) => ({
          file,
          laid: nested,
          material: nested.stock,
          cutBy: cut.process.kind,
          edge: undefined,
          parts,
        })),
      );
      expect(pages).toHaveLength(sheets.length);
      for (const { scale, pages: own } of pages) {
        expect(standardScales).toContain(scale);
        const [page] = own;
        for (const { text, at, height, anchor } of page!.entities.flatMap(({ words }) => words)) {
          const right = at.x + widthOf(text) * height * (anchor === 'start' ? 1 : 0);
          expect(right, text).toBeLessThanOrEqual(page!.width - 10);
          expect(at.y, text).toBeGreaterThanOrEqual(10);
        }
      }
    });
  },
);
