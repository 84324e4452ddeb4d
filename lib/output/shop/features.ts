/** Holes, openings and scribed lines: those that repeat round the origin once, with their pitch. */
import { element, type Point, type Vertex } from '../../geometry/index.js';
import type { Hole } from '../../part/index.js';
import { type Corners, cornersSketch, cornersTable, curveTable, namedCurves } from './corners.js';
import { type Described, type Label, lettersFrom } from './described.js';
import { type Item, type Placed, placedItems } from './pattern.js';
import type { Printing } from './printing.js';
import { measureRing, type MeasuredRing } from './ring.js';
import type { FeatureSketch, RingSketch } from './sketch.js';
import type { Cell, Table } from './table.js';
import type { Fact } from './types.js';
import type { View } from './view.js';

export type FeatureMeasures = Pick<Described, 'rings' | 'features' | 'labels' | 'tables'>;

export interface Named extends Placed {
  readonly id: string;
}

const pointOf = ({ x, y }: Point): Vertex => ({ x, y, bulge: 0 });

/** One letter for what is alike; with a number where it stands in several places that make no pattern. */
export function named(placed: readonly Placed[], letter: (index: number) => string): Named[] {
  const keys = [...new Set(placed.map(({ items }) => element(items, 0).key))];
  return keys.flatMap((key, i) => {
    const alike = placed.filter(({ items }) => element(items, 0).key === key);
    return alike.map((one, k) => ({ ...one, id: alike.length === 1 ? letter(i) : `${letter(i)}${k + 1}` }));
  });
}

export const sketchOf = ({ id, places, items }: Named, kind: FeatureSketch['kind']): FeatureSketch => ({
  id,
  kind,
  places,
  of: items.map(({ index }) => index),
});

/** Heads and cells of how a feature repeats; none where nothing in the table does. */
export function repeats(all: readonly Named[], printing: Printing): { heads: string[]; cells: (one: Named) => Cell[] } {
  if (all.every(({ places }) => places === 'single')) return { heads: [], cells: () => [] };
  return {
    heads: ['number', 'first at', 'pitch'],
    cells: ({ id, places, items, first, pitch }) => {
      if (places === 'single') return [{ text: '1' }, { text: '' }, { text: '' }];
      const fact = (what: 'count' | 'first' | 'pitch'): Fact[] => [{ of: 'pattern', feature: id, what }];
      return [
        { text: String(items.length), states: fact('count') },
        { text: printing.angle(first), states: fact('first') },
        { text: printing.angle(pitch), states: fact('pitch') },
      ];
    },
  };
}

function sizeCells(id: string, hole: Hole, printing: Printing): Cell[] {
  const fact = (what: 'diameter' | 'depth' | 'countersink'): Fact[] => [{ of: 'hole', feature: id, what }];
  return [
    { text: `Ø${printing.drill(hole.diameter)}`, states: fact('diameter') },
    hole.depth === 'through' ? { text: 'through' } : { text: printing.drill(hole.depth), states: fact('depth') },
    hole.countersink === undefined
      ? { text: '' }
      : { text: `Ø${printing.length(hole.countersink)} × 90°`, states: fact('countersink') },
    { text: hole.from === 'front' ? '' : 'back' },
  ];
}

/** Drops the columns in which no row has anything. */
function dense(table: Table): Table {
  const used = table.heads.map((_, i) => table.rows.some((row) => (row[i]?.text ?? '') !== ''));
  return {
    title: table.title,
    heads: table.heads.filter((_, i) => used[i]),
    rows: table.rows.map((row) => row.filter((_, i) => used[i])),
  };
}

