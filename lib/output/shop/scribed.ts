/** Scribed lines: where a person draws them. */
import { distance, element, type Vertex } from '../../geometry/index.js';
import { flatsTable } from './corners.js';
import type { Described, Label } from './described.js';
import { named, type Named, repeats, sketchOf } from './features.js';
import { type Item, placedItems } from './pattern.js';
import type { Printing } from './printing.js';
import { measureRing } from './ring.js';
import type { ScribedSketch } from './sketch.js';
import type { Cell, Table } from './table.js';
import type { View } from './view.js';

type LineMeasures = Pick<Described, 'features' | 'pins' | 'scribed' | 'labels' | 'tables' | 'notes'>;

/** A mark across the place of a pin or staple is no longer than this, mm. */
const PIN = 6;
/** Single lines get a letter on the drawing up to this number. */
const MAX_LETTERED = 6;

const isPin = ({ vertices, closed }: Item): boolean =>
  !closed && vertices.length === 2 && distance(element(vertices, 0), element(vertices, 1)) < PIN;

/** Ends of a line, or opposite corners of a rectangle along the axes; null for anything else. */
function endsOf({ vertices, items }: Named): readonly [number, number, number, number] | null {
  const [a, b, c] = vertices;
  if (a === undefined || b === undefined) return null;
  const { closed } = element(items, 0);
  if (c === undefined) return closed ? null : [a.x, a.y, b.x, b.y];
  if (!closed || vertices.length !== 4) return null;
  const level = (p: { x: number; y: number }, q: { x: number; y: number }): boolean =>
    Math.min(Math.abs(p.x - q.x), Math.abs(p.y - q.y)) < 1e-4;
  return vertices.every((vertex, i) => level(vertex, element(vertices, (i + 1) % 4))) ? [a.x, a.y, c.x, c.y] : null;
}

function lineTable(lines: readonly Named[], printing: Printing): Table[] {
  if (lines.length === 0) return [];
  const again = repeats(lines, printing);
  const rows = lines.flatMap((one): Cell[][] => {
    const ends = endsOf(one);
    if (ends === null) return [];
    const cells = ends.map((mm, i): Cell => ({
      text: printing.length(mm),
      states: [{ of: 'line', feature: one.id, point: i < 2 ? 0 : 1, axis: i % 2 === 0 ? 'x' : 'y' }],
    }));
    return [
      [{ text: one.id }, { text: element(one.items, 0).closed ? 'rectangle' : 'line' }, ...cells, ...again.cells(one)],
    ];
  });
  return [{ title: 'Scribed', heads: ['mark', '', 'x from', 'y from', 'x to', 'y to', ...again.heads], rows }];
}

/** Open lines of several pieces, by their points; null for the head of an arrow, which is drawn as every arrow is. */
function pathTable(one: Named, printing: Printing, isHead: (one: Named) => boolean): Table | null {
  if (element(one.items, 0).closed || endsOf(one) !== null || isHead(one)) return null;
  const bent = one.vertices.some(({ bulge }) => bulge !== 0);
  const rows = one.vertices.map(({ x, y, bulge }, point) => {
    const cell = (axis: 'x' | 'y' | 'radius', mm: number): Cell => ({
      text: printing.length(mm),
      states: [{ of: 'line', feature: one.id, point, axis }],
    });
    const radius = bulge === 0 ? { text: '' } : cell('radius', Math.hypot(x, y));
    return [cell('x', x), cell('y', y), ...(bent ? [radius] : [])];
  });
  return {
    title: `Scribed line ${one.id}, point by point`,
    heads: ['x', 'y', ...(bent ? ['R about the axis to the next'] : [])],
    rows,
  };
}

/** Whether a line is two strokes that meet where another line ends. */
const headAmong =
  (all: readonly Named[]) =>
  ({ vertices }: Named): boolean => {
    const [, tip, end] = vertices;
    const last = (one: Named): Vertex => element(one.vertices, one.vertices.length - 1);
    if (tip === undefined || end === undefined || vertices.length !== 3) return false;
    return all.some((one) => one.vertices.length === 2 && distance(last(one), tip) < 1e-4);
  };

