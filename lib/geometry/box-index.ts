import Flatbush from 'flatbush';
import type { Bounds, Point } from './types.js';

/** Boxes that can be asked which of them meet a box, or lie nearest to a point. */
export interface BoxIndex {
  /** Indices of the boxes that meet `box` widened by `margin` mm on every side, ascending. */
  readonly touching: (box: Bounds, margin: number) => number[];
  /** Indices of the `count` boxes nearest to a point, nearest first. */
  readonly nearest: (point: Point, count: number) => number[];
}

/** Index of a list of boxes; n log n to make. An index of nothing finds nothing. */
export function indexBoxes(boxes: readonly Bounds[]): BoxIndex {
  if (boxes.length === 0) return { touching: () => [], nearest: () => [] };
  const tree = new Flatbush(boxes.length);
  for (const box of boxes) tree.add(box.minX, box.minY, box.maxX, box.maxY);
  tree.finish();
  return {
    touching: (box, margin) =>
      // ascending, so that results do not depend on the order in which the tree holds its boxes
      tree.search(box.minX - margin, box.minY - margin, box.maxX + margin, box.maxY + margin).sort((a, b) => a - b),
    nearest: ({ x, y }, count) => tree.neighbors(x, y, count),
  };
}