function holeMeasures(view: View, printing: Printing, letter: (i: number) => string): FeatureMeasures {
  const items = view.holes.map((hole, index): Item => {
    const key = [hole.diameter.toFixed(4), hole.depth, hole.countersink ?? '', hole.from].join(' ');
    return { index, key, vertices: [pointOf(hole)], closed: false };
  });
  const all = named(placedItems(items, view.polar, view.base), letter);
  const again = repeats(all, printing);
  const rows = all.map((one): Cell[] => {
    const hole = element(view.holes, element(one.items, 0).index);
    const at = element(one.vertices, 0);
    const place = (axis: 'x' | 'y'): Cell => ({
      text: printing.length(at[axis]),
      states: [{ of: 'hole', feature: one.id, what: axis }],
    });
    const radius = Math.hypot(at.x, at.y);
    return [
      { text: one.id },
      ...sizeCells(one.id, hole, printing),
      place('x'),
      place('y'),
      ...again.cells(one),
      ...(again.heads.length > 0 ? [{ text: `(${printing.length(radius)})` }] : []),
    ];
  });
  const heads = ['hole', 'drill', 'depth', 'countersink', 'from', 'x', 'y', ...again.heads, 'on R'];
  return {
    rings: [],
    features: all.map((one) => sketchOf(one, 'hole')),
    labels: all.map((one) => holeLabel(one, view)),
    tables: rows.length > 0 ? [dense({ title: 'Holes', heads, rows })] : [],
  };
}

function holeLabel({ id, items }: Named, view: View): Label {
  const { x, y } = element(view.holes, element(items, 0).index);
  return { text: id, at: { x, y }, leader: false, states: [] };
}

/** A rectangle along the axes; null where a ring is none. */
function rectangleOf(ring: MeasuredRing): { x: [number, number]; y: [number, number]; corners: Corners } | null {
  if (ring.kind !== 'corners' || ring.corners.length !== 4) return null;
  const plain =
    ring.edges.every(({ kind }) => kind === 'straight') && ring.corners.every(({ radius }) => radius === null);
  const [xs, ys] = [ring.corners.map(({ x }) => x), ring.corners.map(({ y }) => y)];
  const [minX, maxX, minY, maxY] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const atEnds = (value: number, a: number, b: number): boolean => Math.min(value - a, b - value) < 1e-4;
  if (!plain || !ring.corners.every(({ x, y }) => atEnds(x, minX, maxX) && atEnds(y, minY, maxY))) return null;
  return { x: [minX, maxX], y: [minY, maxY], corners: ring };
}

/** Facts of the corners that lie at one end of a rectangle. */
function endFacts(ring: number, { corners }: Corners, axis: 'x' | 'y', value: number): Fact[] {
  return corners.flatMap((corner, i): Fact[] =>
    Math.abs(corner[axis] - value) < 1e-4 ? [{ of: 'corner', ring, corner: i, axis }] : [],
  );
}

interface MeasuredOpening extends Named {
  readonly ring: number;
  readonly measured: MeasuredRing;
}

function rectangleTable(openings: readonly MeasuredOpening[], printing: Printing): Table[] {
  const found = openings.flatMap((one) => {
    const rectangle = rectangleOf(one.measured);
    return rectangle ? [{ one, rectangle }] : [];
  });
  if (found.length === 0) return [];
  const again = repeats(
    found.map(({ one }) => one),
    printing,
  );
  const rows = found.map(({ one, rectangle }): Cell[] => {
    const ends = (axis: 'x' | 'y'): Cell[] =>
      rectangle[axis].map((value) => ({
        text: printing.length(value),
        states: endFacts(one.ring, rectangle.corners, axis, value),
      }));
    return [{ text: one.id }, ...ends('x'), ...ends('y'), ...again.cells(one)];
  });
  return [
    { title: 'Openings, square cornered', heads: ['opening', 'x from', 'to', 'y from', 'to', ...again.heads], rows },
  ];
}

function circleTable(openings: readonly MeasuredOpening[], printing: Printing): Table[] {
  const found = openings.flatMap((one) => (one.measured.kind === 'circle' ? [{ one, circle: one.measured }] : []));
  if (found.length === 0) return [];
  const again = repeats(
    found.map(({ one }) => one),
    printing,
  );
  const rows = found.map(({ one, circle }): Cell[] => {
    const fact = (what: 'diameter' | 'x' | 'y'): Fact[] => [{ of: 'circle', ring: one.ring, what }];
    return [
      { text: one.id },
      { text: `Ø${printing.length(circle.diameter)}`, states: fact('diameter') },
      { text: printing.length(circle.centre.x), states: fact('x') },
      { text: printing.length(circle.centre.y), states: fact('y') },
      ...again.cells(one),
    ];
  });
  return [{ title: 'Openings, round', heads: ['opening', 'cut', 'x', 'y', ...again.heads], rows }];
}

