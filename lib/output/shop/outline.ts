/** The measures of a part's outline. */
import { element, type Point } from '../../geometry/index.js';
import {
  type Corners,
  cornersSketch,
  cornersTable,
  curveTable,
  flatsTable,
  type NamedCurve,
  namedCurves,
} from './corners.js';
import { type Described, type Label, lettersFrom, type RailValue } from './described.js';
import type { Printing } from './printing.js';
import { measureRing, pointAlong } from './ring.js';
import type { RingSketch } from './sketch.js';
import type { Table } from './table.js';
import type { Axis, Fact } from './types.js';
import type { View } from './view.js';

/** Values closer than this share a dimension, mm. */
const ALIKE = 0.01;
/** So many equal roundings are stated once. */
const MANY = 3;
/** More values than this crowd along a side: the corners stand in a table then. */
const MAX_VALUES = 24;
/** Edges that slope by less over their length have no angle of their own, mm; nor have more than a few. */
const MIN_SLOPE = 3;
const MAX_SLOPES = 4;

export type OutlineMeasures = Pick<Described, 'rails' | 'labels' | 'tables' | 'notes'> & {
  readonly sketch: RingSketch;
  /** How many letters are taken. */
  readonly letters: number;
};

/** Running dimensions of all corners along an axis: each value once. */
function railsOf(corners: Corners['corners'], axis: Axis, view: View, printing: Printing): RailValue[] {
  const both = axis === 'y' && view.symmetric;
  const values = new Map<string, { value: number; from: Point[]; states: Fact[] }>();
  corners.forEach((corner, i) => {
    const value = both ? Math.abs(corner[axis]) : corner[axis];
    const near = [...values.values()].find((one) => Math.abs(one.value - value) < ALIKE);
    const opposite = both && corner[axis] < 0;
    const fact: Fact = { of: 'corner', ring: 0, corner: i, axis, ...(opposite ? { opposite } : {}) };
    const entry = near ?? { value, from: [], states: [] };
    if (!opposite) entry.from.push(corner);
    entry.states.push(fact);
    if (near === undefined) values.set(String(values.size), entry);
  });
  return [...values.values()]
    .sort((a, b) => a.value - b.value)
    .map(({ value, from, states }) => ({
      axis,
      value,
      from,
      states,
      text: `${both && value > 0 ? '±' : ''}${printing.length(value)}`,
    }));
}

/** Roundings: each by itself, or once where many are alike. */
function roundingLabels({ corners }: Corners, printing: Printing): Label[] {
  const groups = new Map<string, { at: Point; states: Fact[] }>();
  corners.forEach(({ x, y, radius }, corner) => {
    if (radius === null) return;
    const text = printing.length(radius);
    const group = groups.get(text) ?? { at: { x, y }, states: [] };
    group.states.push({ of: 'rounding', ring: 0, corner });
    groups.set(text, group);
  });
  return [...groups].flatMap(([text, { at, states }]): Label[] =>
    states.length >= MANY
      ? [{ text: `${states.length} × R${text}`, at, leader: true, states }]
      : states.map((fact) => {
          const corner = fact.of === 'rounding' ? corners[fact.corner] : undefined;
          return { text: `R${text}`, at: corner ?? at, leader: true, states: [fact] };
        }),
  );
}

/** Arcs between corners: their radius beside them; a middle that has to be stated in a table. */
function arcMeasures({ edges }: Corners, printing: Printing): { labels: Label[]; tables: Table[] } {
  const labels: Label[] = [];
  const rows: Table['rows'][number][] = [];
  edges.forEach((edge, i) => {
    if (edge.kind !== 'arc') return;
    const fact = (what: 'radius' | Axis): Fact => ({ of: 'arc', ring: 0, edge: i, what });
    const radius = `R${printing.length(edge.radius)}`;
    if (edge.about === 'measured')
      rows.push([
        { text: radius, states: [fact('radius')] },
        { text: printing.length(edge.centre.x), states: [fact('x')] },
        { text: printing.length(edge.centre.y), states: [fact('y')] },
      ]);
    const text = edge.about === 'origin' ? `${radius} about the axis` : radius;
    labels.push({ text, at: edge.middle, leader: true, states: edge.about === 'measured' ? [] : [fact('radius')] });
  });
  const tables = rows.length > 0 ? [{ title: 'Middles of arcs', heads: ['arc', 'x', 'y'], rows }] : [];
  return { labels, tables };
}

