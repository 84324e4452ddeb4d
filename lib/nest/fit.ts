/** What can be known of parts and stock before anything is nested: which parts no sheet is large enough for. */
import { bounds, contourFromPoints, placePoint } from '../geometry/index.js';
import { tasksOf } from './nest.js';
import { orientationsOf } from './pieces.js';
import { fitsAlone } from './plan.js';
import { Shapes } from './shape.js';
import type { NestPart, NestStock } from './types.js';

export interface SheetSize {
  readonly width: number;
  readonly height: number;
}

/** Parts of one group that no stock takes. */
export interface Unfit {
  readonly group: string;
  readonly parts: readonly NestPart[];
  /** Whether there is stock of the group at all. */
  readonly stocked: boolean;
}

/** Less than this (mm) to spare is left to the exact answer. */
const spare = 1e-6;

/** Whether a part's box alone shows that some plain sheet takes it: cheap, and true of nearly every part. */
function boxFits(part: NestPart, stock: readonly NestStock[]): boolean {
  const angles = part.rotations === 'any' ? [0, 90] : part.rotations;
  return angles.some((rotationDeg) => {
    const turned = part.outline.map((point) => placePoint(point, { x: 0, y: 0, rotationDeg, mirrored: false }));
    const box = bounds(contourFromPoints(turned));
    return stock.some(({ group, shape, margin, count, keepOuts }) => {
      if (group !== part.group || shape.kind === 'offcut' || keepOuts.length > 0 || count < 1) return false;
      const length = shape.kind === 'sheet' ? shape.width : shape.maxLength;
      const around = 2 * margin + spare;
      return box.maxX - box.minX + around <= length && box.maxY - box.minY + around <= shape.height;
    });
  });
}

/**
 * Parts that fit no stock, each by itself on an empty sheet, by group. What is not among them may still find the stock
 * used up.
 * @throws NestError as `nest` does
 */
export function unfitParts(parts: readonly NestPart[], stock: readonly NestStock[], spacing: number): Unfit[] {
  const doubtful = parts.filter((part) => !boxFits(part, stock));
  return tasksOf(doubtful, stock, spacing).flatMap((task): Unfit[] => {
    const unfit = task.parts.filter((part) => {
      const piece = task.pieces.find((one) => one.part === part);
      return piece !== undefined && !fitsAlone(piece, task.spaces, task.noFits);
    });
    const [first] = unfit;
    return first ? [{ group: first.group, parts: unfit, stocked: task.stock.length > 0 }] : [];
  });
}

/**
 * The smallest sheet, by area, that takes each of the parts by itself, as they may be turned.
 * @param margin distance that parts keep from its edge
 */
export function smallestSheet(parts: readonly NestPart[], spacing: number, margin: number): SheetSize {
  const shapes = new Shapes(spacing);
  const boxes = parts.map((part) =>
    orientationsOf(part, shapes).map(({ shape: { width, height } }) => ({ width, height })),
  );
  const widths = [...new Set(boxes.flat().map(({ width }) => width))];
  let best: SheetSize = { width: Infinity, height: Infinity };
  for (const width of widths) {
    const heights = boxes.map((orientations) =>
      Math.min(...orientations.filter((box) => box.width <= width).map((box) => box.height)),
    );
    const size = { width: width + 2 * margin, height: Math.max(...heights) + 2 * margin };
    // the square of a part turned round is the same sheet: the wider one is taken
    if (size.width * size.height < best.width * best.height * (1 - 1e-9)) best = size;
  }
  return best;
}
