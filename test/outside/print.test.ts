/** Full-size prints as poppler draws them (Debian: poppler-utils), measured in pixels. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { circle, rectangle } from '../../lib/geometry/index.js';
import { defaultColours } from '../../lib/design/index.js';
import { type Drawing, drawPart } from '../../lib/output/index.js';
import { type PrintOptions, writePrint } from '../../lib/output/print/index.js';
import { prepare } from '../../lib/pipeline.js';
import { printedParts } from '../../lib/pipeline/prints.js';
import { fixture } from '../helpers/fixtures.js';

const DPI = 600;
const PIXELS_PER_MM = DPI / 25.4;

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'print-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true });
});

interface Grey {
  readonly width: number;
  readonly height: number;
  readonly at: (x: number, y: number) => number;
}

/** A binary PGM, by its format: P5, width, height, greatest value, then a byte a pixel. */
function readPgm(file: string): Grey {
  const bytes = readFileSync(file);
  const [, width, height] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 60).toString('latin1'))!.map(Number);
  const start = bytes.length - width! * height!;
  return { width: width!, height: height!, at: (x, y) => bytes[start + y * width! + x]! };
}

async function rendered(drawing: Drawing, options: PrintOptions, page: number): Promise<Grey> {
  const file = join(folder, 'print.pdf');
  writeFileSync(file, await writePrint(drawing, options));
  const root = join(folder, `page-${page}`);
  execFileSync('pdftoppm', [
    '-r',
    String(DPI),
    '-gray',
    '-f',
    String(page),
    '-l',
    String(page),
    '-singlefile',
    file,
    root,
  ]);
  return readPgm(`${root}.pgm`);
}

/** Centres of the dark runs along a row or column, weighted by darkness, in pixels. */
function lines(image: Grey, along: 'row' | 'column', at: number, from = 0, to = Infinity): number[] {
  const end = Math.min(to, along === 'row' ? image.width : image.height);
  const dark = (i: number) => 255 - (along === 'row' ? image.at(i, at) : image.at(at, i));
  const found: number[] = [];
  let weight = 0;
  let sum = 0;
  for (let i = Math.max(0, Math.ceil(from)); i <= end; i++) {
    const here = i < end ? dark(i) : 0;
    if (here > 40) {
      weight += here;
      sum += here * (i + 0.5);
    } else if (weight > 0) {
      found.push(sum / weight);
      weight = 0;
      sum = 0;
    }
  }
  return found;
}

const px = (mm: number): number => Math.round(mm * PIXELS_PER_MM);
const a4: PrintOptions = { paper: { kind: 'a4' }, margin: 10, overlap: 10, unit: 'mm', measured: 100 };

/** A square of 100 mm, 20 mm off the lower left corner of the drawing. */
const square: Drawing = {
  title: 'square',
  width: 140,
  height: 140,
  layers: [{ name: 'outline', colour: '#009E73' }],
  entities: [{ kind: 'path', layer: 'outline', closed: true, vertices: rectangle(20, 20, 120, 120) }],
};

describe.each([100, 99.4, 101.5])('for a printer that makes %d mm of 100 mm', (measured) => {
  const options = { ...a4, measured };
  // what this printer is sent, so that 100 mm come out
  const wanted = (100 * 100) / measured;

  it('a square of 100 mm is true within one pixel, both ways', async () => {
    const image = await rendered(square, options, 2);
    const middleX = Math.round(image.width / 2);
    // the window's middle: half the page, above the band at the foot
    const middleY = px((297 - 27) / 2);
    const across = lines(image, 'row', middleY);
    const upright = lines(image, 'column', middleX, 0, px(240));
    expect(across).toHaveLength(2);
    expect(upright).toHaveLength(2);
    expect(Math.abs(across[1]! - across[0]! - wanted * PIXELS_PER_MM)).toBeLessThanOrEqual(1);
    expect(Math.abs(upright[1]! - upright[0]! - wanted * PIXELS_PER_MM)).toBeLessThanOrEqual(1);
  });

  it.each([
    ['mm', 100],
    ['in', 101.6],
  ] as const)('every page in %s carries one check line of %d mm, true within one pixel', async (unit, length) => {
    // what the printer makes of this line, whose ends are what it is sent apart
    const made = (length * measured) / 100;
    for (const page of [1, 2]) {
      const image = await rendered(square, { ...options, unit, measured: made }, page);
      // at the height of the tops of the end ticks alone: 21 mm above the margin, ticks 3 mm high
      const ends = lines(image, 'row', px(297 - 10 - 21 - 2.3), 0, px(12.5 + (101.6 * 100) / measured));
      expect(ends).toHaveLength(2);
      expect(Math.abs(ends[1]! - ends[0]! - ((length * 100) / measured) * PIXELS_PER_MM)).toBeLessThanOrEqual(1);
    }
  });
});

it('bends an arc along its circle within one pixel', async () => {
  const disc: Drawing = {
    ...square,
    width: 180,
    height: 180,
    entities: [{ kind: 'path', layer: 'outline', closed: true, vertices: circle({ x: 90, y: 90 }, 80) }],
  };
  const image = await rendered(disc, a4, 2);
  const centre = { x: image.width / 2, y: px((297 - 27) / 2) };
  for (const off of [0, 20, -37, 55]) {
    const chord = lines(image, 'row', centre.y + px(off));
    expect(chord).toHaveLength(2);
    // the row of pixels lies between two rows of the drawing's mm: taken at its middle
    const height = (centre.y + px(off) + 0.5) / PIXELS_PER_MM - (297 - 27) / 2;
    const half = Math.sqrt(80 ** 2 - height ** 2) * PIXELS_PER_MM;
    expect(Math.abs(chord[1]! - chord[0]! - 2 * half)).toBeLessThanOrEqual(1);
    expect(Math.abs((chord[0]! + chord[1]!) / 2 - centre.x)).toBeLessThanOrEqual(1);
  }
});

