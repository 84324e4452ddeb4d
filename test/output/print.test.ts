import { PDFDocument } from 'pdf-lib';
import { describe, expect, it } from 'vitest';
import { defaultColours } from '../../lib/design/index.js';
import {
  circle,
  type Contour,
  contourFromPoints,
  distance,
  edgeLength,
  edgesOf,
  placeVertices,
  pointOnEdge,
  polar,
  randomFrom,
  rectangle,
} from '../../lib/geometry/index.js';
import { type Drawing, drawPart } from '../../lib/output/index.js';
import { type PrintOptions, writePrint } from '../../lib/output/print/index.js';
import { tile, type Tiling } from '../../lib/output/print/tiles.js';
import { prepare } from '../../lib/pipeline.js';
import { printedParts } from '../../lib/pipeline/prints.js';
import { fixture, type FixtureName } from '../helpers/fixtures.js';
import { hostileText, placedRibOutline } from '../helpers/drawings.js';
import { plainPart } from '../helpers/plain-part.js';

const options: PrintOptions = { paper: { kind: 'a4' }, margin: 10, overlap: 10, unit: 'mm', measured: 100 };

function box(width: number, height: number): Drawing {
  const vertices = rectangle(0, 0, width, height);
  const entities = [{ kind: 'path', layer: 'outline', closed: true, vertices }] as const;
  return { title: 'box', width, height, layers: [{ name: 'outline', colour: '#000000' }], entities };
}

const edge = (vertices: Contour) => ({ kind: 'path', layer: 'outline', closed: true, vertices }) as const;

