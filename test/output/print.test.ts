import { PDFDocument } from 'pdf-lib';
import { describe, expect, it } from 'vitest';
import { defaultColours } from '../../lib/design/index.js';
import { rectangle } from '../../lib/geometry/index.js';
import { type Drawing, drawPart } from '../../lib/output/index.js';
import { type PrintOptions, writePrint } from '../../lib/output/print/index.js';
import { tile } from '../../lib/output/print/tiles.js';
import { hostileText, placedRibOutline } from '../helpers/drawings.js';
import { plainPart } from '../helpers/plain-part.js';

const options: PrintOptions = { paper: { kind: 'a4' }, margin: 10, overlap: 10, measured: 100 };

function box(width: number, height: number): Drawing {
  const vertices = rectangle(0, 0, width, height);
  const entities = [{ kind: 'path', layer: 'outline', closed: true, vertices }] as const;
  return { title: 'box', width, height, layers: [{ name: 'outline', colour: '#000000' }], entities };
}

const rib = drawPart(plainPart('rib', placedRibOutline()), defaultColours);

describe('the pages of a full-size print', () => {
  it.each([
    ['a4', 10, 10, 100],
    ['a4', 5, 0, 100],
    ['letter', 12.7, 12.7, 99.4],
    ['a3', 10, 25, 101.3],
  ] as const)(
    'on %s with margin %d and overlap %d, measured %d, cover the drawing',
    (kind, margin, overlap, measured) => {
      const drawing = box(1180, 700);
      const { tiles, page, scale, rows, columns } = tile(drawing, { paper: { kind }, margin, overlap, measured });
      expect(scale).toBeCloseTo(100 / measured, 12);
      expect(tiles).toHaveLength(rows * columns);
      for (const { row, column, window } of tiles) {
        // the window as it stands on paper lies within the margins
        expect((window.maxX - window.minX) * scale).toBeCloseTo(page.width - 2 * margin, 9);
        expect((window.maxY - window.minY) * scale).toBeLessThanOrEqual(page.height - 2 * margin);
        const right = tiles.find((other) => other.row === row && other.column === column + 1);
        if (right) expect(window.maxX - right.window.minX).toBeCloseTo(overlap, 9);
        const below = tiles.find((other) => other.row === row + 1 && other.column === column);
        if (below) expect(below.window.maxY - window.minY).toBeCloseTo(overlap, 9);
      }
      expect(Math.min(...tiles.map(({ window }) => window.minX))).toBeLessThanOrEqual(0);
      expect(Math.min(...tiles.map(({ window }) => window.minY))).toBeLessThanOrEqual(0);
      expect(Math.max(...tiles.map(({ window }) => window.maxX))).toBeGreaterThanOrEqual(1180);
      expect(Math.max(...tiles.map(({ window }) => window.maxY))).toBeGreaterThanOrEqual(700);
    },
  );

  it('lie or stand, whichever takes fewer', () => {
    expect(tile(box(260, 100), options)).toMatchObject({ page: { width: 297, height: 210 }, rows: 1, columns: 1 });
    expect(tile(box(150, 240), options)).toMatchObject({ page: { width: 210, height: 297 }, rows: 1, columns: 1 });
  });

  it('of a roll are as long as the drawing needs', () => {
    const roll = (width: number) => tile(rib, { ...options, paper: { kind: 'roll', width } });
    expect(roll(914).tiles).toHaveLength(1);
    expect(roll(914).page.width).toBe(914);
    expect(roll(400).tiles).toHaveLength(1);
    expect(roll(400).page).toMatchObject({ width: rib.width + 20, height: 400 });
    expect(roll(300).tiles.length).toBeGreaterThan(1);
  });

  it('are left out where nothing lies', async () => {
    const { tiles } = tile(rib, options);
    expect(tiles.map(({ name, blank }) => `${name}${blank ? ' blank' : ''}`)).toEqual([
      'A1 blank',
      'A2',
      'A3',
      'B1',
      'B2',
      'B3',
    ]);
    const document = await PDFDocument.load(await writePrint(rib, options));
    // the map and five sheets
    expect(document.getPageCount()).toBe(6);
  });

  it('number on from Z to AA', () => {
    const { tiles } = tile(box(100, 7000), options);
    expect(tiles.length).toBeGreaterThan(26);
    expect(tiles.slice(25, 27).map(({ name }) => name)).toEqual(['Z1', 'AA1']);
  });
});

describe('the file', () => {
  it('is the same, byte for byte, when written again, and is dated at no time', async () => {
    const first = await writePrint(rib, options);
    expect(Buffer.compare(first, await writePrint(rib, options))).toBe(0);
    const document = await PDFDocument.load(first, { updateMetadata: false });
    expect(document.getCreationDate()?.getTime()).toBe(0);
    expect(document.getTitle()).toBe('rib');
  });

  it('asks the printer to leave the size alone', async () => {
    const document = await PDFDocument.load(await writePrint(rib, options));
    // ISO 32000-1, table 150: PrintScaling None, "no page scaling"
    expect(document.catalog.getViewerPreferences()?.getPrintScaling()).toBe('None');
  });

  it('takes any name', async () => {
    const document = await PDFDocument.load(
      await writePrint({ ...rib, title: `${hostileText} 語 🌞 ${'x'.repeat(500)}` }, options),
    );
    expect(document.getTitle()).toMatch(/^<\/title><script>alert\('1'\)<\/script> & "quoted"/);
  });
});

describe('bad input', () => {
  it.each([
    [{ overlap: -5 }, /print\.overlap is -5 mm; it must be 0 or more, 10 mm would do/],
    [{ overlap: NaN }, /print\.overlap is/],
    [{ overlap: 100 }, /leaves no room to draw/],
    [{ margin: -1 }, /print\.margin is -1 mm/],
    [{ margin: 110 }, /\(A4\) with print\.margin 110 mm and print\.overlap 10 mm leaves no room/],
    [{ margin: 99 }, /leaves no room to draw.*margin and overlap of 10 mm would do/],
    [{ measured: 0 }, /print\.measured is 0 mm.*from 90 to 110 mm/],
    [{ measured: 111 }, /print\.measured is 111 mm/],
    [{ paper: { kind: 'roll', width: 0 } }, /print\.rollWidth is 0 mm/],
    [{ paper: { kind: 'roll', width: 60 } }, /roll 60 mm wide.*leaves no room/],
  ] as const)('%j gets one clear message', async (change, message) => {
    await expect(writePrint(rib, { ...options, ...change })).rejects.toThrow(message);
  });

  it('writes no file with a place that is no number', async () => {
    const entities = [{ kind: 'circle', layer: 'scribe', x: NaN, y: 0, diameter: 1 }] as const;
    await expect(writePrint({ ...box(10, 10), entities }, options)).rejects.toThrow(/cannot write/);
  });
});
