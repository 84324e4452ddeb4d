/** Pictures of the steps: what hides what, and what is written, against what the dish is made of. */
import { beforeAll, describe, expect, it } from 'vitest';
import { facetAt } from '../../lib/dish/index.js';
import { assemblyBlocks } from '../../lib/output/book/assembly-chapter.js';
import { paperFor } from '../../lib/output/book/paper.js';
import { dishModel } from '../../lib/output/book/model.js';
import type { BookInput } from '../../lib/output/book/input.js';
import { measuresIn } from '../../lib/output/book/measures.js';
import { sceneOf } from '../../lib/output/book/scenes/index.js';
import { camera, canvasFor, type Seen } from '../../lib/output/illustrate/camera.js';
import { cornersOf, inSpace, seenOf } from '../../lib/output/illustrate/seen.js';
import { meshOf, normal } from '../../lib/output/illustrate/mesh.js';
import { picture, type Piece } from '../../lib/output/illustrate/index.js';
import { prepare } from '../../lib/pipeline.js';
import { allFixtureNames, fixture, type FixtureName } from '../helpers/fixtures.js';
import { helveticaWidths } from '../helpers/helvetica.js';
import { byDay } from '../helpers/seeds.js';

const from = { azimuth: -1.1, elevation: 0.7 };

function box(x: number, y: number, z: number, size: number): Piece {
  const outline = [
    [0, 0],
    [size, 0],
    [size, size],
    [0, size],
  ] as const;
  return {
    body: { role: 'rib', parts: [], shape: { kind: 'plate', outline, holes: [], thickness: size } },
    frame: { origin: [x, y, z], x: [1, 0, 0], y: [0, 1, 0] },
    moved: [0, 0, 0],
    look: 'there',
  };
}

interface Line {
  readonly a: { readonly x: number; readonly y: number };
  readonly b: { readonly x: number; readonly y: number };
}

/** The straight pieces of path data as the pictures have it: M with whole numbers, then relative steps. */
function linesOf(data: string): Line[] {
  const lines: Line[] = [];
  for (const [, x = '', y = '', rest = ''] of data.matchAll(/M(-?\d+) (-?\d+)([^M]*)/g)) {
    let at = { x: Number(x), y: Number(y) };
    const steps = (rest.match(/-?\d+/g) ?? []).map(Number);
    for (let i = 0; i + 1 < steps.length; i += 2) {
      const to = { x: at.x + steps[i]!, y: at.y + steps[i + 1]! };
      lines.push({ a: at, b: to });
      at = to;
    }
  }
  return lines;
}

const lengthOf = (lines: readonly Line[]): number =>
  lines.reduce((sum, { a, b }) => sum + Math.hypot(b.x - a.x, b.y - a.y), 0);

function seen(pieces: readonly Piece[]) {
  const eye = camera(from);
  const canvas = canvasFor(eye, pieces.flatMap(cornersOf), 1000, 800, { side: 20, top: 20, bottom: 20 });
  return { ...seenOf(pieces, eye, canvas), canvas, eye };
}

describe('what hides what', () => {
  it('a cube shows nine of its twelve edges', () => {
    const piece = box(0, 0, 0, 100);
    const { groups, canvas } = seen([piece]);
    // three edges meet in the corner that is farthest from the eye, and those are hidden
    const corners = cornersOf(piece).map(canvas.project);
    const { edges } = meshOf(piece.body.shape);
    const far = corners.reduce((best, corner, i) => (corner.near < corners[best]!.near ? i : best), 0);
    const shown = edges
      .filter((edge) => edge.from !== far && edge.to !== far)
      .map((edge) => ({ a: corners[edge.from]!, b: corners[edge.to]! }));
    expect(shown).toHaveLength(9);
    expect(lengthOf(linesOf(groups[0]!.lines))).toBeCloseTo(lengthOf(shown), -2);
  });

  it('nothing is seen of a cube behind a larger one', () => {
    const small = { ...box(-28, 589, -206, 40), look: 'new' as const };
    const { groups } = seen([box(0, 0, 0, 400), small]);
    expect(groups.find(({ look }) => look === 'new')!.lines).toBe('');
    expect(seen([small]).groups[0]!.lines).not.toBe('');
  });
});

function inputOf(name: FixtureName): BookInput {
  const prepared = prepare(fixture(name));
  const { dish } = prepared;
  const facets = Array.from({ length: 17 }, (_, i) =>
    facetAt(dish, dish.litFrom + ((dish.litTo - dish.litFrom) * i) / 16),
  );
  // what the steps do not ask for is left out
  return { ...prepared, facets, battens: [], thicknessRanges: [], stand: null } as unknown as BookInput;
}

const inside = ({ x, y }: Seen, rings: readonly (readonly Seen[])[]): boolean => {
  let odd = false;
  for (const ring of rings)
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length]!;
      if (p.y > y !== q.y > y && x < p.x + ((y - p.y) * (q.x - p.x)) / (q.y - p.y)) odd = !odd;
    });
  return odd;
};