describe('a print in several pages', () => {
  // a post that stands in the strip that both pages show, on a base that crosses from one to the other
  const bridge: Drawing = {
    title: 'bridge',
    width: 500,
    height: 150,
    layers: [{ name: 'outline', colour: '#009E73' }],
    entities: [
      {
        kind: 'path',
        layer: 'outline',
        closed: false,
        vertices: [
          { x: 5, y: 75, bulge: 0 },
          { x: 495, y: 75, bulge: 0 },
        ],
      },
      {
        kind: 'path',
        layer: 'outline',
        closed: false,
        vertices: [
          { x: 252, y: 5, bulge: 0 },
          { x: 252, y: 145, bulge: 0 },
        ],
      },
    ],
  };

  it('shows the same on both sides of a joint: post and diamond stand equally far apart', async () => {
    const [left, right] = [await rendered(bridge, a4, 2), await rendered(bridge, a4, 3)];
    // lying A4: the window is 277 by 163 mm, from 10 mm above the lower margin and the band; the cross of a
    // diamond stands at 0.2 of its height, and its upper arm alone 3.5 mm above
    const row = px(210 - 10 - 27 - 0.2 * 163) - px(3.5);
    const onLeft = lines(left, 'row', row, px(277), px(287));
    const onRight = lines(right, 'row', row, px(10), px(20));
    expect(onLeft).toHaveLength(2);
    expect(onRight).toHaveLength(2);
    // joint in the middle of the strip, at x = 250
    expect(Math.abs(onLeft[1]! - onLeft[0]! - 2 * PIXELS_PER_MM)).toBeLessThanOrEqual(1);
    expect(Math.abs(onRight[1]! - onRight[0]! - 2 * PIXELS_PER_MM)).toBeLessThanOrEqual(1);
  });

  it('keeps the margins white', async () => {
    for (const page of [1, 2, 3]) {
      const image = await rendered(bridge, a4, page);
      const edge = px(9.8);
      let min = 255;
      for (let y = 0; y < image.height; y++) {
        for (let x = 0; x < image.width; x++) {
          if (x === edge && y >= edge && y < image.height - edge) x = image.width - edge;
          min = Math.min(min, image.at(x, y));
        }
      }
      expect(min).toBe(255);
    }
  });

  it.each(['mm', 'in'] as const)('names part, page, cautions and check lengths on every page, in %s', async (unit) => {
    const file = join(folder, `named-${unit}.pdf`);
    writeFileSync(file, await writePrint(bridge, { ...a4, unit }));
    const pages = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' }).split('\f').slice(0, -1);
    expect(pages).toHaveLength(3);
    expect(pages[0]).toContain('bridge: page map');
    expect(pages[1]).toMatch(/bridge: sheet A1\s[\s\S]*Row 1 of 1, column 1 of 2; page 1 of 2/);
    expect(pages[2]).toMatch(/bridge: sheet A2\s[\s\S]*Row 1 of 1, column 2 of 2; page 2 of 2/);
    for (const text of pages) {
      expect(/\d mm\b/.test(text)).toBe(unit === 'mm');
      expect(/\d in\b/.test(text)).toBe(unit === 'in');
      expect(text).toMatch(/the focus can burn skin, start a fire and blind/);
    }
  });

  it.each([
    [{ kind: 'a4' }, /841\.8\d+ x 595\.2\d+ pts \(A4\)/],
    [{ kind: 'letter' }, /792 x 612 pts \(letter\)/],
    [{ kind: 'a3' }, /841\.8\d+ x 1190\.5\d* pts \(A3\)/],
  ] as const)('on %j has pages of that size', async (paper, size) => {
    const file = join(folder, 'size.pdf');
    writeFileSync(file, await writePrint(bridge, { ...a4, paper }));
    expect(execFileSync('pdfinfo', [file], { encoding: 'utf8' })).toMatch(size);
  });

  it.each(['hand-cut-inch', 'press-house'] as const)('names no page of a map of %s over other text', async (name) => {
    const prepared = prepare(fixture(name));
    for (const part of [...prepared.aids, ...printedParts(prepared)]) {
      const file = join(folder, 'map.pdf');
      writeFileSync(file, await writePrint(drawPart(part, defaultColours), a4));
      const xml = execFileSync('pdftotext', ['-bbox', '-l', '1', file, '-'], { encoding: 'utf8' });
      const words = [...xml.matchAll(/xMin="(.*?)" yMin="(.*?)" xMax="(.*?)" yMax="(.*?)">(.*?)</g)].map(
        ([, x0, y0, x1, y1, text]) => ({ box: [x0, y0, x1, y1].map(Number) as [number, number, number, number], text }),
      );
      expect(words.length).toBeGreaterThan(100);
      // boxes of poppler reach from ascender to descender, so that lines of text touch; letters are two thirds of that
      const inner = words.map(({ box: [x0, y0, x1, y1], text }) => {
        const sixth = (y1 - y0) / 6;
        return { x0: x0 + 0.1, y0: y0 + sixth, x1: x1 - 0.1, y1: y1 - sixth, text };
      });
      const overlaps = inner.flatMap((a, i) =>
        inner
          .slice(i + 1)
          .filter((b) => a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1)
          .map((b) => `${part.id}: ${a.text} on ${b.text}`),
      );
      expect(overlaps).toEqual([]);
    }
  });
});
