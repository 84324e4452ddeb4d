/** Parts placed on stock: first a valid nest, then better ones until the effort is spent. */
import { element, type Polygon, randomFrom } from '../geometry/index.js';
import { budgetOf, budgetPart } from './budget.js';
import { checkRequest } from './check.js';
import { improveGroup } from './group.js';
import { ringArea } from './clipping.js';
import { NoFits } from './no-fit.js';
import type { Packing, Piece } from './packing.js';
import { addAngle, orientationsOf, piecesOf } from './pieces.js';
import { firstNest, fitsAlone } from './plan.js';
import { sheetsOf } from './result.js';
import { Shapes } from './shape.js';
import { type Space, spaceOf } from './space.js';
import { i32 } from '../geometry/typed-arrays.js';
import type { Layout, NestOptions, NestPart, NestStock, Unplaced } from './types.js';

const anticlockwise = (ring: Polygon): Polygon => (ringArea(ring) < 0 ? [...ring].reverse() : ring);
const clockwise = (ring: Polygon): Polygon => (ringArea(ring) > 0 ? [...ring].reverse() : ring);

/** A group's parts and stock, prepared for nesting. */
export interface PackingTask {
  readonly pieces: readonly Piece[];
  readonly spaces: readonly Space[];
  readonly shapes: Shapes;
  readonly noFits: NoFits;
  readonly parts: readonly NestPart[];
  readonly stock: readonly NestStock[];
}

/** Rolls no longer than could ever be needed. */
function bounded(stock: NestStock, pieces: readonly Piece[], spacing: number): NestStock {
  if (stock.shape.kind !== 'roll') return stock;
  const longest = ({ orientations }: Piece): number => Math.max(...orientations.map(({ shape }) => shape.width));
  const all = pieces.reduce((sum, piece) => sum + longest(piece) + spacing, 2 * stock.margin + 1);
  return { ...stock, shape: { ...stock.shape, maxLength: Math.min(stock.shape.maxLength, all) } };
}

function taskOf(parts: readonly NestPart[], stock: readonly NestStock[], spacing: number): PackingTask {
  const shapes = new Shapes(spacing);
  const noFits = new NoFits();
  const pieces = piecesOf(parts, shapes);
  const spaces = stock
    .filter(({ count }) => count >= 1)
    .map((item) => spaceOf(bounded(item, pieces, spacing), shapes, noFits))
    .filter(({ area }) => area > 0);
  return { pieces, spaces, shapes, noFits, parts, stock };
}

/** Parts and stock by group, prepared for nesting. */
export function tasksOf(parts: readonly NestPart[], stock: readonly NestStock[], spacing: number): PackingTask[] {
  const turned = parts.map((part) => ({
    ...part,
    outline: anticlockwise(part.outline),
    openings: part.openings.map(clockwise),
  }));
  const items = stock.map((item) => ({ ...item, keepOuts: item.keepOuts.map(anticlockwise) }));
  const groups = [...new Set(turned.map(({ group }) => group))];
  return groups.map((group) =>
    taskOf(
      turned.filter((part) => part.group === group),
      items.filter((item) => item.group === group),
      spacing,
    ),
  );
}

/** The smallest sheet that holds a part in one of its allowed rotations. */
function minSheet(part: NestPart, shapes: Shapes, margin: number): { width: number; height: number } {
  const sizes = orientationsOf(part, shapes).map(({ shape }) => ({
    width: shape.width + 2 * margin,
    height: shape.height + 2 * margin,
  }));
  return sizes.reduce((min, size) => (size.width * size.height < min.width * min.height - 1e-9 ? size : min));
}

function unplacedOf({ parts, pieces, spaces, shapes, noFits, stock }: PackingTask, packing: Packing): Unplaced[] {
  return parts.flatMap((part): Unplaced[] => {
    const [piece] = pieces.filter((one) => one.part === part);
    const placed = packing.pieces.filter((one, i) => one.part === part && i32(packing.sheet, i) >= 0).length;
    const copies = part.quantity - placed;
    if (!piece || copies === 0) return [];
    const margin = Math.min(...stock.map((item) => item.margin), Infinity);
    const reason =
      stock.length === 0
        ? 'no-stock-for-group'
        : fitsAlone(piece, spaces, noFits) || stock.every(({ count }) => count < 1)
          ? 'stock-used-up'
          : 'larger-than-stock';
    const min = minSheet(part, shapes, margin === Infinity ? 0 : margin);
    return [{ part: part.id, copies, reason, minSheet: reason === 'stock-used-up' ? null : min }];
  });
}

/**
 * Places parts on stock of their group, at minimum cost, then with the shortest used length on the last sheet. Pure: the
 * same seed and effort give the same layout. The time of the first answer grows with the square of the number of
 * pieces on a sheet.
 * @param parts outlines may run either way round; see `NestPart`
 * @throws NestError for outlines, stock or options that make no sense; a part that does not fit is in `unplaced`
 */
export function nest(parts: readonly NestPart[], stock: readonly NestStock[], options: NestOptions): Layout {
  checkRequest(parts, stock, options);
  const tasks = tasksOf(parts, stock, options.spacing);
  const packings = tasks.map((task) => firstNest(task.pieces, task.spaces, task.noFits));
  const budget = budgetOf(options.effort, options.stop, options.elapsed);
  const report = (): void => options.onBetter?.(layoutOf(tasks, packings));
  if (options.effort > 0) report();
  const random = randomFrom(options.seed);
  const all = tasks.reduce((sum, { pieces }) => sum + pieces.length, 0);
  let until = 0;
  tasks.forEach((task, i) => {
    until += task.pieces.length / all;
    const first = element(packings, i);
    const part = budgetPart(budget, until);
    if (part.over()) return;
    const addOne = (): void => addAngle(task.pieces, task.shapes, random);
    const tools = { noFits: task.noFits, random, budget: part, addAngle: addOne };
    packings[i] = improveGroup(first, task.spaces, tools, (packing) => {
      packings[i] = packing.copy();
      report();
    });
    // a group that cannot be placed any shorter ends early, and the person is not kept waiting for its share
    part.skipTo(1);
  });
  return layoutOf(tasks, packings);
}

function layoutOf(tasks: readonly PackingTask[], packings: readonly Packing[]): Layout {
  const results = packings.map(sheetsOf);
  return {
    sheets: results.flatMap(({ sheets }) => sheets),
    unplaced: tasks.flatMap((task, i) => unplacedOf(task, element(packings, i))),
    cost: results.reduce((sum, { cost }) => sum + cost, 0),
  };
}
