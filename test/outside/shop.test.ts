/** Shop drawings as poppler reads them (Debian: poppler-utils): real text at its place, pages of the stated size. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sheetDrawings } from '../../lib/output/sheet/index.js';
import { writeDrawings } from '../../lib/output/shop/pdf.js';
import type { ShopDrawing } from '../../lib/output/shop/index.js';
import { prepare } from '../../lib/pipeline.js';
import { aidSheets } from '../../lib/pipeline/aids.js';
import { shopDrawings } from '../../lib/pipeline/shop.js';
import type { JobSheet } from '../../lib/pipeline/types.js';
import { fixture } from '../helpers/fixtures.js';

let folder = '';
let file = '';
let drawings: ShopDrawing[] = [];
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'shop-'));
  file = join(folder, 'drawings.pdf');
  drawings = shopDrawings(prepare(fixture('press-house')));
  writeFileSync(file, await writeDrawings('shop drawings', drawings));
});
afterAll(() => {
  rmSync(folder, { recursive: true });
});

const MM = 25.4 / 72;

it('has every text where the drawing has it, within a tenth of a millimetre', () => {
  const pages = execFileSync('pdftotext', ['-bbox', file, '-'], { encoding: 'utf8' }).split('<page ').slice(1);
  const all = drawings.flatMap((drawing) => drawing.pages);
  expect(pages).toHaveLength(all.length);
  pages.forEach((text, i) => {
    const found = [
      ...text.matchAll(/<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">([^<]*)</g),
    ].map(([, xMin, yMin, xMax, yMax, word = '']) => ({
      word: word.replace('&amp;', '&').replace('&lt;', '<'),
      minX: Number(xMin) * MM,
      maxX: Number(xMax) * MM,
      top: Number(yMin) * MM,
      bottom: Number(yMax) * MM,
    }));
    const { height, entities } = all[i]!;
    const level = entities
      .flatMap(({ words }) => words)
      .filter(({ text: one, turnDeg }) => turnDeg === 0 && !one.includes(' '));
    for (const { text: word, at, anchor } of level) {
      const near = found.some(
        (one) =>
          one.word === word &&
          Math.abs((anchor === 'end' ? one.maxX : one.minX) - at.x) < 0.1 &&
          one.top < height - at.y &&
          one.bottom > height - at.y - 0.1,
      );
      expect(near, `page ${i + 1}: ${word} at ${at.x.toFixed(1)}, ${at.y.toFixed(1)}`).toBe(true);
    }
  });
});

it('is on A4', () => {
  // ISO 216: 210 by 297 mm
  const sizes = execFileSync('pdfinfo', ['-l', '99', file], { encoding: 'utf8' }).match(/Page .*size:.*/g) ?? [];
  expect(sizes.length).toBe(drawings.flatMap(({ pages }) => pages).length);
  for (const size of sizes) expect(size).toMatch(/841\.\d+ x 595\.\d+ pts|595\.\d+ x 841\.\d+ pts/);
});

it('has its outline at the stated scale', () => {
  // the rib at 1:5: its toe is 529 mm and its end 699 mm from the inner end (press-house.yaml), and below its base three
  // extension lines stand there and nothing else
  const rib = drawings.findIndex(({ id }) => id === 'rib');
  expect(drawings[rib]!.scale).toBe('1:5');
  const page = drawings.slice(0, rib).flatMap(({ pages }) => pages).length + 1;
  const dpi = 300;
  const image = execFileSync('pdftoppm', ['-r', String(dpi), '-gray', '-f', String(page), '-l', String(page), file], {
    maxBuffer: 1 << 28,
  });
  const [, wide, high] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(image.subarray(0, 60).toString('latin1'))!.map(Number);
  const start = image.length - wide! * high!;
  const right = Math.round(wide! - (15 / 25.4) * dpi);
  const threes: number[][] = [];
  for (let y = 0; y < high!; y++) {
    const middles: number[] = [];
    let run = 0;
    for (let x = Math.round((25 / 25.4) * dpi); x < right; x++) {
      const dark = image[start + y * wide! + x]! < 160;
      if (!dark && run > 0) middles.push(x - run / 2);
      run = dark ? run + 1 : 0;
    }
    if (middles.length === 3) threes.push(middles);
  }
  const paper = (mm: number): number => (mm / 5 / 25.4) * dpi;
  const true3 = threes.filter(
    ([a, b, c]) => Math.abs(b! - a! - paper(529)) <= 1.5 && Math.abs(c! - a! - paper(699)) <= 1.5,
  );
  // over a millimetre of height at the least
  expect(true3.length).toBeGreaterThan(dpi / 25.4);
});

describe('sheets.pdf', () => {
  let sheetsFile = '';
  let sheets: readonly JobSheet[] = [];
  let pages: ShopDrawing[] = [];
  let names: ReadonlyMap<string, string> = new Map();
  beforeAll(async () => {
    sheetsFile = join(folder, 'sheets.pdf');
    const { design, aids } = prepare(fixture('press-house'));
    sheets = aidSheets(design, aids);
    names = new Map(aids.map(({ id, name }) => [id, name]));
    pages = sheetDrawings(
      design,
      sheets.map(({ file: name, nested, cut }) => ({
        file: name,
        laid: nested,
        material: nested.stock,
        cutBy: cut.process.kind,
        edge: undefined,
        parts: aids,
      })),
    );
    writeFileSync(sheetsFile, await writeDrawings('sheets', pages));
  });

  it('has a lying A4 page a sheet, with the name of every piece in real text', () => {
    const sizes =
      execFileSync('pdfinfo', ['-l', '99', sheetsFile], { encoding: 'utf8' }).match(/Page .*size:.*/g) ?? [];
    expect(sizes).toHaveLength(sheets.length);
    for (const size of sizes) expect(size).toMatch(/841\.\d+ x 595\.\d+ pts/);
    const texts = execFileSync('pdftotext', ['-raw', sheetsFile, '-'], { encoding: 'utf8' }).split('\f');
    sheets.forEach(({ nested }, i) => {
      for (const { part } of nested.placed) expect(texts[i]).toContain(names.get(part));
    });
  });

  it('has the edge of the sheet at the stated scale', () => {
    const svg = join(folder, 'sheet.svg');
    pages.forEach(({ scale }, i) => {
      execFileSync('pdftocairo', ['-svg', '-f', String(i + 1), '-l', String(i + 1), sheetsFile, svg]);
      // the one path in the grey of the sheet's edge, in points
      const drawn = /stroke:rgb\(73\.\d+%,73\.\d+%,73\.\d+%\)[^"]*" d="([^"]*)"/.exec(readFileSync(svg, 'utf8'));
      const corners = [...(drawn?.[1] ?? '').matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [
        Number(x),
        Number(y),
      ]);
      const span = (axis: 0 | 1) => {
        const values = corners.map((corner) => corner[axis] ?? 0);
        return (Math.max(...values) - Math.min(...values)) * MM;
      };
      const factor = Number(scale.split(':')[1]);
      // 900 x 600 mm, the bed (press-house.yaml)
      expect(Math.abs(span(0) * factor - 900)).toBeLessThan(0.05 * factor);
      expect(Math.abs(span(1) * factor - 600)).toBeLessThan(0.05 * factor);
    });
  });
});
