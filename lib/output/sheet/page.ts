/** A sheet to hang at the machine: at a standard scale, in the colours of its operations, with key and list of pieces. */
import {
  bounds,
  type Contour,
  placePoint,
  placeVertices,
  type Point,
  rectangle,
  type Vertex,
} from '../../geometry/index.js';
import { type LaidSheet, linesUp, type Part, type PlacedPart, holesUp, pocketsUp, ringsOf } from '../../part/index.js';
import { layerOrder, shortMeaning } from '../key.js';
import { arrowHead, entity, movedBy, plainWords, ringAt, straight } from '../shop/entity.js';
import { MARGINS, type Paper, type Scale, scales } from '../shop/paper.js';
import { sheetEntities as pageFrame } from '../shop/part-drawing.js';
import type { Printing } from '../shop/printing.js';
import { type Block, measureTable, type MeasuredTable, tableBlock } from '../shop/table.js';
import { type Title, titleHeight } from '../shop/title-block.js';
import type { Entity, ShopDrawing, Stroke } from '../shop/types.js';
import type { Colours } from '../types.js';
import { sheetLabels } from './labels.js';
import { laidOut, type LaidPicture } from './lengths.js';

export interface SheetToDraw {
  readonly id: string;
  readonly sheet: LaidSheet;
  /** The edge of the stock; a rectangle where left out. */
  readonly edge?: Contour | undefined;
  /** Of the job, in the order of the part list. */
  readonly parts: readonly Part[];
  readonly colours: Colours;
  readonly paper: Paper;
  readonly printing: Printing;
  readonly title: (scale: string) => Title;
}

/** Left free round the picture and between it and the list, mm. */
const ROOM = 2;
/** And below it, for the names of the zero corner's axes. */
const BELOW = 5;
/** Length of the arrows at the zero corner. */
const AXIS = 11;

/** The pieces of the sheet, by part. */
function listOf({ sheet, parts, printing }: SheetToDraw): MeasuredTable {
  const rows = parts.flatMap((part, i) => {
    const count = sheet.placed.filter((at) => at.part === part.id).length;
    if (count === 0) return [];
    const box = bounds(part.outline);
    const size = `${printing.length(box.maxX - box.minX)} x ${printing.length(box.maxY - box.minY)}`;
    return [[String(i + 1), part.name, String(count), size].map((text) => ({ text }))];
  });
  return measureTable({
    title: `Pieces on this sheet; sizes in ${printing.name}`,
    heads: ['no.', 'part', 'here', 'size'],
    rows,
  });
}

/** Height of a row of the key, mm. */
const KEY_ROW = 3.6;

interface Plan {
  readonly scale: Scale;
  readonly picture: LaidPicture;
  /** Lower left corner of the sheet on paper. */
  readonly corner: Point;
  readonly list: Block & Point;
}

/** The largest scale at which sheet and list go on the page, the list below or beside the sheet. */
function planned(drawn: SheetToDraw, area: { width: number; height: number }): Plan {
  const list = listOf(drawn);
  const rows = list.table.rows.length;
  const picture = laidOut(drawn.sheet, drawn.parts);
  for (const scale of scales) {
    const wide = picture.width * scale.factor + 2 * ROOM;
    const high = picture.height * scale.factor + 2 * ROOM + BELOW;
    if (wide > area.width || high > area.height) continue;
    const x = ROOM + (area.width - wide) / 2;
    for (let each = 1; each <= rows; each++) {
      const block = tableBlock(list, each);
      if (block.width <= area.width - ROOM && block.height + ROOM <= area.height - high)
        return {
          scale,
          picture,
          corner: { x, y: area.height - high + ROOM + BELOW },
          list: { ...block, x: ROOM, y: area.height - high - block.height },
        };
      if (block.width + ROOM <= area.width - wide && block.height + ROOM <= area.height)
        return {
          scale,
          picture,
          corner: { x: ROOM, y: area.height - high + ROOM + BELOW },
          list: { ...block, x: wide, y: area.height - ROOM - block.height },
        };
    }
  }
  throw new RangeError(`no scale of ISO 5455 brings ${drawn.id} onto the page`);
}

/** Lines of one piece, in the colours of what is done along them. */
function pieceStrokes(part: Part, at: PlacedPart, { colours }: SheetToDraw): Stroke[] {
  const line = (colour: string, closed: boolean, vertices: readonly Vertex[]): Stroke => ({
    line: 'thin',
    closed,
    colour,
    vertices: placeVertices(vertices, at),
  });
  return [
    ...linesUp(part).map(({ vertices, closed }) => line(colours.scribe, closed, vertices)),
    ...holesUp(part).flatMap((hole) => {
      const middle = placePoint(hole, at);
      const ring = (diameter: number, colour: string): Stroke => ({ ...ringAt('thin', middle, diameter / 2), colour });
      return [
        ring(hole.diameter, colours.drill),
        ...(hole.countersink === undefined ? [] : [ring(hole.countersink, colours.countersink)]),
      ];
    }),
    ...pocketsUp(part).map(({ ring }) => line(colours.pocket, true, ring)),
    ...ringsOf(part).map((ring, i) => line(i === 0 ? colours.outline : colours.opening, true, ring)),
  ];
}