it('lines of ribs that stand behind each other end where a ray to the eye meets wood', () => {
  const input = inputOf('press-house');
  const model = dishModel(input);
  const stage = { input, model, from, R: input.dish.apertureRadius };
  const { pieces } = sceneOf('other-ribs', stage, '');
  const { groups, canvas, eye } = seen(pieces);
  const lines = groups.flatMap(({ lines: data }) => linesOf(data));
  // every face of every piece as a plane over the picture
  const faces = pieces.flatMap((piece) => {
    const mesh = meshOf(piece.body.shape);
    const space = mesh.points.map((point) => inSpace(piece, point));
    return mesh.faces.flatMap(({ rings }) => {
      const n = normal(rings[0]!.map((i) => space[i]!));
      const toward = n[0] * eye.toward[0] + n[1] * eye.toward[1] + n[2] * eye.toward[2];
      if (toward < 0.02) return [];
      const flat = rings.map((ring) => ring.map((i) => canvas.project(space[i]!)));
      return [{ flat, n, toward, corner: space[rings[0]![0]!]! }];
    });
  });
  let [hidden, shown, wrong] = [0, 0, 0];
  pieces.forEach((piece, k) => {
    if (piece.body.role !== 'rib' || k % 3 > 0) return;
    const mesh = meshOf(piece.body.shape);
    const space = mesh.points.map((point) => inSpace(piece, point));
    for (const edge of mesh.edges.filter(({ smooth }) => !smooth)) {
      const [a, b] = [space[edge.from]!, space[edge.to]!];
      const point = [0, 1, 2].map((i) => (a[i]! + b[i]!) / 2) as [number, number, number];
      const place = canvas.project(point);
      // how far before the point each face lies on the ray to the eye, mm
      const before = faces
        .filter(({ flat }) => inside(place, flat))
        .map(({ n, corner, toward }) => {
          const off = n[0] * (corner[0] - point[0]) + n[1] * (corner[1] - point[1]) + n[2] * (corner[2] - point[2]);
          return off / toward;
        });
      const nearest = Math.max(-Infinity, ...before);
      // too close to say
      if (nearest > 0.2 && nearest < 4) continue;
      // of two faces that look away nothing is drawn
      const facing = edge.faces.some((face) => {
        if (face === null) return false;
        const m = normal(mesh.faces[face]!.rings[0]!.map((i) => space[i]!));
        return m[0] * eye.toward[0] + m[1] * eye.toward[1] + m[2] * eye.toward[2] > 0.02;
      });
      if (!facing) continue;
      const ends = [canvas.project(a), canvas.project(b)] as const;
      // the direction of a short edge is lost in whole numbers
      if (Math.hypot(ends[0].x - ends[1].x, ends[0].y - ends[1].y) < 12) continue;
      const drawn = lines.some(({ a: p, b: q }) => distance(place, p, q) < 1.6 && parallel(p, q, ...ends));
      if (nearest >= 4) hidden += 1;
      else shown += 1;
      if (drawn === nearest >= 4) wrong += 1;
    }
  });
  expect(hidden).toBeGreaterThan(25);
  expect(shown).toBeGreaterThan(100);
  // a hidden edge may come to lie along a line that is seen
  expect(wrong, `${hidden} hidden, ${shown} shown`).toBeLessThan(0.02 * (hidden + shown));
});

interface Flat {
  readonly x: number;
  readonly y: number;
}

function distance(p: Flat, a: Flat, b: Flat): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const t = Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

const parallel = (p: Flat, q: Flat, a: Flat, b: Flat): boolean => {
  const [u, v] = [Math.atan2(q.y - p.y, q.x - p.x), Math.atan2(b.y - a.y, b.x - a.x)];
  return Math.abs(Math.sin(u - v)) < 0.1;
};

// the width of a text as the PDF's own font has it
let widthOf: (text: string, size: number) => number;
beforeAll(async () => {
  widthOf = await helveticaWidths();
});