/** Points of the drawing as it lies, that no page shows: every millimetre along its lines. */
function unseen({ drawing, tiles }: Tiling): string[] {
  const printed = tiles.filter(({ blank }) => !blank);
  return drawing.entities.flatMap((entity) => {
    if (entity.kind !== 'path') return [];
    return edgesOf(entity.vertices).flatMap((one) => {
      const count = Math.ceil(edgeLength(one));
      const points = Array.from({ length: count + 1 }, (_, i) => pointOnEdge(one, i / count));
      return points
        .filter(
          ({ x, y }) => !printed.some(({ window: w }) => w.minX <= x && x <= w.maxX && w.minY <= y && y <= w.maxY),
        )
        .map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`);
    });
  });
}

/** Pages that cannot be reached from the first over a common edge. */
function loose({ tiles }: Tiling): string[] {
  const printed = tiles.filter(({ blank }) => !blank);
  const joined = printed.slice(0, 1);
  for (const one of joined)
    joined.push(
      ...printed.filter(
        (next) => !joined.includes(next) && Math.abs(next.row - one.row) + Math.abs(next.column - one.column) === 1,
      ),
    );
  return printed.filter((one) => !joined.includes(one)).map(({ name }) => name);
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
      const tiling = tile(drawing, { paper: { kind }, margin, overlap, unit: 'mm', measured });
      const { tiles, page, scale, rows, columns } = tiling;
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
      expect(unseen(tiling)).toEqual([]);
    },
  );

  it('lie or stand, whichever takes fewer', () => {
    expect(tile(box(260, 100), options)).toMatchObject({ page: { width: 297, height: 210 }, rows: 1, columns: 1 });
    expect(tile(box(150, 240), options)).toMatchObject({ page: { width: 210, height: 297 }, rows: 1, columns: 1 });
  });

  it('of a roll are as long as the drawing needs', () => {
    const roll = (width: number) => tile(rib, { ...options, paper: { kind: 'roll', width } });
    expect(roll(914).tiles).toHaveLength(1);
    // across the roll, the rib takes 30 cm of it; along it, 70 cm
    expect(roll(914).page.height).toBe(914);
    expect(roll(914).page.width).toBeLessThan(310);
    expect(roll(400).tiles).toHaveLength(1);
    // the drawing stands 5 mm clear of its edges, its ink 0.2 mm off the middle of the line
    expect(roll(400).page.width).toBeCloseTo(rib.width - 10 + 0.4 + 20, 1);
    expect(roll(400).page.height).toBe(400);
    expect(roll(300).tiles.length).toBeGreaterThan(1);
  });

  it('are left out where nothing lies', async () => {
    const ring = circle({ x: 400, y: 400 }, 390);
    const { tiles } = tile({ ...box(800, 800), entities: [edge(ring)] }, options);
    const blank = tiles.filter((one) => one.blank);
    expect(blank.length).toBeGreaterThan(0);
    const document = await PDFDocument.load(await writePrint({ ...box(800, 800), entities: [edge(ring)] }, options));
    // the map and the others
    expect(document.getPageCount()).toBe(1 + tiles.length - blank.length);
  });

  it('number on from Z to AA', () => {
    const { tiles, columns } = tile(box(7000, 7000), options);
    expect(
      tiles
        .filter((_, i) => i % columns === 0)
        .slice(25, 27)
        .map(({ name }) => name),
    ).toEqual(['Z1', 'AA1']);
  });
});

describe('the turn of a print', () => {
  /** A straight band, drawn at an angle to the page. */
  const band = (length: number, width: number, turnDeg: number): Drawing => {
    const vertices = placeVertices(rectangle(0, 0, length, width), {
      x: 900,
      y: 900,
      rotationDeg: turnDeg,
      mirrored: false,
    });
    return { ...box(2000, 2000), entities: [edge(vertices)] };
  };
  const printed = ({ tiles }: Tiling) => tiles.filter(({ blank }) => !blank).length;

  it.each([0, 11, 33, 45, 68, 90, 117, 160])(
    'lays a band of 790 mm along three pages, drawn at %d degrees',
    (turnDeg) => {
      // A4 lying shows 277 mm across and the next page 267 mm more (ISO 216): 3 pages up to 811 mm
      const tiling = tile(band(790, 90, turnDeg), options);
      expect(printed(tiling)).toBe(3);
      expect(unseen(tiling)).toEqual([]);
    },
  );

  it('leaves a drawing as it is where a turn saves nothing', () => {
    expect(tile(rib, options)).toMatchObject({ turnDeg: 0 });
    expect(tile(box(150, 240), options)).toMatchObject({ turnDeg: 0 });
  });

  it('changes no distance', () => {
    const drawing = band(790, 90, 33);
    const { drawing: laid, turnDeg } = tile(drawing, options);
    expect(turnDeg).not.toBe(0);
    const cornersOf = ({ entities }: Drawing) => entities.flatMap((one) => (one.kind === 'path' ? one.vertices : []));
    const [before, after] = [cornersOf(drawing), cornersOf(laid)];
    expect(after).toHaveLength(before.length);
    before.forEach((a, i) => {
      before.forEach((b, j) => {
        expect(distance(after[i]!, after[j]!)).toBeCloseTo(distance(a, b), 9);
      });
    });
  });

  it.each([4, 5, 6, 7, 8, 9, 10, 11])('shows all of a shape of %d corners on pages that join edge to edge', (seed) => {
    const random = randomFrom(seed);
    const corners = Array.from({ length: seed }, (_, i) => polar(150 + 500 * random.real(), (2 * Math.PI * i) / seed));
    const moved = corners.map(({ x, y }) => ({ x: x + 700, y: y + 700 }));
    const tiling = tile({ ...box(1400, 1400), entities: [edge(contourFromPoints(moved))] }, options);
    expect(unseen(tiling)).toEqual([]);
    expect(loose(tiling)).toEqual([]);
  });

  it('takes 3 pages for each gauge of the demo, and no more than were counted once for any print', () => {
    // counted when the search was written, so that no change makes them more unseen
    const counted: Readonly<Record<string, number>> = {
      'press-house': 28,
      'hand-cut-inch': 66,
      'village-bakery': 147,
    };
    for (const [name, count] of Object.entries(counted)) {
      const prepared = prepare(fixture(name as FixtureName));
      const pages = [...prepared.aids, ...printedParts(prepared)].map((part) => ({
        id: part.id,
        pages: printed(tile(drawPart(part, defaultColours), options)),
      }));
      expect(
        pages.reduce((sum, one) => sum + one.pages, 0),
        JSON.stringify(pages),
      ).toBeLessThanOrEqual(count);
      const gauges = pages.filter(({ id }) => id.startsWith('gauge'));
      if (name === 'press-house') expect(gauges.map((one) => one.pages)).toEqual([3, 3, 3]);
    }
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
    [{ overlap: -5 }, /print\.overlap is -5 mm; it must be 0 or more, such as 10 mm/],
    [{ overlap: NaN }, /print\.overlap is/],
    [{ overlap: 100 }, /leaves no room to draw/],
    [{ margin: -1 }, /print\.margin is -1 mm/],
    [{ margin: 110 }, /\(A4\) with print\.margin 110 mm and print\.overlap 10 mm leaves no room/],
    [{ margin: 99 }, /leaves no room to draw.*margin and overlap of 10 mm fit on A4/],
    [{ measured: 0 }, /print\.measured is 0 mm.*from 90 mm to 110 mm/],
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
