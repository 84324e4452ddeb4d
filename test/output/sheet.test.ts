/** Labels of sheets: along their pieces, within the material, large enough to be read. */
import { PDFDocument, StandardFonts } from 'pdf-lib';
import { beforeAll, describe, expect, it } from 'vitest';
import { bounds, circle, placeVertices, rotate, sideOfContour } from '../../lib/geometry/index.js';
import { laidOut, sheetDrawings, sheetLabels } from '../../lib/output/sheet/index.js';
import { type Part, pocketsUp, ringsOf } from '../../lib/part/index.js';
import { aidSheets } from '../../lib/pipeline/aids.js';
import { nestPrepared, prepare } from '../../lib/pipeline.js';
import { designOf, fixture, type FixtureName, fixtureText } from '../helpers/fixtures.js';
import { shelfNester } from '../helpers/shelf-nester.js';

/** Width of a text over the height of its capitals, by another's metrics of the same font. */
let widthOf: (text: string) => number;
beforeAll(async () => {
  const font = await (await PDFDocument.create()).embedFont(StandardFonts.Helvetica);
  // capitals of Helvetica are 718 thousandths of its size (Adobe's AFM)
  widthOf = (text) => font.widthOfTextAtSize(text, 1 / 0.718);
});

const partOf = (parts: readonly Part[], id: string): Part => parts.find((part) => part.id === id)!;

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

