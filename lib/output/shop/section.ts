/** The whole dish cut through its axis along two ribs, with the measures that count and balloons keyed to the part list. */
import {
  bounds,
  boundsOfAll,
  type Bounds,
  placeVertices,
  type Point,
  rectangle,
  regularPolygon,
  type Vertex,
} from '../../geometry/index.js';
import type { Part, PartKind } from '../../part/index.js';
import type { RailValue } from './described.js';
import { arrowHead, entity, plainWords, ringAt, straight } from './entity.js';
import { textWidth } from './font.js';
import { boxOf, type Crowd, freePlace, grown, segmentsOf } from './free-place.js';
import type { Paper } from './paper.js';
import { sheetEntities } from './part-drawing.js';
import { type OnPaper, placed } from './picture.js';
import { planPage } from './plan.js';
import type { Printing } from './printing.js';
import { LETTERS, railEntities, railLength, railReach } from './rails.js';
import type { Table } from './table.js';
import { type Title, titleHeight } from './title-block.js';
import type { Entity, LineKind, ShopDrawing, Stroke } from './types.js';

/** The dish: x from its axis, y above the board's face, mm. */
export interface DishSection {
  readonly parts: readonly Part[];
  readonly innerRadius: number;
  readonly evenRibs: boolean;
  readonly board: { readonly size: number; readonly thickness: number };
  /** Layers or discs of the hub, from below. */
  readonly hubs: readonly Bounds[];
  /** Inner end of the cleats; null where there are none. */
  readonly cleatStart: number | null;
  /** The reflecting face along the middle of a panel, from the hub to the rim. */
  readonly mirror: readonly Point[];
  /** Focus above the board. */
  readonly focus: number;
  readonly vessel: { readonly radius: number; readonly underside: number; readonly top: number } | null;
}

interface Placing {
  readonly paper: Paper;
  readonly printing: Printing;
  readonly title: (scale: string) => Title;
}

const shown: readonly PartKind[] = ['board', 'hub', 'cleat', 'rib', 'panel', 'reflector'];
/** Radius of a balloon, mm. */
const BALLOON = 3.2;
/** Between hatch lines, mm. */
const HATCH = 2;

interface Outline {
  readonly kind: PartKind | 'vessel';
  readonly line: LineKind;
  readonly vertices: readonly Vertex[];
  readonly closed: boolean;
  readonly hatched: boolean;
}

/** What the cut shows, right half and left. Ribs are cut lengthwise and therefore not hatched (ISO 128-3). */
function outlinesOf({ parts, innerRadius, evenRibs, board, hubs, cleatStart, mirror, vessel }: DishSection): Outline[] {
  const of = (kind: PartKind) => parts.find((part) => part.kind === kind);
  const [rib, cleat] = [of('rib'), of('cleat')];
  const box = (
    kind: Outline['kind'],
    { minX, minY, maxX, maxY }: Bounds,
    line: LineKind,
    hatched: boolean,
  ): Outline => ({
    kind,
    line,
    vertices: rectangle(minX, minY, maxX, maxY),
    closed: true,
    hatched,
  });
  const right: Outline[] = [];
  if (rib) {
    const vertices = placeVertices(rib.outline, { x: innerRadius, y: 0, rotationDeg: 0, mirrored: false });
    right.push({ kind: 'rib', line: 'outline', vertices, closed: true, hatched: false });
  }
  if (cleat && cleatStart !== null) {
    const { minX, maxX } = bounds(cleat.outline);
    const end = cleatStart + maxX - minX;
    right.push(box('cleat', { minX: cleatStart, maxX: end, minY: 0, maxY: cleat.thickness }, 'thin', false));
  }
  const surface = mirror.map(({ x, y }): Vertex => ({ x, y, bulge: 0 }));
  right.push({ kind: 'panel', line: 'optical', vertices: surface, closed: false, hatched: false });
  const across = { x: 0, y: 0, rotationDeg: 0, mirrored: true };
  const left = right
    .filter(({ kind }) => evenRibs || kind === 'panel')
    .map((one) => ({ ...one, vertices: placeVertices(one.vertices, across) }));
  const half = board.size / 2;
  return [
    box('board', { minX: -half, maxX: half, minY: -board.thickness, maxY: 0 }, 'outline', true),
    ...hubs.map((hub) => box('hub', hub, 'outline', true)),
    ...right,
    ...left,
    ...(vessel
      ? [
          box(
            'vessel',
            { minX: -vessel.radius, maxX: vessel.radius, minY: vessel.underside, maxY: vessel.top },
            'phantom',
            false,
          ),
        ]
      : []),
  ];
}