interface Box {
  readonly text: string;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** The texts of a picture with their boxes, the ring of a balloon for its number. */
function boxesOf(svg: string): Box[] {
  const balloons = [...svg.matchAll(/<circle class="balloon" cx="(-?\d+)" cy="(-?\d+)" r="(\d+)"/g)];
  const texts = [
    ...svg.matchAll(/<text class="(\w+)" x="(-?\d+)" y="(-?\d+)" font-size="(\d+)"[^>]*>([^<]*)<\/text>/g),
  ];
  let k = 0;
  return texts.map(([, kind = '', x = '', y = '', size = '', text = '']) => {
    if (kind === 'number') {
      const [cx = 0, cy = 0, r = 0] = (balloons[k++] ?? []).slice(1).map(Number);
      return { text, minX: cx - r, minY: cy - r, maxX: cx + r, maxY: cy + r };
    }
    const wide = widthOf(text, Number(size));
    const start = kind === 'row' ? Number(x) : Number(x) - wide / 2;
    // capitals of Helvetica are 718 thousandths high (AFM of the core fonts)
    return { text, minX: start, maxX: start + wide, minY: Number(y) - 0.718 * Number(size), maxY: Number(y) };
  });
}

function crowded(svg: string): string[] {
  const [, left = 0, top = 0, width = 0, height = 0] = (/viewBox="(\S+) (\S+) (\S+) (\S+)"/.exec(svg) ?? []).map(
    Number,
  );
  const boxes = boxesOf(svg);
  return boxes.flatMap((a, i) => [
    ...(a.minX < left || a.minY < top || a.maxX > left + width || a.maxY > top + height
      ? [`${a.text} leaves the picture`]
      : []),
    ...boxes
      .slice(i + 1)
      .filter((b) => a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY)
      .map((b) => `${a.text} and ${b.text} overlap`),
  ]);
}

const names = allFixtureNames.filter((_, i) => byDay(i % 3, 0) === 0);

describe.each(names)('the steps of %s', (name) => {
  let input: BookInput;
  let steps: string[];
  beforeAll(() => {
    input = inputOf(name);
    const paper = paperFor(input.design.units);
    const stage = { model: dishModel(input), from, paper };
    const chapter = assemblyBlocks(input, measuresIn(input.design.units), stage)
      .map(({ body }) => body.text)
      .join('');
    steps = chapter.split('<li class="step">').slice(1);
  });
  const picturesOf = (step: string) => step.match(/<svg class="dish.*?<\/svg>/gs) ?? [];

  it('have texts that do not overlap and stay within their pictures', () => {
    expect(steps.flatMap(picturesOf).flatMap(crowded)).toEqual([]);
  });

  it('have a picture each, and no two the same', () => {
    const lines = steps.map((step) =>
      (step.match(/<svg class="(?:dish|plan).*?<\/svg>/gs) ?? []).join('').replace(/ aria-label="[^"]*"/g, ''),
    );
    for (const one of lines) expect(one.length).toBeGreaterThan(500);
    expect(new Set(lines).size).toBe(lines.length);
  });

  it('number what is new as the part list does', () => {
    for (const step of steps) {
      const needed = [...step.matchAll(/<b class="ball">(\d+)<\/b> (\d+) × ([^<]+)/g)];
      for (const [, number = '', , part = ''] of needed)
        expect(input.parts[Number(number) - 1]?.name.toLowerCase()).toBe(part);
      const balloons = [...step.matchAll(/class="number"[^>]*>(\d+)</g)].map(([, number]) => Number(number));
      for (const number of balloons) expect(number).toBeLessThanOrEqual(input.parts.length);
    }
  });

  it('ask for all ribs, and for all screws of the cleats', () => {
    const sum = (pattern: RegExp, among: readonly string[]): number =>
      among.flatMap((step) => [...step.matchAll(pattern)].map(([, count]) => Number(count))).reduce((a, b) => a + b, 0);
    const set = steps.filter((step) => /Dry-fit ribs|Set the other ribs/.test(step));
    const all = input.dish.layout.ribs.length;
    const slotted = steps.filter((step) => step.includes('Glue in all ribs'));
    expect(sum(/<\/b> (\d+) × rib</g, slotted.length > 0 ? slotted : set)).toBe(all);
    const screws = input.assembly.fasteners.filter(({ joint }) => joint === 'cleat-to-board').length;
    expect(sum(/<li>(\d+) × countersunk screw/g, set)).toBe(screws);
  });

  it('draw screws at the length that they are sold in', () => {
    for (const step of steps)
      for (const [, size = '', width = ''] of step.matchAll(
        /countersunk screw [^<]* x (\d+) mm<svg class="true" width="([\d.]+)mm"/g,
      ))
        // with the stroke's margin
        expect(Number(width)).toBeCloseTo(Number(size) + 0.6, 1);
  });
});

it('finds texts that overlap', () => {
  const svg = picture({
    pieces: [box(0, 0, 0, 100)],
    notes: [
      { kind: 'label', at: [0, 0, 0], text: 'one place' },
      { kind: 'label', at: [1, 0, 0], text: 'the other' },
    ],
    from,
    label: '',
  }).text;
  expect(crowded(svg)).toEqual([]);
  const [a, b] = boxesOf(svg);
  const moved = svg.replace(
    /(<text class="on" x=")\d+(" y=")\d+("[^>]*>the other)/,
    `$1${Math.round((a!.minX + a!.maxX) / 2)}$2${Math.round(a!.maxY)}$3`,
  );
  expect(b).toBeDefined();
  expect(crowded(moved)).toEqual(['one place and the other overlap']);
});
