/** Shop drawings: a part can be made from what is printed, and everything on the page can be read. */
import { beforeAll, describe, expect, it } from 'vitest';
import { edgesOf, pointOnEdge } from '../../lib/geometry/index.js';
import { textWidth } from '../../lib/output/shop/font.js';
import { lineLooks } from '../../lib/output/shop/lines.js';
import { type LineKind, partDrawings, type ShopDrawing } from '../../lib/output/shop/index.js';
import { blank, type Part, throughHole } from '../../lib/part/index.js';
import { prepare } from '../../lib/pipeline.js';
import { shopDrawings } from '../../lib/pipeline/shop.js';
import { allFixtureNames, designOf, fixture } from '../helpers/fixtures.js';
import { helveticaWidths } from '../helpers/helvetica.js';
import { randomDesign } from '../helpers/random-design.js';
import { faultsOf, roundingOf, unitOf } from '../helpers/made-by-drawing.js';
import { readPrinted } from '../helpers/rebuilt.js';
import { byDay, jobSeeds } from '../helpers/seeds.js';

function drawnOf(design: ReturnType<typeof fixture>) {
  const prepared = prepare(design);
  const [section, ...drawings] = shopDrawings(prepared);
  return { parts: [...prepared.parts, ...prepared.aids], drawings, section: section!, dish: prepared.dish };
}

const randomSeeds = jobSeeds('shop drawings', 1, byDay(3, 60));

const designs: readonly (readonly [string, () => ReturnType<typeof fixture>])[] = [
  ...allFixtureNames.map((name) => [name, () => fixture(name)] as const),
  // decimals of an inch
  ['table-top in inches', () => ({ ...fixture('table-top'), units: 'in' })],
  ...randomSeeds.map((seed) => [`random ${seed}`, () => designOf(randomDesign(seed).text)] as const),
];

describe.each(designs)('%s', (_, make) => {
  let design: ReturnType<typeof fixture>;
  let drawn: ReturnType<typeof drawnOf>;
  beforeAll(() => {
    design = make();
    drawn = drawnOf(design);
  });

  it('every part and aid can be made from what its drawing prints', () => {
    const faults = drawn.parts.map((part, i) => faultsOf(part, drawn.drawings[i]!, design));
    expect(faults.flatMap(({ wrong }) => wrong)).toEqual([]);
  });

  it('states the thickness of each part to a fiftieth, or to what its rule has', () => {
    drawn.parts.forEach((part, i) => {
      const words = drawn.drawings[i]!.pages[0]!.entities.flatMap((one) => one.words);
      const head = words.find(({ text }) => text === 'thickness')!;
      // the number stands below its head in the title block
      const below = words
        .filter(({ at }) => Math.abs(at.x - head.at.x) < 1 && at.y < head.at.y)
        .sort((a, b) => b.at.y - a.at.y)[0]!;
      const printed = readPrinted(below.text, unitOf(design));
      const step = unitOf(design) === 'mm' ? 0.005 : 25.4 / 128;
      const slack = part.thickness < 0.8 ? 0.02 * part.thickness : step;
      expect(Math.abs(printed - part.thickness), `${part.id}: ${below.text}`).toBeLessThanOrEqual(slack + 1e-9);
    });
  });

  it('no text lies on another, on a line or off the paper', () => {
    expect([drawn.section, ...drawn.drawings].flatMap(crowdedTexts)).toEqual([]);
  });

  it('the section prints the radii and heights of the dish', () => {
    const { dish, section } = drawn;
    const [page] = section.pages;
    const printed = page!.entities
      .filter(({ kind }) => kind === 'dimension')
      .flatMap(({ words }) => words.map(({ text }) => readPrinted(text, unitOf(design))));
    const focus = dish.baseHeight + dish.focusHeight.atRim;
    for (const mm of [dish.innerRadius, dish.apertureRadius, design.board.size / 2, dish.rimEndHeight, focus])
      expect(Math.min(...printed.map((one) => Math.abs(one - mm))), String(mm)).toBeLessThan(0.05 + roundingOf(design));
  });
});

// the width of a text as the PDF's own font has it
let widthOf: (text: string, capitals: number) => number;
beforeAll(async () => {
  const ofSize = await helveticaWidths();
  // AFM of the core fonts: capitals of Helvetica are 718 thousandths high
  widthOf = (text, capitals) => ofSize(text, capitals / 0.718);
});