describe.each(['press-house', 'hand-cut-inch', 'classroom', 'village-bakery', 'cider-yard', 'porch'] as const)(
  'the labels of %s',
  (name: FixtureName) => {
    let made: Awaited<ReturnType<typeof sheetsOf>>;
    beforeAll(async () => {
      made = await sheetsOf(name);
    });
    // as in the book: 180 mm wide, or where that is too high for the page 65 mm high
    const factorOf = ({ width, height }: { width: number; height: number }) => Math.min(180 / width, 65 / height);

    it('stand on every piece, inside its edges and clear of its openings and holes, or beside it', () => {
      // as they lie, and turned over
      const laid = made.sheets.flatMap(({ nested, parts }) => [
        { nested, parts },
        { nested: { ...nested, placed: nested.placed.map((at) => ({ ...at, mirrored: !at.mirrored })) }, parts },
      ]);
      for (const { nested, parts } of laid) {
        const picture = laidOut(nested, parts);
        const labels = sheetLabels(picture, parts, factorOf(picture));
        // a piece without one would be nameless; one that is hardly wider on paper than a number and lies among others may be
        const narrow = ({ outline }: Part) => {
          const { minX, minY, maxX, maxY } = bounds(outline);
          return Math.min(maxX - minX, maxY - minY) * factorOf(picture) < 2.5;
        };
        const named = new Set(labels.map(({ part, copy }) => `${part} ${copy}`));
        expect(named.size).toBe(labels.length);
        for (const at of picture.placed)
          if (!named.has(`${at.part} ${at.copy}`)) expect(narrow(partOf(parts, at.part)), at.part).toBe(true);
        expect(labels.length).toBeGreaterThan(0.6 * picture.placed.length);
        // of each kind one is named all the same
        expect(new Set(labels.map(({ part }) => part))).toEqual(new Set(picture.placed.map(({ part }) => part)));
        const outlines = picture.placed.map((at) => placeVertices(partOf(parts, at.part).outline, at));
        const pieces = picture.placed.map((at) =>
          ringsOf(partOf(parts, at.part)).map((ring) => placeVertices(ring, at)),
        );
        const onMaterial = (point: { x: number; y: number }) =>
          pieces.some(
            ([outline, ...openings]) =>
              sideOfContour(outline!, point, 1e-6) === 'inside' &&
              openings.every((ring) => sideOfContour(ring, point, 1e-6) === 'outside'),
          );
        labels.forEach(({ part: id, copy, text, x, y, angleDeg, height, leader }) => {
          const i = picture.placed.findIndex((at) => at.part === id && at.copy === copy);
          const at = picture.placed[i]!;
          const part = partOf(parts, at.part);
          const holes = part.holes.map((hole) =>
            placeVertices(circle(hole, Math.max(hole.diameter, hole.countersink ?? 0) / 2), at),
          );
          const rings = [...ringsOf(part).map((ring) => placeVertices(ring, at)), ...holes];
          if (leader) {
            expect(sideOfContour(outlines[i]!, leader[1], 1e-6)).toBe('inside');
            // its line runs over no other part, unless it is the only one of its kind: ten places of it
            const only = labels.filter(({ part: other }) => other === id).length === 1;
            for (let k = 1; k < 10; k++) {
              const on = {
                x: leader[0].x + ((leader[1].x - leader[0].x) * k) / 10,
                y: leader[0].y + ((leader[1].y - leader[0].y) * k) / 10,
              };
              const over = picture.placed.filter((_, m) => sideOfContour(outlines[m]!, on, 1e-6) === 'inside');
              expect(only || over.every((one) => one.part === id)).toBe(true);
            }
          }
          const half = { x: (widthOf(text) * height) / 2, y: height / 2 };
          for (const along of [-1, -0.5, 0, 0.5, 1])
            for (const across of [-1, 0, 1]) {
              const off = rotate({ x: along * half.x, y: across * half.y }, (angleDeg / 180) * Math.PI);
              const point = { x: x + off.x, y: y + off.y };
              if (leader) {
                expect(onMaterial(point), `${text} beside ${part.name} of ${nested.stock}`).toBe(false);
                continue;
              }
              const sides = rings.map((ring) => sideOfContour(ring, point, 1e-6));
              expect(sides, `${text} of ${nested.stock}`).toEqual(
                rings.map((_, k) => (k === 0 ? 'inside' : 'outside')),
              );
            }
        });
      }
    });

    it('are large enough to be read, and never upside down', () => {
      for (const { nested, parts } of made.sheets) {
        const picture = laidOut(nested, parts);
        for (const { height, angleDeg } of sheetLabels(picture, parts, factorOf(picture))) {
          // 1.8 mm is the smallest nominal height of lettering of ISO 3098-1
          expect(height * factorOf(picture)).toBeGreaterThanOrEqual(1.8 - 1e-9);
          expect(angleDeg).toBeGreaterThan(-90);
          expect(angleDeg).toBeLessThanOrEqual(90);
        }
      }
    });

    it('stand in lengths of a roll that are at most some ten times as long as wide, each piece once and whole', () => {
      for (const { nested, parts } of made.sheets) {
        const { lengths, placed, width, height } = laidOut(nested, parts);
        expect(width / nested.height).toBeLessThan(12);
        expect(placed.map(({ part, copy }) => [part, copy])).toEqual(
          nested.placed.map(({ part, copy }) => [part, copy]),
        );
        expect(lengths[0].from).toBe(0);
        expect(lengths.at(-1)!.to).toBe(nested.width);
        placed.forEach((at, i) => {
          const box = bounds(placeVertices(partOf(parts, at.part).outline, at));
          const own = lengths.find(({ bottom }) => box.minY >= bottom && box.maxY <= bottom + nested.height)!;
          expect(box.minX).toBeGreaterThanOrEqual(-1e-6);
          expect(box.maxX).toBeLessThanOrEqual(own.to - own.from + 1e-6);
          expect(box.maxY).toBeLessThanOrEqual(height + 1e-6);
          // moved along the roll by where its length begins, and nothing else
          expect(at.x + own.from).toBeCloseTo(nested.placed[i]!.x, 9);
          expect(at.rotationDeg).toBe(nested.placed[i]!.rotationDeg);
        });
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

describe('the label of a board with grooves', () => {
  it('lies in none of them', () => {
    const housing = fixtureText('press-house').replace(/^rib: .*$/m, 'rib: { material: birch12, joint: housing }');
    const { parts } = prepare(designOf(housing));
    const board = parts.find(({ kind }) => kind === 'board')!;
    const grooves = pocketsUp(board).map(({ ring }) => ring);
    expect(grooves.length).toBe(24);
    const sheet = { stock: 'birch18', width: 2440, height: 1220 };
    const placed = [{ part: board.id, copy: 1, x: 600, y: 600, rotationDeg: 0, mirrored: false }];
    const [label] = sheetLabels(laidOut({ ...sheet, placed }, parts), parts, 1 / 16);
    const half = { x: (widthOf(label!.text) * label!.height) / 2, y: label!.height / 2 };
    for (const along of [-1, -0.5, 0, 0.5, 1])
      for (const across of [-1, 0, 1]) {
        const off = rotate({ x: along * half.x, y: across * half.y }, (label!.angleDeg / 180) * Math.PI);
        const point = { x: label!.x + off.x - 600, y: label!.y + off.y - 600 };
        for (const ring of grooves) expect(sideOfContour(ring, point, 1e-6)).toBe('outside');
      }
  });
});
