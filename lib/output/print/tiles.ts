/** How a drawing is divided over pages. Lengths in mm; a window is what a page shows, in the drawing's own mm. */
import { type Bounds, boundsOfAll, placePoint, placeVertices } from '../../geometry/index.js';
import { checkLineOf } from '../../units/index.js';
import { decimal } from '../decimal.js';
import type { Drawing, DrawnEntity } from '../types.js';
import { coverOf, type Grid } from './cover.js';
import { type Page, pagesOf, paperName, type PrintOptions } from './paper.js';
import { type Piece, piecesOf, turnedBoxes } from './pieces.js';

/** Height of the band at the foot of every page, for the check line, names and cautions. */
export const BAND = 27;
/** The check line has to fit across, with its lettering. */
const MIN_WIDTH = 120;
/** A window smaller than this is no help, whatever the paper. */
const MIN_WINDOW = 40;
/** Length of the pieces in which ink is looked at: so short that two pages that overlap cannot both cut one. */
const PIECE_OF_OVERLAP = 0.8;
const MIN_PIECE = 2;
const MAX_PIECE = 8;
/** A turn is a nuisance, so it has to save more than a little paper. */
const CLEARLY_LESS = 0.95;

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
  /** The drawing as it lies on the pages: its lower left corner is that of the first window. */
  readonly drawing: Drawing;
  /** How far it was turned for that, anticlockwise, degrees. */
  readonly turnDeg: number;
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

function checkOptions({ margin, overlap, measured, paper, unit }: PrintOptions): void {
  const { name, min, max } = checkLineOf(unit);
  if (!(margin >= 0)) throw new RangeError(`print.margin is ${mm(margin)}; it must be 0 or more, such as 10 mm`);
  if (!(overlap >= 0)) throw new RangeError(`print.overlap is ${mm(overlap)}; it must be 0 or more, such as 10 mm`);
  if (!(measured >= min && measured <= max))
    throw new RangeError(
      `print.measured is ${mm(measured)}; it is what the check line of ${name} measures, so from ${mm(min)} to ${mm(max)}`,
    );
  if (paper.kind === 'roll' && !(paper.width > 0 && paper.width <= 5000))
    throw new RangeError(`print.rollWidth is ${mm(paper.width)}; give the width of the roll, up to 5000 mm`);
}

/** What of a page is left for the drawing, on paper. */
function usableOn(page: Page, margin: number): { width: number; height: number } {
  return { width: page.width - 2 * margin, height: page.height - 2 * margin - BAND };
}

/** Number of windows of `window` that cover `length` when each overlaps the next. */
function count(length: number, window: number, overlap: number): number {
  return Math.max(1, Math.ceil((length - overlap) / (window - overlap) - 1e-9));
}

/** Where the drawing may lie on the paper that is left over: in the middle rather than at an edge. */
const SHARES = [0.5, 0.25, 0.75, 0, 1] as const;

/** What all tilings of a print have in common. */
interface Sought {
  readonly pieces: readonly Piece[];
  readonly options: PrintOptions;
  /** Size on paper of a millimetre of the drawing. */
  readonly scale: number;
}

/** A grid with the windows of it that are needed, for a drawing turned about its origin. */
interface Found {
  readonly page: Page;
  readonly grid: Grid;
  readonly kept: readonly boolean[];
  readonly printed: number;
  readonly turnDeg: number;
}

/** The grids of a page size on which the boxes fit, with the drawing in the middle of all the paper first. */
function gridsOn(page: Page, extent: Bounds, { options, scale }: Sought): Grid[] {
  const { margin, overlap } = options;
  const usable = usableOn(page, margin);
  const width = usable.width / scale;
  const height = usable.height / scale;
  if (usable.width < MIN_WIDTH || usable.height < MIN_WINDOW || Math.min(width, height) < 2 * overlap) return [];
  const stepX = width - overlap;
  const stepY = height - overlap;
  const columns = count(extent.maxX - extent.minX, width, overlap);
  const rows = count(extent.maxY - extent.minY, height, overlap);
  const spareX = (columns - 1) * stepX + width - (extent.maxX - extent.minX);
  const spareY = (rows - 1) * stepY + height - (extent.maxY - extent.minY);
  // with a single window in both directions there is nothing to save by moving it
  const shares = columns * rows === 1 ? [0.5] : SHARES;
  return shares.flatMap((x) =>
    shares.map((y) => ({
      columns,
      rows,
      left: extent.minX - x * spareX,
      bottom: extent.minY - y * spareY,
      width,
      height,
      stepX,
      stepY,
    })),
  );
}

const areaOf = ({ page, printed }: Found): number => printed * page.width * page.height;

/** Fewer pages; of as many, clearly less paper. */
const isBetter = (one: Found, than: Found | null): boolean =>
  than === null ||
  one.printed < than.printed ||
  (one.printed === than.printed && areaOf(one) < CLEARLY_LESS * areaOf(than));