interface Box {
  readonly text: string;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** Texts that touch another text, a line, or the edge of the paper. */
function crowdedTexts({ id, pages }: ShopDrawing): string[] {
  return pages.flatMap(({ width, height, entities }) => {
    const boxes = entities.flatMap(({ words }) =>
      words.map(({ text, at, height: capitals, anchor, turnDeg }): Box => {
        const long = widthOf(text, capitals);
        const from = anchor === 'start' ? 0 : anchor === 'end' ? -long : -long / 2;
        return turnDeg === 90
          ? { text, minX: at.x - capitals, maxX: at.x, minY: at.y + from, maxY: at.y + from + long }
          : { text, minX: at.x + from, maxX: at.x + from + long, minY: at.y, maxY: at.y + capitals };
      }),
    );
    const lines = entities.flatMap(({ strokes }) =>
      strokes.flatMap(({ vertices, closed }) =>
        (closed ? edgesOf(vertices) : edgesOf(vertices).slice(0, -1)).map((edge) =>
          Array.from({ length: edge.kind === 'arc' ? 40 : 2 }, (_, i) =>
            pointOnEdge(edge, edge.kind === 'arc' ? i / 39 : i),
          ),
        ),
      ),
    );
    const problems: string[] = [];
    boxes.forEach((box, i) => {
      if (box.minX < 10 || box.minY < 10 || box.maxX > width - 10 || box.maxY > height - 10)
        problems.push(`${id}: "${box.text}" leaves the frame`);
      for (const other of boxes.slice(i + 1))
        if (box.minX < other.maxX && other.minX < box.maxX && box.minY < other.maxY && other.minY < box.maxY)
          problems.push(`${id}: "${box.text}" and "${other.text}" overlap`);
      for (const points of lines)
        if (points.slice(1).some((b, k) => crosses(points[k]!, b, box)))
          problems.push(`${id}: a line crosses "${box.text}"`);
    });
    return problems;
  });
}

/** Whether a segment enters a box: its ends, or a crossing with a side. */
function crosses(a: { x: number; y: number }, b: { x: number; y: number }, { minX, minY, maxX, maxY }: Box): boolean {
  let [from, to] = [0, 1];
  for (const [start, step, min, max] of [
    [a.x, b.x - a.x, minX, maxX],
    [a.y, b.y - a.y, minY, maxY],
  ] as const) {
    if (step === 0) {
      if (start <= min || start >= max) return false;
    } else {
      const [t, u] = [(min - start) / step, (max - start) / step];
      from = Math.max(from, Math.min(t, u));
      to = Math.min(to, Math.max(t, u));
    }
  }
  return from < to;
}

describe('a drawing with a fault', () => {
  const design = fixture('press-house');
  const part = (id: string) => {
    const { parts, aids } = prepare(design);
    return [...parts, ...aids].find((one) => one.id === id)!;
  };
  const foundIn = (one: Part, drawing: ShopDrawing): readonly string[] => {
    try {
      return faultsOf(one, drawing, design).wrong;
    } catch (error) {
      return [String(error)];
    }
  };
  type Change = (
    text: string,
    states: ShopDrawing['pages'][number]['entities'][number]['words'][number]['states'],
  ) => string | null;
  /** The drawing with each printed measure as changed; null leaves it out. */
  const changed = (drawing: ShopDrawing, change: Change): ShopDrawing => ({
    ...drawing,
    pages: drawing.pages.map((page) => ({
      ...page,
      entities: page.entities.map((one) => ({
        ...one,
        words: one.words.flatMap((words) => {
          if (words.states.length === 0) return [words];
          const text = change(words.text, words.states);
          return text === null ? [] : [{ ...words, text }];
        }),
      })),
    })),
  });

  it.each(['rib', 'hub', 'cleat', 'board', 'panel', 'gauge-rib', 'jig-hub'])(
    'of %s is noticed whichever measure is left out or wrong',
    (id) => {
      const one = part(id);
      const [drawing] = partDrawings(design, [one]);
      let count = 0;
      changed(drawing!, (text) => {
        count += 1;
        return text;
      });
      expect(count).toBeGreaterThan(2);
      for (let i = 0; i < count; i++) {
        let k = 0;
        const without = changed(drawing!, (text) => (k++ === i ? null : text));
        expect(foundIn(one, without), `without measure ${i}`).not.toEqual([]);
        k = 0;
        let was = '';
        const wrong = changed(drawing!, (text) => {
          if (k++ !== i) return text;
          was = text;
          // millimetres, degrees or holes more
          return text.replace(/\d+/, (digits) => String(Number(digits) + 9));
        });
        const faults = foundIn(one, wrong);
        expect(faults, `measure ${i}, ${was}`).not.toEqual([]);
      }
    },
  );

  it('is noticed where two texts overlap or a line crosses one', () => {
    const [drawing] = partDrawings(design, [part('rib')]);
    const shifted = (dx: number): ShopDrawing => ({
      ...drawing!,
      pages: drawing!.pages.map((page) => ({
        ...page,
        entities: page.entities.map((one) => ({
          ...one,
          words: one.words.map((words) =>
            words.text === '529' ? { ...words, at: { ...words.at, x: words.at.x + dx } } : words,
          ),
        })),
      })),
    });
    expect(crowdedTexts(shifted(0))).toEqual([]);
    // where it is moved right across the drawing, it meets others on its way
    const moved = Array.from({ length: 40 }, (_, i) => crowdedTexts(shifted(3 * (i + 1))).length);
    expect(Math.max(...moved)).toBeGreaterThan(0);
  });
});

it('draws a part of many corners and holes, with its tables on pages of their own', () => {
  const design = fixture('press-house');
  const teeth = Array.from({ length: 180 }, (_, i) => ({
    x: 3.3 * (i % 2 === 0 ? i : i - 1),
    y: i % 2 === 0 ? 100 + i / 3 : 140,
    bulge: 0,
  }));
  const part = blank({
    id: 'comb',
    kind: 'extra',
    name: 'Comb',
    material: 'birch12',
    thickness: 12,
    quantity: 1,
    outline: [{ x: 0, y: 0, bulge: 0 }, { x: 600, y: 0, bulge: 0 }, ...teeth.reverse()],
    holes: Array.from({ length: 150 }, (_, i) => throughHole({ x: 5 + 3.7 * i, y: 10 + (i % 7) * 9.1 }, 3)),
  });
  const [drawing] = partDrawings(design, [part]);
  expect(faultsOf(part, drawing!, design).wrong).toEqual([]);
  expect(crowdedTexts(drawing!)).toEqual([]);
  expect(drawing!.pages.length).toBeGreaterThan(2);
});

describe('the pages', () => {
  const drawings = (): ShopDrawing[] => shopDrawings(prepare(fixture('press-house')));

  it('are at scales of ISO 5455', () => {
    // ISO 5455:1979, clause 5: recommended scales
    const recommended = ['50:1', '20:1', '10:1', '5:1', '2:1', '1:1', '1:2', '1:5', '1:10', '1:20', '1:50', '1:100'];
    for (const { scale } of drawings()) expect(recommended).toContain(scale);
  });

  it('have lines and lettering by ISO 128-2 and ISO 3098-1', () => {
    // ISO 128-2: widths of the series from 0.13 to 2 mm; wide and narrow are 2:1
    const series = [0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1, 1.4, 2];
    for (const { width } of Object.values(lineLooks)) expect(series).toContain(width);
    expect(lineLooks.outline.width / lineLooks.thin.width).toBe(2);
    // ISO 128-2, types 02, 04 and 05 by the lengths of their elements in line widths
    const elements = (kind: LineKind) => lineLooks[kind].dashes.map((one) => one / lineLooks[kind].width);
    expect(elements('hidden')).toEqual([12, 3]);
    expect(elements('centre')).toEqual([24, 3, 0.5, 3]);
    expect(elements('phantom')).toEqual([24, 3, 0.5, 3, 0.5, 3]);
    // ISO 3098-1: heights of lettering; ISO 129-1 takes no dimension below 2.5 mm on the picture itself
    for (const { entities } of drawings().flatMap(({ pages }) => pages))
      for (const { words } of entities.filter(({ kind }) => kind === 'dimension'))
        for (const { height } of words) expect(height).toBe(2.5);
  });

  it('have running dimensions from one origin, with an arrow head at each value but it', () => {
    // ISO 129-1: superimposed running dimensions: a common origin, a circle there, an arrow head at each other end
    const rib = drawings().find(({ id }) => id === 'rib')!;
    const dimensions = rib.pages[0]!.entities.filter(
      ({ kind, words }) => kind === 'dimension' && words.some(({ states }) => states.some(({ of }) => of === 'corner')),
    );
    for (const { words, solids } of dimensions) expect(solids.length).toBe(words[0]!.text === '0' ? 0 : 1);
    expect(dimensions.length).toBeGreaterThan(5);
  });
});

it('knows the widths of the font that the PDF is set in', () => {
  const others = ['°', '±', '×', 'Ø', '–', '’', '‘', '“', '”', '·', '…', '²'];
  const letters = Array.from({ length: 95 }, (_, i) => String.fromCharCode(32 + i));
  for (const letter of [...letters, ...others])
    expect(textWidth(letter, 2.5), letter).toBeCloseTo(widthOf(letter, 2.5), 2);
});
