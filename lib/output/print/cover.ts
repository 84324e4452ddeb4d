/** Which windows of a grid are needed to show everything, and can be joined edge to edge. */
import type { Bounds } from '../../geometry/index.js';

/** Windows of one size, each the same distance on from the last; column 0 at the left, row 0 at the bottom. */
export interface Grid {
  readonly columns: number;
  readonly rows: number;
  /** Lower left corner of the first window. */
  readonly left: number;
  readonly bottom: number;
  readonly width: number;
  readonly height: number;
  readonly stepX: number;
  readonly stepY: number;
}

/** First and last of the windows along one axis that hold the stretch whole; of those that it meets where none does. */
interface Span {
  readonly first: number;
  readonly last: number;
  readonly whole: boolean;
}

function spanOf(min: number, max: number, start: number, step: number, size: number, count: number): Span {
  const clamped = (index: number) => Math.max(0, Math.min(count - 1, index));
  const last = clamped(Math.floor((min - start) / step + 1e-9));
  const first = clamped(Math.ceil((max - start - size) / step - 1e-9));
  return first <= last ? { first, last, whole: true } : { first: last, last: first, whole: false };
}

/** Windows that some piece has no other choice than, and the choices of the other pieces. */
interface Demand {
  readonly kept: Set<number>;
  readonly choices: readonly (readonly number[])[];
}

function demandOf(boxes: readonly Bounds[], grid: Grid, limit: number): Demand | null {
  const { columns, rows, left, bottom, width, height, stepX, stepY } = grid;
  const kept = new Set<number>();
  const choices = new Map<string, number[]>();
  for (const { minX, minY, maxX, maxY } of boxes) {
    const across = spanOf(minX, maxX, left, stepX, width, columns);
    const up = spanOf(minY, maxY, bottom, stepY, height, rows);
    const single = across.first === across.last && up.first === up.last;
    const all = !across.whole || !up.whole;
    if (single) kept.add(up.first * columns + across.first);
    else {
      const windows: number[] = [];
      for (let row = up.first; row <= up.last; row++)
        for (let column = across.first; column <= across.last; column++) windows.push(row * columns + column);
      if (all) for (const window of windows) kept.add(window);
      else choices.set(windows.join(), windows);
    }
    if (kept.size > limit) return null;
  }
  return { kept, choices: [...choices.values()] };
}

/** Adds windows until every piece is on one: each time the one that shows most, the first of several. */
function chooseAmong({ kept, choices }: Demand): void {
  let open = choices.filter((windows) => !windows.some((window) => kept.has(window)));
  while (open.length > 0) {
    const votes = new Map<number, number>();
    for (const window of open.flat()) votes.set(window, (votes.get(window) ?? 0) + 1);
    const [best] = [...votes].sort((a, b) => b[1] - a[1] || a[0] - b[0]).map(([window]) => window);
    if (best === undefined) return;
    kept.add(best);
    open = open.filter((windows) => !windows.includes(best));
  }
}

const neighboursOf = (window: number, { columns, rows }: Grid): number[] => {
  const column = window % columns;
  return [
    ...(column > 0 ? [window - 1] : []),
    ...(column < columns - 1 ? [window + 1] : []),
    ...(window >= columns ? [window - columns] : []),
    ...(window < columns * (rows - 1) ? [window + columns] : []),
  ];
};

/** Those that can be reached from one over common edges. */
function joinedTo(start: number, kept: ReadonlySet<number>, grid: Grid): Set<number> {
  const reached = new Set([start]);
  for (const window of reached) for (const next of neighboursOf(window, grid)) if (kept.has(next)) reached.add(next);
  return reached;
}

/** Adds windows that join what meets at corners alone. */
function joinUp(kept: Set<number>, grid: Grid): boolean {
  for (;;) {
    const [start] = kept;
    if (start === undefined) return false;
    const reached = joinedTo(start, kept, grid);
    if (reached.size === kept.size) return true;
    const all = Array.from({ length: grid.columns * grid.rows }, (_, window) => window);
    const bridge = all.find((window) => {
      const around = neighboursOf(window, grid).filter((next) => kept.has(next));
      return !kept.has(window) && around.some((next) => reached.has(next)) && around.some((next) => !reached.has(next));
    });
    if (bridge === undefined) return false;
    kept.add(bridge);
  }
}

/**
 * The windows that are needed, fewest as far as a greedy choice finds them.
 * @param limit more than this are of no use
 * @returns by index, row by row from the bottom; null where they are more, or cannot be joined edge to edge
 */
export function coverOf(boxes: readonly Bounds[], grid: Grid, limit: number): boolean[] | null {
  const demand = demandOf(boxes, grid, limit);
  if (demand === null) return null;
  chooseAmong(demand);
  if (demand.kept.size > limit || !joinUp(demand.kept, grid) || demand.kept.size > limit) return null;
  return Array.from({ length: grid.columns * grid.rows }, (_, window) => demand.kept.has(window));
}
