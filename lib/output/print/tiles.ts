/** How a drawing is divided over pages. Lengths in mm; a window is what a page shows, in the drawing's own mm. */
import {
  type Bounds,
  edgeBounds,
  edgeLength,
  edgesOf,
  edgesOfPath,
  element,
  pointOnEdge,
} from '../../geometry/index.js';
import { decimal } from '../decimal.js';
import type { Drawing } from '../types.js';
import { type Page, pagesOf, paperName, type PrintOptions } from './paper.js';

/** Height of the band at the foot of every page, for check lengths, names and cautions. */
export const BAND = 27;
/** The check lengths of 100 mm and 4 in have to fit across, with their lettering. */
const MIN_WIDTH = 120;
/** A window smaller than this is no help, whatever the paper. */
const MIN_WINDOW = 40;

export interface Tile {
  /** 0 at the top. */
  readonly row: number;
  /** 0 at the left. */
  readonly column: number;
  /** `B3`: second row, third column. */
  readonly name: string;
  readonly window: Bounds;
  /** Nothing lies on it, so it is not printed. */
  readonly blank: boolean;
}

export interface Tiling {
  readonly page: Page;
  /** Size on paper of a millimetre of the drawing, as the file states it; the printer's fault is not in it. */
  readonly scale: number;
  readonly rows: number;
  readonly columns: number;
  readonly tiles: readonly Tile[];
  /** x of the joints between columns, y of the joints between rows. */
  readonly jointsX: readonly number[];
  readonly jointsY: readonly number[];
}

function letters(row: number): string {
  const rest = Math.floor(row / 26);
  return `${rest > 0 ? letters(rest - 1) : ''}${String.fromCharCode(65 + (row % 26))}`;
}

const mm = (value: number): string => (Number.isFinite(value) ? `${decimal(value, 2)} mm` : String(value));

function checkOptions({ margin, overlap, measured, paper }: PrintOptions): void {
  if (!(margin >= 0)) throw new RangeError(`print.margin is ${mm(margin)}; it must be 0 or more, 10 mm would do`);
  if (!(overlap >= 0)) throw new RangeError(`print.overlap is ${mm(overlap)}; it must be 0 or more, 10 mm would do`);
  if (!(measured >= 90 && measured <= 110))
    throw new RangeError(
      `print.measured is ${mm(measured)}; it is what the check length of 100 mm measures, so from 90 to 110 mm`,
    );
  if (paper.kind === 'roll' && !(paper.width > 0 && paper.width <= 5000))
    throw new RangeError(`print.rollWidth is ${mm(paper.width)}; give the width of the roll, up to 5000 mm`);
}

/** What of a page is left for the drawing, on paper. */
function usableOn(page: Page, margin: number): { width: number; height: number } {
  return { width: page.width - 2 * margin, height: page.height - 2 * margin - BAND };
}

/** The boxes of all that is drawn, in pieces short enough to lie on one page or next to it. */
function inkOf(drawing: Drawing): Bounds[] {
  const longest = 15;
  return drawing.entities.flatMap((entity): Bounds[] => {
    if (entity.kind === 'circle') {
      const { x, y, diameter } = entity;
      return [{ minX: x - diameter, minY: y - diameter, maxX: x + diameter, maxY: y + diameter }];
    }
    const edges = entity.closed ? edgesOf(entity.vertices) : edgesOfPath(entity.vertices);
    return edges.flatMap((edge) => {
      const pieces = Math.max(1, Math.ceil(edgeLength(edge) / longest));
      if (pieces === 1) return [edgeBounds(edge)];
      const points = Array.from({ length: pieces + 1 }, (_, i) => pointOnEdge(edge, i / pieces));
      return points.slice(1).map((to, i) => edgeBounds({ kind: 'straight', from: element(points, i), to }));
    });
  });
}

const meet = (a: Bounds, b: Bounds): boolean =>
  a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;

/** Number of windows of `window` that cover `length` when each overlaps the next. */
function count(length: number, window: number, overlap: number): number {
  return Math.max(1, Math.ceil((length - overlap) / (window - overlap) - 1e-9));
}

function tilingOn(page: Page, drawing: Drawing, options: PrintOptions): Tiling | null {
  const { margin, overlap, measured } = options;
  const scale = 100 / measured;
  const usable = usableOn(page, margin);
  const width = usable.width / scale;
  const height = usable.height / scale;
  if (usable.width < MIN_WIDTH || usable.height < MIN_WINDOW || Math.min(width, height) < 2 * overlap) return null;
  const columns = count(drawing.width, width, overlap);
  const rows = count(drawing.height, height, overlap);
  const stepX = width - overlap;
  const stepY = height - overlap;
  // the drawing in the middle of all the paper
  const left = (drawing.width - (columns - 1) * stepX - width) / 2;
  const bottom = (drawing.height - (rows - 1) * stepY - height) / 2;
  const ink = inkOf(drawing);
  const tiles = Array.from({ length: rows * columns }, (_, i): Tile => {
    const row = Math.floor(i / columns);
    const column = i % columns;
    const minX = left + column * stepX;
    const minY = bottom + (rows - 1 - row) * stepY;
    const window = { minX, minY, maxX: minX + width, maxY: minY + height };
    const blank = !ink.some((box) => meet(box, window));
    return { row, column, name: `${letters(row)}${column + 1}`, window, blank };
  });
  const joints = (first: number, step: number, of: number) =>
    Array.from({ length: of - 1 }, (_, i) => first + (i + 1) * step + overlap / 2);
  return {
    page,
    scale,
    rows,
    columns,
    tiles,
    jointsX: joints(left, stepX, columns),
    jointsY: joints(bottom, stepY, rows),
  };
}

/**
 * Divides a drawing over pages at full size, upright or lying, whichever takes fewer pages, then less paper.
 * @throws RangeError, naming the key of the design, for a negative margin or overlap, a check length out of 90 to
 *   110 mm, and a page that margins, overlap and the band of check lengths use up
 */
export function tile(drawing: Drawing, options: PrintOptions): Tiling {
  checkOptions(options);
  const { margin, overlap, measured, paper } = options;
  const scale = 100 / measured;
  const needed = {
    width: Math.max(drawing.width * scale, MIN_WIDTH) + 2 * margin,
    height: Math.max(drawing.height * scale, MIN_WINDOW) + 2 * margin + BAND,
  };
  const tilings = pagesOf(paper, needed)
    .map((page) => tilingOn(page, drawing, options))
    .filter((tiling) => tiling !== null);
  const printed = (tiling: Tiling) => tiling.tiles.filter(({ blank }) => !blank).length;
  const area = (tiling: Tiling) => tiling.page.width * tiling.page.height;
  const best = tilings.sort((a, b) => printed(a) - printed(b) || area(a) - area(b))[0];
  if (best === undefined)
    throw new RangeError(
      `a page (${paperName(paper)}) with print.margin ${mm(margin)} and print.overlap ${mm(overlap)} leaves no room ` +
        `to draw: in addition to the margins it takes ${MIN_WIDTH} mm across, twice the overlap both ways, and ` +
        `${BAND + MIN_WINDOW} mm upright; margin and overlap of 10 mm would do on A4`,
    );
  return best;
}
