/** The first page: how the pages go together, how to print and join them, and what the lines mean. */
import type { PDFPage } from 'pdf-lib';
import { type Bounds, boundsOfAll, rectangle } from '../../geometry/index.js';
import { checkLineOf, formatLength, type LengthUnit, lineText } from '../../units/index.js';
import { decimal } from '../decimal.js';
import { POINTS_PER_MM } from '../pdf-curve.js';
import type { Drawing } from '../types.js';
import { drawFoot, drawUprightBar } from './foot.js';
import { drawAll, legend } from './ink.js';
import { type Page, paperName, type PrintOptions } from './paper.js';
import { boxesMeet, piecesOf, turnedBoxes } from './pieces.js';
import {
  drawLine,
  drawLines,
  drawPath,
  drawText,
  fillWhite,
  type Fonts,
  type PageFrame,
  type LineStyle,
  onPage,
  textLines,
  textWidth,
  within,
} from './pen.js';
import { BAND, type Tile, type Tiling } from './tiles.js';

const outline: LineStyle = { width: 0.15, grey: 0.35, dashes: [] };

/** Left free at the right for the upright check line and its lettering. */
const UPRIGHT_ROOM = 16;

/** What is done about the printer's fault: said here, because a print must not be corrected twice. */
function correctionOf(measured: number, unit: LengthUnit): string {
  const { name, length } = checkLineOf(unit);
  const short = lineText(0.994 * length, unit);
  if (measured === length)
    return `If the ${name} line measures something else, say ${short}, set "measured" to ${short} under "print" in the design file, make this print again, and measure once more.`;
  return `This print is drawn to ${decimal((100 * length) / measured, 2)} %, for a printer that prints ${name} as ${lineText(measured, unit)}. The lines must measure ${name} on that printer.`;
}

function instructions(
  drawing: Drawing,
  tiling: Tiling,
  printed: number,
  { measured, overlap, paper, unit }: PrintOptions,
): string[] {
  const joined = printed > 1;
  return [
    `The drawing is ${formatLength(drawing.width, unit)} by ${formatLength(drawing.height, unit)}, on ${printed} ${printed === 1 ? 'sheet' : 'sheets'} of ${paperName(paper)}${joined ? `, in ${tiling.rows} ${tiling.rows === 1 ? 'row' : 'rows'} and ${tiling.columns} ${tiling.columns === 1 ? 'column' : 'columns'}` : ''}${tiling.turnDeg === 0 ? '' : ', turned to save paper'}.`,
    '1. Print at 100 % ("actual size"), never fitted to the page, all sheets on the same printer and paper.',
    `2. Measure the lines at the foot of a page, and the upright one here, with a steel rule. ${correctionOf(measured, unit)}`,
    ...(joined
      ? [
          `3. Neighbours show the same strip, ${formatLength(overlap, unit)} wide. Cut one of the two along the dashed line, lay it on the dashed line of the other so that the diamonds cover each other, and tape it. Begin in the middle, so that errors do not add up.`,
          '4. When all is joined, check the length and width of the part against the cut list before you glue it to the wood. Paper grows when it is wet: use a glue without water.',
        ]
      : ['3. Paper grows when it is wet: use a glue without water.']),
  ];
}

/** What of its window a page adds to the whole: from joint to joint. */
function cellOf({ window, row, column }: Tile, { jointsX, jointsY, rows }: Tiling): Bounds {
  const fromBottom = rows - 1 - row;
  return {
    minX: jointsX[column - 1] ?? window.minX,
    maxX: jointsX[column] ?? window.maxX,
    minY: jointsY[fromBottom - 1] ?? window.minY,
    maxY: jointsY[fromBottom] ?? window.maxY,
  };
}

function boxOnPage(frame: PageFrame, { minX, minY, maxX, maxY }: Bounds): Bounds {
  const low = onPage(frame, { x: minX, y: minY });
  const high = onPage(frame, { x: maxX, y: maxY });
  return { minX: low.x, minY: low.y, maxX: high.x, maxY: high.y };
}

/** Where in a cell its name may stand, as shares of the room that it leaves: the middle first. */
const namePlaces = [0.5, 0.2, 0.8].flatMap((y) => [0.5, 0.2, 0.8].map((x) => ({ x, y })));