/** The better of `best` and what can be had with the drawing turned. */
function bestTurned(sought: Sought, turnDeg: number, best: Found | null): Found | null {
  const { pieces, options, scale } = sought;
  const { margin, paper } = options;
  const boxes = turnedBoxes(pieces, (turnDeg / 180) * Math.PI);
  const extent = boundsOfAll(boxes);
  const needed = {
    width: Math.max((extent.maxX - extent.minX) * scale, MIN_WIDTH) + 2 * margin,
    height: Math.max((extent.maxY - extent.minY) * scale, MIN_WINDOW) + 2 * margin + BAND,
  };
  let found = best;
  // sheets are all of one size, so as many are no better
  const useful = () => (found === null ? Infinity : found.printed - (paper.kind === 'roll' ? 0 : 1));
  for (const page of pagesOf(paper, needed)) {
    for (const grid of gridsOn(page, extent, sought)) {
      // pages that join edge to edge and reach over so many columns and rows
      if (grid.columns + grid.rows - 1 > useful()) break;
      const kept = coverOf(boxes, grid, useful());
      if (kept === null) continue;
      const one = { page, grid, kept, printed: kept.filter(Boolean).length, turnDeg };
      if (isBetter(one, found)) found = one;
    }
  }
  return found;
}

/** Turns that are tried lie this far apart, degrees: further on many pages, where a turn saves few of them. */
const TURN_STEP = { few: 1, many: 5 } as const;
const MANY_PAGES = 12;

/** As it is drawn first, then turned further and further. */
function fewest(sought: Sought): Found | null {
  let best = bestTurned(sought, 0, null);
  const step = best !== null && best.printed > MANY_PAGES ? TURN_STEP.many : TURN_STEP.few;
  for (let turnDeg = step; turnDeg < 180; turnDeg += step) {
    if (best?.printed === 1 && sought.options.paper.kind !== 'roll') return best;
    best = bestTurned(sought, turnDeg, best);
  }
  return best;
}

/** The drawing turned about its origin, then moved by the corner of the first window. */
function turned(drawing: Drawing, { turnDeg, grid }: Found): Drawing {
  const placement = { x: -grid.left, y: -grid.bottom, rotationDeg: turnDeg, mirrored: false };
  const entities = drawing.entities.map((entity): DrawnEntity => {
    if (entity.kind === 'circle') return { ...entity, ...placePoint(entity, placement) };
    return { ...entity, vertices: placeVertices(entity.vertices, placement) };
  });
  const { columns, rows, stepX, stepY, width, height } = grid;
  return { ...drawing, entities, width: (columns - 1) * stepX + width, height: (rows - 1) * stepY + height };
}

function tilesOf({ grid, kept }: Found): Tile[] {
  const { columns, rows, stepX, stepY, width, height } = grid;
  return Array.from({ length: rows * columns }, (_, i): Tile => {
    const row = Math.floor(i / columns);
    const column = i % columns;
    const fromBottom = rows - 1 - row;
    const minX = column * stepX;
    const minY = fromBottom * stepY;
    const window = { minX, minY, maxX: minX + width, maxY: minY + height };
    const blank = kept[fromBottom * columns + column] !== true;
    return { row, column, name: `${letters(row)}${column + 1}`, window, blank };
  });
}

/**
 * Divides a drawing over pages at full size, upright or lying, turned and moved so that fewest pages are needed, then
 * least paper; turned only where that saves some.
 * @throws RangeError, naming the key of the design, for a negative margin or overlap, a check line that is
 *   off by more than a tenth, and a page that margins, overlap and the band at its foot use up
 */
export function tile(drawing: Drawing, options: PrintOptions): Tiling {
  checkOptions(options);
  const { margin, overlap, measured, paper, unit } = options;
  const scale = checkLineOf(unit).length / measured;
  const pieces = piecesOf(drawing, Math.max(MIN_PIECE, Math.min(MAX_PIECE, PIECE_OF_OVERLAP * overlap)));
  if (!pieces.every(({ from, to }) => Number.isFinite(from.x + from.y + to.x + to.y)))
    throw new RangeError('cannot write a print with a coordinate that is not a number');
  const best = fewest({ pieces, options, scale });
  if (best === null)
    throw new RangeError(
      `a page (${paperName(paper)}) with print.margin ${mm(margin)} and print.overlap ${mm(overlap)} leaves no room ` +
        `to draw: in addition to the margins it takes ${MIN_WIDTH} mm across, twice the overlap both ways, and ` +
        `${BAND + MIN_WINDOW} mm upright; margin and overlap of 10 mm fit on A4`,
    );
  const { page, grid, turnDeg } = best;
  const joints = (step: number, of: number) => Array.from({ length: of - 1 }, (_, i) => (i + 1) * step + overlap / 2);
  return {
    page,
    scale,
    drawing: turned(drawing, best),
    turnDeg,
    rows: grid.rows,
    columns: grid.columns,
    tiles: tilesOf(best),
    jointsX: joints(grid.stepX, grid.columns),
    jointsY: joints(grid.stepY, grid.rows),
  };
}