/** How lines round the middle are stepped off with a beam compass, from where the first one ends. */
function stepNotes(lines: readonly Named[], printing: Printing): string[] {
  return lines.flatMap(({ id, places, vertices, items, first, pitch }) => {
    const end = vertices.at(-1);
    if (places === 'single' || end === undefined || vertices.length !== 2 || Math.abs(end.y) > 1e-4) return [];
    if (element(items, 0).closed) return [];
    const step = printing.length(2 * end.x * Math.sin(pitch / 2));
    const [x, y] = [end.x * Math.cos(first), end.x * Math.sin(first)].map(printing.length);
    return [`Line ${id}: the first one ends at (${x}, ${y}); from end to end it is (${step}).`];
  });
}

function pinTable(pins: readonly Item[], view: View, printing: Printing): Table[] {
  if (pins.length === 0) return [];
  const middles = pins.map(({ index, vertices: [a, b] }) => ({
    index,
    x: ((a?.x ?? 0) + (b?.x ?? 0)) / 2,
    y: ((a?.y ?? 0) + (b?.y ?? 0)) / 2,
  }));
  const rows = middles
    .sort((a, b) => a.x - b.x || a.y - b.y)
    .map((middle) =>
      (['x', 'y'] as const).map((axis): Cell => ({
        text: printing.length(middle[axis]),
        states: [{ of: 'pin', line: middle.index, axis }],
      })),
    );
  const title = `Short marks, their middles${view.symmetric ? ' (y from the middle line)' : ''}`;
  return [{ title, heads: ['x', 'y'], rows }];
}

/** A closed line that is no rectangle: where another part stands. */
function scribedOutline(one: Named, view: View, printing: Printing): { sketch: ScribedSketch; table: Table }[] {
  const { closed, index: line } = element(one.items, 0);
  if (endsOf(one) !== null || !closed) return [];
  const measured = measureRing(one.vertices, view.polar);
  const ring = view.rings.length + line;
  if (measured.kind === 'regular')
    return [
      {
        sketch: { line, ring, shape: { kind: 'regular', sides: measured.sides } },
        table: flatsTable('Scribed outline', ring, measured, printing),
      },
    ];
  if (measured.kind !== 'circle') return [];
  const diameter: Cell = {
    text: `Ø${printing.length(measured.diameter)}`,
    states: [{ of: 'circle', ring, what: 'diameter' }],
  };
  return [
    {
      sketch: { line, ring, shape: { kind: 'circle' } },
      table: { title: 'Scribed round the middle', heads: ['circle'], rows: [[diameter]] },
    },
  ];
}

/** The scribed lines of a part, lettered by `letter`. */
export function lineMeasures(view: View, printing: Printing, letter: (index: number) => string): LineMeasures {
  const items = view.lines.map(({ vertices, closed, face }, index): Item => {
    const length = vertices.slice(1).reduce((sum, v, i) => sum + distance(v, element(vertices, i)), 0);
    return { index, key: `${face} ${closed} ${vertices.length} ${length.toFixed(3)}`, vertices, closed };
  });
  const pins = view.polar ? [] : items.filter(isPin);
  const all = named(
    placedItems(
      items.filter((item) => view.polar || !isPin(item)),
      view.polar,
      view.base,
    ),
    letter,
  );
  const isHead = headAmong(all);
  const paths = all.flatMap((one) => {
    const table = pathTable(one, printing, isHead);
    return table ? [{ one, table }] : [];
  });
  const lines = all.filter((one) => endsOf(one) !== null);
  const singles = lines.filter(({ places }) => places === 'single');
  const lettered = lines.filter(({ places }) => places !== 'single' || singles.length <= MAX_LETTERED);
  const outlines = all.flatMap((one) => scribedOutline(one, view, printing));
  return {
    features: [...lines, ...paths.map(({ one }) => one)].map((one) => sketchOf(one, 'line')),
    pins: pins.map(({ index }) => index),
    scribed: outlines.map(({ sketch }) => sketch),
    labels: [...lettered, ...paths.map(({ one }) => one)].map((one) => lineLabel(one, view)),
    tables: [
      ...lineTable(lines, printing),
      ...[...paths, ...outlines].map(({ table }) => table),
      ...pinTable(pins, view, printing),
    ],
    notes: stepNotes(lines, printing),
  };
}

function lineLabel({ id, items }: Named, view: View): Label {
  const { vertices } = element(view.lines, element(items, 0).index);
  const [a, b] = [element(vertices, 0), element(vertices, 1)];
  return { text: id, at: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, leader: false, states: [] };
}
