/** Shop drawings as poppler reads them (Debian: poppler-utils): real text at its place, pages of the stated size. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { writeDrawings } from '../../lib/output/shop/pdf.js';
import type { ShopDrawing } from '../../lib/output/shop/index.js';
import { prepare } from '../../lib/pipeline.js';
import { shopDrawings } from '../../lib/pipeline/shop.js';
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
      .filter(({ text: one, upright }) => !upright && !one.includes(' '));
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