/** A saw is set by the angle of a sloping edge: auxiliary, in parentheses (ISO 129-1). */
function slopeLabels({ corners, edges }: Corners, printing: Printing): Label[] {
  const slopes = edges.flatMap((edge, i): Label[] => {
    const [a, b] = [element(corners, i), element(corners, (i + 1) % corners.length)];
    const [dx, dy] = [Math.abs(b.x - a.x), Math.abs(b.y - a.y)];
    if (edge.kind !== 'straight' || Math.min(dx, dy) < MIN_SLOPE || a.radius !== null || b.radius !== null) return [];
    const text = `(${printing.angle(Math.round((Math.atan2(dy, dx) * 1800) / Math.PI) * (Math.PI / 1800))})`;
    return [{ text, at: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, leader: true, states: [] }];
  });
  return slopes.length <= MAX_SLOPES ? slopes : [];
}

function curveLabel({ name, curve }: NamedCurve): Label {
  const { path, along } = curve;
  const middle = (element(path, 0)[along] + element(path, path.length - 1)[along]) / 2;
  return { text: name, at: pointAlong(path, along, middle), leader: true, states: [] };
}

function cornerMeasures(ring: Corners, view: View, printing: Printing): OutlineMeasures {
  const curves = namedCurves(ring, view.symmetric, lettersFrom(0));
  const shape = cornersSketch(ring, curves);
  const shown = curves.filter(({ opposite }) => !opposite);
  const letters = new Set(curves.map(({ name }) => name)).size;
  const arcs = arcMeasures(ring, printing);
  const curved = {
    labels: shown.map(curveLabel),
    tables: shown.map((one) => curveTable(one, view.symmetric, printing)),
    notes: shown.map(({ name }) => `Curve ${name}: mark its points out and join them along a bent batten.`),
  };
  if (ring.times > 1) {
    const title = `Outline: ${ring.times} times round, pitch ${printing.angle((2 * Math.PI) / ring.times)}, the first about x`;
    return {
      sketch: { kind: 'repeated', times: ring.times, ...shape },
      rails: [],
      labels: curved.labels,
      tables: [cornersTable(title, 0, ring, printing), ...curved.tables],
      notes: curved.notes,
      letters,
    };
  }
  const rails = (['x', 'y'] as const).map((axis) => railsOf(ring.corners, axis, view, printing));
  if (rails.some(({ length }) => length > MAX_VALUES))
    return {
      sketch: { kind: 'corners', ...shape },
      rails: [],
      labels: curved.labels,
      tables: [cornersTable('Outline, anticlockwise', 0, ring, printing), ...curved.tables],
      notes: curved.notes,
      letters,
    };
  return {
    sketch: { kind: 'corners', ...shape },
    rails: rails.flat(),
    labels: [
      ...roundingLabels(ring, printing),
      ...arcs.labels,
      ...curved.labels,
      ...(view.polar ? [] : slopeLabels(ring, printing)),
    ],
    tables: [...curved.tables, ...arcs.tables],
    notes: curved.notes,
    letters,
  };
}

/** How the outline is measured. */
export function outlineMeasures(view: View, printing: Printing): OutlineMeasures {
  const ring = measureRing(element(view.rings, 0), view.polar);
  if (ring.kind === 'corners') return cornerMeasures(ring, view, printing);
  if (ring.kind === 'circle') {
    const reach = ring.diameter / 2 / Math.SQRT2;
    const label: Label = {
      text: `Ø${printing.length(ring.diameter)}`,
      at: { x: ring.centre.x + reach, y: ring.centre.y + reach },
      leader: true,
      states: [{ of: 'circle', ring: 0, what: 'diameter' }],
    };
    return { sketch: { kind: 'circle' }, rails: [], labels: [label], tables: [], notes: [], letters: 0 };
  }
  const { sides, radius } = ring;
  const corner = radius / Math.cos(Math.PI / sides);
  const flat = 2 * radius * Math.tan(Math.PI / sides);
  return {
    sketch: { kind: 'regular', sides },
    rails: [],
    labels: [],
    tables: [flatsTable('Outline', 0, ring, printing)],
    // auxiliary dimensions stand in parentheses (ISO 129-1)
    notes: [
      `Across opposite flats (${printing.length(2 * radius)}), across corners (${printing.length(2 * corner)}), each flat (${printing.length(flat)}) long.`,
    ],
    letters: 0,
  };
}