/** Lines at 45 degrees across a rectangle on paper; those of its neighbour run the other way (ISO 128-3). */
export function hatch({ minX, minY, maxX, maxY }: Bounds, rising: boolean): Stroke[] {
  const height = maxY - minY;
  const strokes: Stroke[] = [];
  for (let start = minX - height + HATCH; start < maxX; start += HATCH) {
    const from = Math.max(minX, start);
    const to = Math.min(maxX, start + height);
    const at = (x: number): Point => ({ x, y: rising ? minY + (x - start) : maxY - (x - start) });
    if (to > from) strokes.push(straight('hatch', at(from), at(to)));
  }
  return strokes;
}

/** Radii below, heights at the right. */
function valuesOf(section: DishSection, printing: Printing): { x: RailValue[]; y: RailValue[] } {
  const { parts, innerRadius, board, focus, vessel, mirror } = section;
  const rib = parts.find(({ kind }) => kind === 'rib');
  const outline = rib ? placeVertices(rib.outline, { x: innerRadius, y: 0, rotationDeg: 0, mirrored: false }) : [];
  const rim = outline.reduce<Point>((best, v) => (v.x > best.x || (v.x === best.x && v.y > best.y) ? v : best), {
    x: 0,
    y: 0,
  });
  const vertex = mirror[0] ?? { x: 0, y: 0 };
  const value = (axis: 'x' | 'y', from: Point, before = ''): RailValue => ({
    axis,
    value: from[axis],
    text: `${before}${printing.length(from[axis])}`,
    from: [from],
    states: [],
  });
  const heights = [
    value('y', { x: board.size / 2, y: 0 }),
    value('y', { x: board.size / 2, y: -board.thickness }),
    value('y', vertex, 'inner end of the mirror '),
    value('y', rim, 'rim '),
    value('y', { x: 0, y: focus }, 'focus '),
    ...(vessel
      ? [
          value('y', { x: vessel.radius, y: vessel.underside }, 'vessel '),
          value('y', { x: vessel.radius, y: vessel.top }, 'its top '),
        ]
      : []),
  ];
  const distinct = (list: readonly RailValue[]) =>
    list.filter((one, i) => list.findIndex((other) => Math.abs(other.value - one.value) < 0.05) === i);
  return {
    x: distinct([
      { ...value('x', { x: 0, y: 0 }), text: '0' },
      value('x', { x: innerRadius, y: 0 }, 'R'),
      value('x', { x: board.size / 2, y: -board.thickness }, 'R'),
      value('x', rim, 'R'),
    ]),
    y: distinct(heights),
  };
}

/** A number in a circle that points at each part. */
function balloons(
  outlines: readonly Outline[],
  numbers: ReadonlyMap<PartKind, number>,
  place: (p: Point) => Point,
  before: readonly Entity[],
  within: Bounds,
): Entity[] {
  const segments = segmentsOf(before);
  const boxes = before.flatMap(({ words }) => words.map((one) => grown(boxOf(one), 0.3)));
  const dimensions = segmentsOf(before.filter(({ kind }) => kind === 'dimension'));
  const found: Entity[] = [];
  for (const [kind, number] of numbers) {
    const outline = outlines.find((one) => one.kind === (kind === 'reflector' ? 'panel' : kind));
    if (outline === undefined) continue;
    const { minX, maxX, minY, maxY } = bounds(outline.vertices);
    const share = { rib: 0.45, board: 0.93, hub: 0.8, cleat: 0.6, panel: 0.35, reflector: 0.75 }[kind as 'rib'];
    const middle = { x: minX + (maxX - minX) * share, y: (minY + maxY) / 2 };
    const skin = kind === 'panel' || kind === 'reflector';
    const nearest = outline.vertices.reduce((best, v) =>
      Math.abs(v.x - middle.x) < Math.abs(best.x - middle.x) ? v : best,
    );
    const inside = kind === 'rib' ? { x: middle.x, y: minY + (maxY - minY) * 0.15 } : middle;
    // of what is on both sides the left one, where no dimensions stand
    const both = outlines.filter((one) => one.kind === kind && one.closed).length > 1 && kind !== 'hub';
    const at = place(skin ? nearest : { x: both ? -inside.x : inside.x, y: inside.y });
    const crowd: Crowd = { segments, boxes, dimensions, within };
    const free = freePlace(at, { width: 2 * BALLOON, height: 2 * BALLOON }, true, crowd);
    if (free?.leader == null) continue;
    const centre = { x: free.corner.x + BALLOON, y: free.corner.y + BALLOON };
    const text = String(number);
    const round = {
      minX: centre.x - BALLOON,
      maxX: centre.x + BALLOON,
      minY: centre.y - BALLOON,
      maxY: centre.y + BALLOON,
    };
    boxes.push(round);
    segments.push(free.leader);
    dimensions.push(free.leader);
    found.push(
      entity('leader', {
        strokes: [straight('thin', free.leader.a, free.leader.b), ringAt('thin', centre, BALLOON)],
        // a leader that ends within an outline ends in a dot, on an outline in an arrow head (ISO 128-2)
        solids: [
          skin ? arrowHead(at, Math.atan2(at.y - free.leader.b.y, at.x - free.leader.b.x)) : regularPolygon(at, 0.6, 8),
        ],
        words: [plainWords(text, { x: centre.x - textWidth(text, LETTERS) / 2, y: centre.y - LETTERS / 2 }, LETTERS)],
      }),
    );
  }
  return found;
}

