/** One page of the print: its window of the drawing, the joints to its neighbours, and the foot. */
import type { PDFPage } from 'pdf-lib';
import { type Bounds, bounds, type Point, regularPolygon } from '../../geometry/index.js';
import type { Drawing } from '../types.js';
import { drawFoot } from './foot.js';
import { drawAll, joint } from './ink.js';
import type { PrintOptions } from './paper.js';
import {
  drawLine,
  drawPath,
  drawText,
  type Fonts,
  type PageFrame,
  type LineStyle,
  onPage,
  textWidth,
  within,
} from './pen.js';
import { boxesMeet, crossArm } from './pieces.js';
import { BAND, type Tile, type Tiling } from './tiles.js';

const diamond: LineStyle = { width: 0.1, grey: 0.2, dashes: [] };

/**
 * A diamond with a cross: laid over its twin on the neighbouring page, it shows that both lie right. No ring, because
 * a ring with a cross is a hole to be drilled.
 */
function drawDiamond(page: PDFPage, at: Point): void {
  drawPath(page, regularPolygon(at, 3, 4), true, diamond);
  drawLine(page, { x: at.x - 4, y: at.y }, { x: at.x + 4, y: at.y }, diamond);
  drawLine(page, { x: at.x, y: at.y - 4 }, { x: at.x, y: at.y + 4 }, diamond);
}

/** Where along a joint they stand, as shares of the window: two, so that a page can neither shift nor turn. */
const diamondPlaces = [0.2, 0.8];

interface Joint {
  readonly from: Point;
  readonly to: Point;
  /** Name of the page beyond, and whether its name goes before or behind the line. */
  readonly beyond: string;
  readonly side: -1 | 1;
}

/** The joints to neighbours that are printed. */
function jointsOf({ window, row, column }: Tile, { tiles, jointsX, jointsY, rows }: Tiling): Joint[] {
  const printed = (r: number, c: number) => tiles.find((tile) => tile.row === r && tile.column === c && !tile.blank);
  // joints between columns count from the left, between rows from the bottom; tiles' rows from the top
  const fromBottom = rows - 1 - row;
  const acrossJoints = ([-1, 1] as const).flatMap((side): Joint[] => {
    const x = jointsX[side < 0 ? column - 1 : column];
    const other = printed(row, column + side);
    if (x === undefined || other === undefined) return [];
    return [{ from: { x, y: window.minY }, to: { x, y: window.maxY }, beyond: other.name, side }];
  });
  const above = ([-1, 1] as const).flatMap((side): Joint[] => {
    const y = jointsY[side < 0 ? fromBottom - 1 : fromBottom];
    const other = printed(row - side, column);
    if (y === undefined || other === undefined) return [];
    return [{ from: { x: window.minX, y }, to: { x: window.maxX, y }, beyond: other.name, side }];
  });
  return [...acrossJoints, ...above];
}

function drawJoint(page: PDFPage, { from, to, beyond, side }: Joint, frame: PageFrame, { plain }: Fonts): void {
  const a = onPage(frame, from);
  const b = onPage(frame, to);
  drawLine(page, a, b, joint);
  for (const share of diamondPlaces) drawDiamond(page, { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share });
  // the name on this page's own side of the line
  const style = { font: plain, size: 6.5, grey: 0.3 };
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const text = `joins ${beyond}`;
  const upright = a.x === b.x;
  drawText(
    page,
    text,
    upright
      ? { x: side > 0 ? middle.x - textWidth(text, style) - 1 : middle.x + 1, y: middle.y }
      : { x: middle.x, y: side > 0 ? middle.y - 3 : middle.y + 1 },
    style,
  );
}

/** The drawing without what lies off the window, so that a page holds no more than it shows. */
function seenIn(drawing: Drawing, window: Bounds): Drawing {
  const entities = drawing.entities.filter((entity) => {
    if (entity.kind === 'path') return boxesMeet(bounds(entity.vertices), window);
    const { x, y, diameter } = entity;
    const arm = crossArm(diameter);
    return boxesMeet({ minX: x - arm, minY: y - arm, maxX: x + arm, maxY: y + arm }, window);
  });
  return { ...drawing, entities };
}

/**
 * Draws one page.
 * @param order `{ number, of }` among the pages that are printed
 */
export function drawSheetPage(
  page: PDFPage,
  tiling: Tiling,
  one: Tile,
  order: { readonly number: number; readonly of: number },
  { margin, unit }: PrintOptions,
  fonts: Fonts,
): void {
  const { window } = one;
  const { scale } = tiling;
  const bottom = margin + BAND;
  const frame = { scale, dx: margin - window.minX * scale, dy: bottom - window.minY * scale };
  const corner = onPage(frame, { x: window.maxX, y: window.maxY });
  within(page, { minX: margin, minY: bottom, maxX: corner.x, maxY: corner.y }, () => {
    drawAll(page, seenIn(tiling.drawing, window), frame);
    for (const line of jointsOf(one, tiling)) drawJoint(page, line, frame, fonts);
  });
  drawFoot(page, {
    width: tiling.page.width,
    margin,
    scale,
    unit,
    name: `${tiling.drawing.title}: sheet ${one.name}`,
    words:
      `Row ${one.row + 1} of ${tiling.rows}, column ${one.column + 1} of ${tiling.columns}; page ${order.number} of ${order.of}. ` +
      'Print at 100 % and measure both lines before you cut.',
    fonts,
  });
}