/** The edge of each length: as cut from the stock at the ends of the sheet, open where the next one goes on. */
function edgeStrokes(
  { sheet, colours, edge = rectangle(0, 0, sheet.width, sheet.height) }: SheetToDraw,
  { lengths }: LaidPicture,
): Stroke[] {
  const look = { line: 'outline' as const, colour: colours['sheet-edge'] };
  if (lengths.length === 1) return [{ ...look, closed: true, vertices: edge }];
  return lengths.flatMap(({ from, to, bottom }, i) => {
    const [long, top] = [to - from, bottom + sheet.height];
    const line = (x1: number, y1: number, x2: number, y2: number): Stroke => ({
      ...look,
      closed: false,
      vertices: [
        { x: x1, y: y1, bulge: 0 },
        { x: x2, y: y2, bulge: 0 },
      ],
    });
    return [
      line(0, bottom, long, bottom),
      line(0, top, long, top),
      ...(i === 0 ? [line(0, bottom, 0, top)] : []),
      ...(i === lengths.length - 1 ? [line(long, bottom, long, top)] : []),
    ];
  });
}

function pictureOf(drawn: SheetToDraw, { scale, picture, corner }: Plan): Entity[] {
  const { parts, printing } = drawn;
  const byId = new Map(parts.map((part) => [part.id, part]));
  const own = picture.placed.flatMap((at) => {
    const part = byId.get(at.part);
    return part ? pieceStrokes(part, at, drawn) : [];
  });
  const onPaper = ({ x, y }: Point): Point => ({ x: corner.x + x * scale.factor, y: corner.y + y * scale.factor });
  const strokes = [...edgeStrokes(drawn, picture), ...own];
  const labels = sheetLabels(picture, parts, scale.factor);
  return [
    entity('outline', {
      strokes: strokes.map((one) => ({
        ...one,
        vertices: one.vertices.map((vertex) => ({ ...onPaper(vertex), bulge: vertex.bulge })),
      })),
    }),
    entity('label', {
      strokes: labels.flatMap(({ leader }) => (leader ? [straight('thin', ...leader.map(onPaper))] : [])),
      words: labels.map(({ text, angleDeg, height, x, y }) => {
        const capitals = height * scale.factor;
        const turn = (angleDeg * Math.PI) / 180;
        const at = onPaper({ x, y });
        // the middle of the capitals, not their base line, is at the place
        const base = { x: at.x + (capitals / 2) * Math.sin(turn), y: at.y - (capitals / 2) * Math.cos(turn) };
        return { ...plainWords(text, base, capitals), anchor: 'middle', turnDeg: angleDeg };
      }),
    }),
    entity('label', {
      words: picture.lengths.slice(1).map(({ from, bottom }) => {
        const { x, y } = onPaper({ x: 0, y: bottom + drawn.sheet.height });
        return plainWords(`on from X = ${printing.length(from)} ${printing.unit}`, { x, y: y + 0.8 }, 1.8);
      }),
    }),
  ];
}

/** Where the machine's zero lies: the lower left corner of the sheet, as in all files of it. */
function zeroCorner({ corner, scale, picture: { lengths } }: Plan): Entity {
  const { x } = corner;
  const y = corner.y + lengths[0].bottom * scale.factor;
  const at = { x: x - 1.2, y: y - 1.2 };
  return entity('mark', {
    strokes: [
      straight('thin', { x: at.x, y: at.y + AXIS }, at, { x: at.x + AXIS, y: at.y }),
      ringAt('thin', { x, y }, 1),
    ],
    solids: [arrowHead({ x: at.x + AXIS, y: at.y }, 0), arrowHead({ x: at.x, y: at.y + AXIS }, Math.PI / 2)],
    words: [plainWords('zero of the files: X to the right, Y up', { x: at.x + AXIS + 1, y: at.y - 2.4 }, 1.8)],
  });
}

/** A line for each operation that the sheet holds, in its colour. */
function keyOf(drawn: SheetToDraw): Entity {
  const { colours, sheet, parts } = drawn;
  const held = parts.filter(({ id }) => sheet.placed.some(({ part }) => part === id));
  const used = {
    'sheet-edge': true,
    scribe: held.some((part) => linesUp(part).length > 0),
    drill: held.some(({ holes }) => holes.length > 0),
    countersink: held.some(({ holes }) => holes.some(({ countersink }) => countersink !== undefined)),
    pocket: held.some((part) => pocketsUp(part).length > 0),
    opening: held.some(({ openings }) => openings.length > 0),
    outline: true,
  };
  const shown = layerOrder.filter((name) => used[name]);
  const top = shown.length * KEY_ROW;
  return entity('notes', {
    strokes: shown.map((name, i) => ({
      ...straight('outline', { x: 0, y: top - (i + 0.7) * KEY_ROW }, { x: 8, y: top - (i + 0.7) * KEY_ROW }),
      colour: colours[name],
    })),
    words: shown.map((name, i) =>
      plainWords(`${name}: ${shortMeaning(name)}`, { x: 10, y: top - (i + 0.9) * KEY_ROW }, 1.8),
    ),
  });
}

/**
 * The page of a sheet, lying.
 * @throws RangeError for a sheet that no scale brings onto the page
 */
export function drawnSheet(drawn: SheetToDraw): ShopDrawing {
  const page = { width: drawn.paper.height, height: drawn.paper.width };
  const { left, other } = MARGINS;
  const foot = titleHeight(drawn.title('1:1'));
  const area = { width: page.width - left - other, height: page.height - 2 * other - foot };
  const plan = planned(drawn, area);
  const dx = left;
  const dy = other + foot;
  const keyAt = { x: left + ROOM, y: other + 1.5 };
  return {
    id: drawn.id,
    title: drawn.id,
    scale: plan.scale.name,
    pages: [
      {
        ...page,
        entities: [
          ...pageFrame(page, [], drawn.title(plan.scale.name)),
          ...[...pictureOf(drawn, plan), zeroCorner(plan)].map((one) => movedBy(one, dx, dy)),
          movedBy(plan.list.build(), dx + plan.list.x, dy + plan.list.y),
          movedBy(keyOf(drawn), keyAt.x, keyAt.y),
        ],
      },
    ],
    sketch: null,
  };
}