function ringSketch({ measured }: MeasuredOpening, letter: (i: number) => string): RingSketch {
  if (measured.kind === 'circle') return { kind: 'circle' };
  if (measured.kind === 'regular') return { kind: 'regular', sides: measured.sides };
  return { kind: 'corners', ...cornersSketch(measured, namedCurves(measured, false, letter)) };
}

function openingMeasures(view: View, printing: Printing, letter: (i: number) => string): FeatureMeasures {
  const items = view.rings.slice(1).map((vertices, i): Item => {
    const sweep = vertices.reduce((sum, { bulge }) => sum + Math.abs(bulge), 0);
    const [a, b] = [element(vertices, 0), element(vertices, 1)];
    // round ones of one size share a letter
    const size = vertices.length === 2 ? Math.hypot(a.x - b.x, a.y - b.y).toFixed(3) : '';
    const deep = view.depths.get(i + 1)?.toFixed(3) ?? '';
    const key = `ring ${vertices.length} ${sweep.toFixed(3)} ${size} ${deep}`;
    return { index: i + 1, key, vertices, closed: true };
  });
  const all = named(placedItems(items, view.polar, view.base), letter);
  const openings = all.map((one): MeasuredOpening => ({
    ...one,
    ring: element(one.items, 0).index,
    measured: measureRing(one.vertices, false),
  }));
  const curve = (one: MeasuredOpening) => (i: number) => `${one.id}${'abcdefgh'.charAt(i)}`;
  const rings: RingSketch[] = items.map(() => ({ kind: 'copy' }));
  for (const one of openings) rings[one.ring - 1] = ringSketch(one, curve(one));
  const others = openings.filter(({ measured }) => measured.kind === 'corners' && rectangleOf(measured) === null);
  return {
    rings,
    features: openings.map((one) => sketchOf(one, 'ring')),
    labels: openings.map((one) => openingLabel(one, view)),
    tables: [
      ...rectangleTable(openings, printing),
      ...circleTable(openings, printing),
      ...others.flatMap((one) => otherTables(one, view.depths.get(one.ring) ?? null, curve(one), printing)),
    ],
  };
}

/** @param depth of a pocket; null for what is cut through */
function otherTables(
  one: MeasuredOpening,
  depth: number | null,
  letter: (i: number) => string,
  printing: Printing,
): Table[] {
  if (one.measured.kind !== 'corners') return [];
  const again = repeats([one], printing).cells(one);
  const title = depth === null ? `Opening ${one.id}` : `Groove ${one.id}, ${printing.length(depth)} deep`;
  const table = cornersTable(title, one.ring, one.measured, printing);
  // how it repeats stands in the first row
  const heads = again.length > 0 ? ['number', 'first at', 'pitch'] : [];
  const rows = table.rows.map((row, i) => [...row, ...(i === 0 ? again : again.map(() => ({ text: '' })))]);
  return [
    { ...table, heads: [...table.heads, ...heads], rows },
    ...namedCurves(one.measured, false, letter).map((curve) => curveTable(curve, false, printing)),
  ];
}

function openingLabel({ id, items }: Named, view: View): Label {
  const ring = element(view.rings, element(items, 0).index);
  const at = {
    x: ring.reduce((sum, { x }) => sum + x, 0) / ring.length,
    y: ring.reduce((sum, { y }) => sum + y, 0) / ring.length,
  };
  return { text: id, at, leader: false, states: [] };
}

/** Holes and openings, lettered from `letters` on. */
export function featureMeasures(view: View, printing: Printing, letters: number): FeatureMeasures {
  const holes = holeMeasures(view, printing, lettersFrom(letters));
  const taken = new Set(holes.features.map(({ id }) => id.replace(/\d+$/, ''))).size;
  const openings = openingMeasures(view, printing, lettersFrom(letters + taken));
  return {
    rings: openings.rings,
    features: [...holes.features, ...openings.features],
    labels: [...holes.labels, ...openings.labels],
    tables: [...holes.tables, ...openings.tables],
  };
}
