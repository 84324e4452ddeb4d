/** The band at the foot of every page: check line, what the page is, cautions. */
import type { PDFPage } from 'pdf-lib';
import type { Point } from '../../geometry/index.js';
import { checkLineOf, inInches, type LengthUnit } from '../../units/index.js';
import { cautionsShort } from '../cautions.js';
import { type Fonts, drawLine, drawLines, drawText, type LineStyle, textLines, textWidth } from './pen.js';
import { BAND } from './tiles.js';

const INCH = 25.4;
const line: LineStyle = { width: 0.2, grey: 0, dashes: [] };
/** Where the bar and what stands beside it begin, above the lower margin. */
const BAR = 21;
const TEXT_FROM = 4 * INCH + 4;

/** The unit that the check line has its ticks at, mm. */
const tickOf = (unit: LengthUnit): number => (inInches(unit) ? INCH : 10);

/**
 * The check line with a tick at each unit, longer at both ends; the middles of the end ticks are the length apart.
 * @param at its left or lower end
 */
function drawBar(page: PDFPage, at: Point, unit: LengthUnit, upright: boolean, scale: number, fonts: Fonts): void {
  const { name, length: nominal } = checkLineOf(unit);
  const tick = tickOf(unit);
  const ticks = Math.round(nominal / tick);
  const style = { font: fonts.plain, size: 7 };
  // along the line, and off it towards the ticks
  const place = (along: number, off: number): Point =>
    upright ? { x: at.x - off, y: at.y + along } : { x: at.x + along, y: at.y + off };
  const length = nominal * scale;
  drawLine(page, place(0, 0), place(length, 0), line);
  for (let i = 0; i <= ticks; i++) {
    const end = i === 0 || i === ticks;
    drawLine(page, place(i * tick * scale, end ? -1 : 0), place(i * tick * scale, end ? 3 : 1.5), line);
  }
  const middle = place(length / 2, 0);
  drawText(
    page,
    name,
    upright ? { x: middle.x + 0.8, y: middle.y } : { x: middle.x - textWidth(name, style) / 2, y: middle.y - 2.9 },
    style,
  );
}

/** The check line upright: printers stretch what they feed differently from what they draw across. */
export function drawUprightBar(page: PDFPage, at: Point, unit: LengthUnit, scale: number, fonts: Fonts): void {
  drawBar(page, at, unit, true, scale, fonts);
}

export interface Foot {
  /** Width of the page, mm. */
  readonly width: number;
  readonly margin: number;
  /** The drawing's own: the check line is true when the drawing is. */
  readonly scale: number;
  readonly unit: LengthUnit;
  /** What the page is, and what else a person needs on it. */
  readonly name: string;
  readonly words: string;
  readonly fonts: Fonts;
}

/** Draws the band. */
export function drawFoot(page: PDFPage, { width, margin, scale, unit, name, words, fonts }: Foot): void {
  drawBar(page, { x: margin + 1, y: margin + BAR }, unit, false, scale, fonts);
  const x = margin + TEXT_FROM * Math.max(1, scale);
  const wide = width - margin - x;
  const bold = { font: fonts.bold, size: 9 };
  const plain = { font: fonts.plain, size: 7 };
  const below = drawLines(page, textLines(name, wide, bold).slice(0, 2), { x, y: margin + BAR + 1 }, bold);
  drawLines(page, textLines(words, wide, plain).slice(0, 4), { x, y: below + 0.5 }, plain);
  const small = { font: fonts.plain, size: 5.5 };
  drawLines(page, textLines(cautionsShort, width - 2 * margin, small), { x: margin, y: margin + 8.5 }, small);
  const top = margin + BAND - 1;
  drawLine(page, { x: margin, y: top }, { x: width - margin, y: top }, { ...line, grey: 0.6 });
}
