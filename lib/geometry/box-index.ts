import Flatbush from 'flatbush';
import type { Bounds } from './types.js';

/** Boxes that can be asked which of them meet a box. */
export interface BoxIndex {
  /** Indices of the boxes that meet `box` widened by `margin` mm on every side, ascending. */
  readonly meeting: (box: Bounds, margin: number) => number[];
}

/** Index of a list of boxes; n log n to make. An index of nothing finds nothing. */
export function indexBoxes(boxes: readonly Bounds[]): BoxIndex {
  if (boxes.length === 0) return { meeting: () => [] };
  const tree = new Flatbush(boxes.length);
  for (const box of boxes) tree.add(box.minX, box.minY, box.maxX, box.maxY);
  tree.finish();
  return {
    meeting: (box, margin) =>
      // ascending, so that results do not depend on the order in which the tree holds its boxes
      tree.search(box.minX - margin, box.minY - margin, box.maxX + margin, box.maxY + margin).sort((a, b) => a - b),
  };
}
