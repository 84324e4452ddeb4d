/** Draws on PDF pages in mm from the lower left corner. The only place where mm become points. */
import {
  appendBezierCurve,
  clip,
  closePath,
  endPath,
  lineTo,
  moveTo,
  type PDFFont,
  type PDFOperator,
  type PDFPage,
  popGraphicsState,
  pushGraphicsState,
  rectangle,
  rgb,
  setDashPattern,
  setLineWidth,
  setStrokingGrayscaleColor,
  stroke,
} from 'pdf-lib';
import { type Bounds, type Point, type Vertex, edgeArc } from '../../geometry/index.js';
import { wrapped } from '../../units/index.js';
import { decimal } from '../decimal.js';
import { CURVE_SWEEP, curveHandles, POINTS_PER_MM } from '../pdf-curve.js';
import { splitArcs } from '../split-arcs.js';

/** mm as points, to 1/10000 point (35 nm): every number of the file. */
export const points = (mm: number): number => Number(decimal(mm * POINTS_PER_MM, 4));

export interface LineStyle {
  /** mm */
  readonly width: number;
  /** 0 black to 1 white. */
  readonly grey: number;
  /** Lengths of dashes and gaps in turn, mm; none for a full line. */
  readonly dashes: readonly number[];
}

/** From the drawing's mm to the page's: enlarged, then moved. */
export interface PageFrame {
  readonly scale: number;
  readonly dx: number;
  readonly dy: number;
}

export const onPage = ({ scale, dx, dy }: PageFrame, { x, y }: Point): Point => ({
  x: x * scale + dx,
  y: y * scale + dy,
});

const to = ({ x, y }: Point): PDFOperator => lineTo(points(x), points(y));
const start = ({ x, y }: Point): PDFOperator => moveTo(points(x), points(y));

/** An edge that `splitArcs` has left. */
function curve(from: Vertex, end: Vertex): PDFOperator {
  const edge = edgeArc(from, end);
  if (edge.kind === 'straight') return to(end);
  const [a, b] = curveHandles(edge);
  return appendBezierCurve(points(a.x), points(a.y), points(b.x), points(b.y), points(end.x), points(end.y));
}

/** Draws a ring or path; vertices on the page. */
export function drawPath(page: PDFPage, vertices: readonly Vertex[], closed: boolean, style: LineStyle): void {
  const divided = splitArcs(vertices, closed, CURVE_SWEEP);
  const first = divided[0];
  if (first === undefined) return;
  const runs = divided.map((vertex, i) => {
    const next = divided[i + 1] ?? (closed ? first : undefined);
    return next === undefined ? [] : [curve(vertex, next)];
  });
  page.pushOperators(
    pushGraphicsState(),
    setLineWidth(points(style.width)),
    setStrokingGrayscaleColor(style.grey),
    setDashPattern(style.dashes.map(points), 0),
    start(first),
    ...runs.flat(),
    ...(closed ? [closePath()] : []),
    stroke(),
    popGraphicsState(),
  );
}

export function drawLine(page: PDFPage, from: Point, end: Point, style: LineStyle): void {
  drawPath(
    page,
    [
      { ...from, bulge: 0 },
      { ...end, bulge: 0 },
    ],
    false,
    style,
  );
}

/** Covers what is below, so that nothing shows through what is drawn next. */
export function fillWhite(page: PDFPage, { minX, minY, maxX, maxY }: Bounds): void {
  page.drawRectangle({
    x: points(minX),
    y: points(minY),
    width: points(maxX - minX),
    height: points(maxY - minY),
    color: rgb(1, 1, 1),
  });
}

/** Draws with everything outside the box (on the page) cut off. */
export function within(page: PDFPage, box: Bounds, draw: () => void): void {
  page.pushOperators(
    pushGraphicsState(),
    rectangle(points(box.minX), points(box.minY), points(box.maxX - box.minX), points(box.maxY - box.minY)),
    clip(),
    endPath(),
  );
  draw();
  page.pushOperators(popGraphicsState());
}

export interface Fonts {
  readonly plain: PDFFont;
  readonly bold: PDFFont;
}

export interface TextStyle {
  readonly font: PDFFont;
  /** Points. */
  readonly size: number;
  readonly grey?: number;
}

/** A font's list of characters is made anew whenever it is asked for. */
const characters = new WeakMap<PDFFont, ReadonlySet<number>>();

/** Text that the fonts of every PDF reader can show (Windows Latin 1); a question mark for what they cannot. */
export function plainText(text: string, font: PDFFont): string {
  const known = characters.get(font) ?? new Set(font.getCharacterSet());
  characters.set(font, known);
  return Array.from(text.normalize('NFC'))
    .map((letter) => (known.has(letter.codePointAt(0)!) && letter >= ' ' ? letter : /\s/.test(letter) ? ' ' : '?'))
    .join('');
}

/** One line of text, its base line beginning at `at`. */
export function drawText(page: PDFPage, text: string, at: Point, { font, size, grey = 0 }: TextStyle): void {
  page.drawText(plainText(text, font), { x: points(at.x), y: points(at.y), font, size, color: rgb(grey, grey, grey) });
}

export function textWidth(text: string, { font, size }: TextStyle): number {
  return font.widthOfTextAtSize(plainText(text, font), size) / POINTS_PER_MM;
}

/** Text broken between words into lines of at most `width` mm. */
export function textLines(text: string, width: number, style: TextStyle): string[] {
  return wrapped(text, width, (line) => textWidth(line, style));
}

/** Lines of text from `top` (the first base line) downwards; returns the base line after the last. */
export function drawLines(page: PDFPage, lines: readonly string[], top: Point, style: TextStyle): number {
  const lead = (style.size * 1.25) / POINTS_PER_MM;
  lines.forEach((line, i) => drawText(page, line, { x: top.x, y: top.y - i * lead }, style));
  return top.y - lines.length * lead;
}
