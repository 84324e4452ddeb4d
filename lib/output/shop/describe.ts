/** What a drawing shows of a part. */
import { bounds, element, strokeTextWidth } from '../../geometry/index.js';
import type { Part } from '../../part/index.js';
import { type Described, type Label, lettersFrom } from './described.js';
import { featureMeasures } from './features.js';
import { outlineMeasures } from './outline.js';
import type { Printing } from './printing.js';
import { lineMeasures } from './scribed.js';
import type { Cell, Table } from './table.js';
import type { Fact } from './types.js';
import type { View } from './view.js';

/** Numbers and single letters are shown where they stand; longer lettering is quoted in the notes. */
const isShort = (text: string): boolean => /^(\d+|[a-z])$/i.test(text);

/** A direction from 0 to a whole turn. */
function whole(angle: number): number {
  const turn = 2 * Math.PI;
  const up = ((angle % turn) + turn) % turn;
  return turn - up < 1e-6 ? 0 : up;
}

function edgeHoleTable({ edgeHoles }: View, printing: Printing): Table[] {
  if (edgeHoles.length === 0) return [];
  const rows = edgeHoles.map(({ x, y, diameter, length, height, direction }, hole): Cell[] => {
    const cell = (what: Extract<Fact, { of: 'edge-hole' }>['what'], text: string): Cell => ({
      text,
      states: [{ of: 'edge-hole', hole, what }],
    });
    return [
      cell('x', printing.length(x)),
      cell('y', printing.length(y)),
      cell('direction', printing.angle(whole(direction))),
      cell('diameter', `Ø${printing.drill(diameter)}`),
      cell('length', printing.length(length)),
      cell('height', printing.length(height)),
    ];
  });
  const heads = ['x', 'y', 'towards', 'drill', 'deep', 'above the back'];
  return [{ title: 'Holes into the edges (dashed); 0° is along x, 90° along y', heads, rows }];
}

/** Numbers that stand on the part, as a person looks for them. */
function numberLabels({ texts }: View): Label[] {
  return texts
    .filter(({ text, face }) => face === 'front' && isShort(text))
    .map(({ text, x, y, height, angle }) => {
      // the middle of the lettering
      const [along, up] = [strokeTextWidth(text, height) / 2, height / 2];
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      const at = { x: x + along * cos - up * sin, y: y + along * sin + up * cos };
      return { text, at, leader: false, onIt: true, states: [] };
    });
}

function letteringNote({ texts }: View): string[] {
  const long = texts.filter(({ text }) => !isShort(text)).map(({ text }) => `“${text.replaceAll('{n}', '1, 2, …')}”`);
  return long.length === 0 ? [] : [`Lettering: ${[...new Set(long)].join(', ')}.`];
}

function originNote(view: View): string {
  if (view.polar)
    return view.turnDeg === 0
      ? 'x and y begin at the middle; x runs to the right, angles are counted anticlockwise from it.'
      : 'x and y begin on the dish’s axis; x runs along the lower edge, angles are counted anticlockwise from it.';
  if (view.symmetric) return 'x begins at the left end, y on the middle line: the part is symmetric about it.';
  return 'x begins at the left end of the blank, y at its lower edge.';
}

/** Widths of the ends of a part that is measured from its middle line: auxiliary, in parentheses (ISO 129-1). */
function endWidths(view: View, printing: Printing): string[] {
  if (!view.symmetric) return [];
  const outline = element(view.rings, 0);
  const { minX, maxX } = bounds(outline);
  const across = (x: number): string => {
    const ys = outline.filter((vertex) => Math.abs(vertex.x - x) < 1e-4).map(({ y }) => y);
    return `(${printing.length(Math.max(...ys) - Math.min(...ys))})`;
  };
  return [`Whole width of the left end ${across(minX)}, of the right end ${across(maxX)}.`];
}

function edgeNote({ edges }: Part): string[] {
  const has = (role: 'optical' | 'seat') => edges.some((edge) => edge.role === role);
  return [
    ...(has('optical')
      ? ['Long-dashed dotted: the edge that gives the mirror its shape; leave no saw marks on it.']
      : []),
    ...(has('seat') ? ['Wide dashed: seats against another part; straight and square to the face.'] : []),
  ];
}

const patternNote =
  'Features with a pitch are given beside the x axis: rotate their x and y about the middle by “first at”, then repeat at the pitch.';

/** The measures of a part, its labels, tables and notes. */
export function describe(part: Part, view: View, printing: Printing): Described {
  const outline = outlineMeasures(view, printing);
  const features = featureMeasures(view, printing, outline.letters);
  const taken = new Set(features.features.map(({ id }) => id.replace(/\d+$/, ''))).size;
  const lines = lineMeasures(view, printing, lettersFrom(outline.letters + taken));
  const all = [...features.features, ...lines.features];
  const turned = all.some(({ places }) => places !== 'single');
  return {
    rings: [outline.sketch, ...features.rings],
    features: all,
    pins: lines.pins,
    scribed: lines.scribed,
    rails: outline.rails,
    labels: [...outline.labels, ...features.labels, ...lines.labels, ...numberLabels(view)],
    tables: [...outline.tables, ...features.tables, ...lines.tables, ...edgeHoleTable(view, printing)],
    notes: [
      originNote(view),
      ...(turned ? [patternNote] : []),
      ...endWidths(view, printing),
      ...outline.notes,
      ...lines.notes,
      ...edgeNote(part),
      ...letteringNote(view),
      ...part.notes,
    ],
  };
}
