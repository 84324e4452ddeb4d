/** Rings with corners: their sketch, their table, and the heights along their curves. */
import { element, type Path } from '../../geometry/index.js';
import type { Printing } from './printing.js';
import { type MeasuredEdge, type MeasuredRing, pointAlong } from './ring.js';
import type { CornerSketch, EdgeSketch } from './sketch.js';
import type { Cell, Table } from './table.js';
import type { Fact } from './types.js';

export type Corners = Extract<MeasuredRing, { kind: 'corners' }>;
export type Curve = Extract<MeasuredEdge, { kind: 'curve' }>;

export interface NamedCurve {
  readonly name: string;
  readonly edge: number;
  readonly curve: Curve;
  /** The mirror image of the curve of this name, below the middle line. */
  readonly opposite: boolean;
}

/** Heights along a curve are given at this many places at most. */
const MAX_STATIONS = 17;
/** A place nearer to an end than this share of the step is left out. */
const TOO_NEAR = 0.25;

/** The curves of a ring, named; on a symmetric part one name serves both sides. */
export function namedCurves({ edges }: Corners, symmetric: boolean, letter: (index: number) => string): NamedCurve[] {
  const curves = edges.flatMap((curve, edge) => (curve.kind === 'curve' ? [{ curve, edge }] : []));
  const upper = (path: Path): boolean => path.reduce((sum, { y }) => sum + y, 0) > 0;
  if (!symmetric || curves.length !== 2)
    return curves.map(({ curve, edge }, i) => ({ name: letter(i), edge, curve, opposite: false }));
  return curves.map(({ curve, edge }) => ({ name: letter(0), edge, curve, opposite: !upper(curve.path) }));
}

export function cornersSketch(
  { corners, edges }: Corners,
  curves: readonly NamedCurve[],
): { corners: CornerSketch[]; edges: EdgeSketch[] } {
  return {
    corners: corners.map(({ radius }) => ({ rounded: radius !== null })),
    edges: edges.map((edge, i): EdgeSketch => {
      if (edge.kind === 'straight') return { kind: 'straight' };
      if (edge.kind === 'arc') return { kind: 'arc', anticlockwise: edge.anticlockwise, about: edge.about };
      const named = curves.find((one) => one.edge === i);
      const { along, backwards } = edge;
      return { kind: 'curve', name: named?.name ?? '', along, backwards, opposite: named?.opposite ?? false };
    }),
  };
}

/** Places along a curve: both ends, and every step of a handy size from the origin between them. */
function stations(start: number, end: number, printing: Printing): { readonly step: number; readonly at: number[] } {
  const step =
    printing.steps.find((one) => (end - start) / one <= MAX_STATIONS - 2) ??
    element(printing.steps, printing.steps.length - 1);
  const inner: number[] = [];
  for (let k = Math.ceil(start / step); k * step < end; k++)
    if (k * step - start > TOO_NEAR * step && end - k * step > TOO_NEAR * step) inner.push(k * step);
  return { step, at: [start, ...inner, end] };
}

/** The heights of a curve. */
export function curveTable({ name, curve }: NamedCurve, symmetric: boolean, printing: Printing): Table {
  const { along, path } = curve;
  const across = along === 'x' ? 'y' : 'x';
  const { step, at } = stations(element(path, 0)[along], element(path, path.length - 1)[along], printing);
  const rows = at.map((place, station): Cell[] => {
    const height = pointAlong(path, along, place)[across];
    const fact = (what: 'along' | 'height'): Fact => ({ of: 'curve', curve: name, station, what });
    return [
      { text: printing.length(place), states: [fact('along')] },
      { text: `${symmetric ? '±' : ''}${printing.length(height)}`, states: [fact('height')] },
    ];
  });
  return {
    title: `Curve ${name}, every ${printing.length(step)} from ${printing.length(element(at, 0))}`,
    heads: [along, across],
    rows,
  };
}

/** Corners in a table, with the arcs between them. */
export function cornersTable(title: string, ring: number, { corners, edges }: Corners, printing: Printing): Table {
  const arcs = edges.some(({ kind }) => kind === 'arc');
  const centres = edges.some((edge) => edge.kind === 'arc' && edge.about === 'measured');
  const rounded = corners.some(({ radius }) => radius !== null);
  const rows = corners.map(({ x, y, radius }, corner): Cell[] => {
    const edge = element(edges, corner);
    const arc = edge.kind === 'arc' ? edge : null;
    const place = (axis: 'x' | 'y', mm: number): Cell => ({
      text: printing.length(mm),
      states: [{ of: 'corner', ring, corner, axis }],
    });
    const bend = (what: 'radius' | 'x' | 'y', mm: number | null): Cell =>
      mm === null ? { text: '' } : { text: printing.length(mm), states: [{ of: 'arc', ring, edge: corner, what }] };
    const middle = arc?.about === 'measured' ? arc.centre : null;
    return [
      { text: String(corner + 1) },
      place('x', x),
      place('y', y),
      ...(rounded
        ? [
            radius === null
              ? { text: '' }
              : { text: printing.length(radius), states: [{ of: 'rounding', ring, corner } as const] },
          ]
        : []),
      ...(arcs ? [bend('radius', arc?.radius ?? null)] : []),
      ...(centres ? [bend('x', middle?.x ?? null), bend('y', middle?.y ?? null)] : []),
    ];
  });
  return {
    title,
    heads: [
      'corner',
      'x',
      'y',
      ...(rounded ? ['rounded R'] : []),
      ...(arcs ? ['arc to next, R'] : []),
      ...(centres ? ['its middle x', 'y'] : []),
    ],
    rows,
  };
}

/** A regular polygon by its flats. */
export function flatsTable(
  title: string,
  ring: number,
  { sides, radius, direction }: Extract<MeasuredRing, { kind: 'regular' }>,
  printing: Printing,
): Table {
  const cell = (what: 'radius' | 'direction', text: string): Cell => ({ text, states: [{ of: 'flats', ring, what }] });
  return {
    title,
    heads: ['flats', 'from the middle', 'first faces'],
    rows: [
      [{ text: String(sides) }, cell('radius', printing.length(radius)), cell('direction', printing.angle(direction))],
    ],
  };
}