/** The name of a page where it lies on no line of the drawing, or on fewest; nothing shows through it. */
function drawName(page: PDFPage, name: string, cell: Bounds, ink: readonly Bounds[], fonts: Fonts): void {
  const size = Math.max(6, Math.min(14, (cell.maxX - cell.minX) * 0.5));
  const style = { font: fonts.bold, size, grey: 0.2 };
  const wide = textWidth(name, style) + 1.6;
  const high = size / POINTS_PER_MM + 0.4;
  const places = namePlaces.map(({ x, y }) => {
    const minX = cell.minX + (cell.maxX - cell.minX - wide) * x;
    const minY = cell.minY + (cell.maxY - cell.minY - high) * y;
    const box = { minX, minY, maxX: minX + wide, maxY: minY + high };
    return { box, crossed: ink.filter((one) => boxesMeet(one, box)).length };
  });
  const fewest = Math.min(...places.map(({ crossed }) => crossed));
  const box = places.find(({ crossed }) => crossed === fewest)?.box;
  if (box === undefined) return;
  fillWhite(page, box);
  drawText(page, name, { x: box.minX + 0.8, y: box.minY + 0.2 + 0.15 * high }, style);
}

/** The whole drawing, small, with the pages over it, as large as the box allows. */
function drawMap(page: PDFPage, tiling: Tiling, box: Bounds, fonts: Fonts): void {
  const printed = tiling.tiles.filter(({ blank }) => !blank);
  const whole = boundsOfAll(printed.map((one) => cellOf(one, tiling)));
  const width = whole.maxX - whole.minX;
  const height = whole.maxY - whole.minY;
  // a little less than fits, so that the outermost lines show; and never so large as to be taken for the print itself
  const fits = 0.99 * Math.min((box.maxX - box.minX) / width, (box.maxY - box.minY) / height);
  const scale = Math.min(fits, 0.5 * tiling.scale);
  if (!(scale > 0)) return;
  const frame = {
    scale,
    dx: (box.minX + box.maxX - width * scale) / 2 - whole.minX * scale,
    dy: (box.minY + box.maxY - height * scale) / 2 - whole.minY * scale,
  };
  // lettering and marks would only be smudges
  const edges = tiling.drawing.entities.filter(({ layer }) => layer !== 'scribe' && layer !== 'countersink');
  const drawing = { ...tiling.drawing, entities: edges };
  const ink = turnedBoxes(piecesOf(drawing, 8), 0).map((one) => boxOnPage(frame, one));
  within(page, box, () => {
    drawAll(page, drawing, frame);
    for (const one of printed) {
      const { minX, minY, maxX, maxY } = boxOnPage(frame, cellOf(one, tiling));
      drawPath(page, rectangle(minX, minY, maxX, maxY), true, outline);
    }
    for (const one of printed) drawName(page, one.name, boxOnPage(frame, cellOf(one, tiling)), ink, fonts);
  });
}

/** The size of the first page: as the others, but of a roll long enough for what it has to say. */
export function mapPage({ page }: Tiling, { paper }: PrintOptions): Page {
  if (paper.kind !== 'roll') return page;
  const min = 220;
  return page.width === paper.width
    ? { width: page.width, height: Math.max(min, page.height) }
    : { width: Math.max(min, page.width), height: page.height };
}

/** Draws the first page. */
export function drawMapPage(
  page: PDFPage,
  drawing: Drawing,
  tiling: Tiling,
  options: PrintOptions,
  fonts: Fonts,
): void {
  const { margin } = options;
  const { width, height } = mapPage(tiling, options);
  const wide = width - 2 * margin;
  const printed = tiling.tiles.filter(({ blank }) => !blank).length;
  const title = { font: fonts.bold, size: 16 };
  const plain = { font: fonts.plain, size: 8.5 };
  let y = height - margin - 6;
  y = drawLines(page, textLines(`${drawing.title}: full-size print`, wide, title).slice(0, 2), { x: margin, y }, title);
  for (const line of instructions(drawing, tiling, printed, options)) {
    y = drawLines(page, textLines(line, wide, plain), { x: margin, y }, plain) - 0.8;
  }
  for (const { style, meaning } of legend) {
    drawLine(page, { x: margin, y: y + 1 }, { x: margin + 10, y: y + 1 }, style);
    y = drawLines(page, [meaning], { x: margin + 12, y }, plain);
  }
  const box = { minX: margin, minY: margin + BAND + 2, maxX: width - margin - UPRIGHT_ROOM, maxY: y };
  drawMap(page, tiling, box, fonts);
  drawUprightBar(page, { x: box.maxX + 5, y: box.minY }, options.unit, tiling.scale, fonts);
  drawFoot(page, {
    width,
    margin,
    scale: tiling.scale,
    unit: options.unit,
    name: `${drawing.title}: page map`,
    words: `How the ${printed === 1 ? 'sheet that follows lies' : `${printed} sheets that follow lie`}; not to scale, except for the check lines.`,
    fonts,
  });
}