const notes = [
  'Heights are above the face of the board, radii from the axis. Long-dashed dotted: the reflecting face along the middle of a panel.',
  'The focus burns: keep the mirror covered or out of the sun until the vessel hangs in it.',
];

/** The parts of the dish, numbered; a kind that has several has the number of its first. */
function partList({ parts }: DishSection, printing: Printing): { table: Table; numbers: Map<PartKind, number> } {
  const listed = parts.filter(({ kind }) => shown.includes(kind));
  const numbers = new Map<PartKind, number>();
  listed.forEach((part) => {
    if (!numbers.has(part.kind)) numbers.set(part.kind, parts.indexOf(part) + 1);
  });
  const rows = listed.map((part) => {
    const { name, id, quantity, thickness } = part;
    return [String(parts.indexOf(part) + 1), name, id, String(quantity), printing.thickness(thickness)].map((text) => ({
      text,
    }));
  });
  return { table: { title: 'Parts', heads: ['no.', 'part', 'drawing', 'number off', 'thickness'], rows }, numbers };
}

/** The dish in section, on one page. */
export function dishSection(section: DishSection, { paper, printing, title }: Placing): ShopDrawing {
  const outlines = outlinesOf(section);
  const whole = boundsOfAll([
    ...outlines.map(({ vertices }) => bounds(vertices)),
    bounds([{ x: 0, y: section.focus, bulge: 0 }]),
  ]);
  const values = valuesOf(section, printing);
  const { table, numbers } = partList(section, printing);
  const [left, top] = [14, 8];
  const [right, bottom] = [railReach(values.y) + 3, railReach(values.x) + 3];
  const size = {
    width: whole.maxX - whole.minX,
    height: whole.maxY - whole.minY,
    level: left + right,
    upright: top + bottom,
    minWidth: railLength(values.x),
    minHeight: railLength(values.y),
  };
  const plan = planPage(paper, { size, tables: [table], notes, titleHeight: titleHeight(title('1:1')) });
  const { area } = plan;
  const { factor } = plan.scale;
  const free = {
    x: area.width - left - right - size.width * factor,
    y: area.height - top - bottom - size.height * factor,
  };
  const on: OnPaper = {
    factor,
    dx: area.x + left + free.x / 2 - whole.minX * factor,
    dy: area.y + bottom + free.y / 2 - whole.minY * factor,
  };
  const place = (point: Point): Point => placed(on, point);
  const boxOnPaper = (box: Bounds): Bounds => {
    const [a, b] = [place({ x: box.minX, y: box.minY }), place({ x: box.maxX, y: box.maxY })];
    return { minX: a.x, minY: a.y, maxX: b.x, maxY: b.y };
  };
  const box = boxOnPaper(whole);
  const frame = { place, box, origin: place({ x: 0, y: 0 }) };
  const focus = place({ x: 0, y: section.focus });
  const picture: Entity[] = [
    ...outlines.map(({ line, closed, vertices }) =>
      entity('outline', { strokes: [{ line, closed, vertices: vertices.map((v) => ({ ...v, ...place(v) })) }] }),
    ),
    entity('hatch', {
      strokes: outlines
        .filter(({ hatched }) => hatched)
        .flatMap(({ vertices }, i) => hatch(boxOnPaper(bounds(vertices)), i % 2 === 0)),
    }),
    entity('centre-line', {
      strokes: [
        straight('centre', { x: focus.x, y: box.minY - 2.5 }, { x: focus.x, y: box.maxY + 2.5 }),
        straight('thin', { x: focus.x - 2, y: focus.y }, { x: focus.x + 2, y: focus.y }),
      ],
    }),
    ...railEntities(values.x, 'bottom', frame),
    ...railEntities(values.y, 'right', frame),
  ];
  const within = { minX: area.x, minY: area.y, maxX: area.x + area.width, maxY: area.y + area.height };
  const entities = [
    ...sheetEntities(plan.page, plan.blocks, title(plan.scale.name)),
    ...picture,
    ...balloons(outlines, numbers, place, picture, within),
  ];
  return {
    id: 'dish',
    title: 'Dish in section',
    scale: plan.scale.name,
    pages: [{ ...plan.page, entities }],
    sketch: null,
  };
}
