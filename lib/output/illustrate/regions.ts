/** Outlines of what has one label in a grid, traced along the grid's own lines. */
import { element, type Point } from '../../geometry/index.js';
import { pathOf, simplified } from './path.js';

/** Regions are drawn under lines, which hide what is left out here. */
const ROUGH = 1;
/** Specks of fewer points on their outline are left out. */
const SPECK = 12;

/**
 * Path data for every label that occurs, by its number; -1 is nothing. To be filled by the nonzero rule: outlines run one
 * sense, holes clockwise.
 */
export function regionPaths(labels: Int32Array, width: number, height: number): Map<number, string> {
  const at = (x: number, y: number): number =>
    x < 0 || y < 0 || x >= width || y >= height ? -1 : (labels[y * width + x] ?? -1);
  // steps with the label on their left, by where they begin: 0 right, 1 down, 2 left, 3 up
  const wide = width + 1;
  const done = new Uint8Array(wide * (height + 1) * 4);
  const leftOf = (x: number, y: number, turn: number): number =>
    turn === 0 ? at(x, y - 1) : turn === 1 ? at(x, y) : turn === 2 ? at(x - 1, y) : at(x - 1, y - 1);
  const rightOf = (x: number, y: number, turn: number): number =>
    turn === 0 ? at(x, y) : turn === 1 ? at(x - 1, y) : turn === 2 ? at(x - 1, y - 1) : at(x, y - 1);
  const stepX = [1, 0, -1, 0];
  const stepY = [0, 1, 0, -1];
  const found = new Map<number, string>();
  /** Keeps close to the label: left first. */
  const nextTurn = (x: number, y: number, turn: number, label: number): number => {
    for (let k = 3; k <= 5; k += 1) {
      const next = (turn + k) % 4;
      if (leftOf(x, y, next) === label && rightOf(x, y, next) !== label) return next;
    }
    return (turn + 2) % 4;
  };
  const trace = (startX: number, startY: number, startTurn: number, label: number): void => {
    const points: Point[] = [];
    let [x, y, turn] = [startX, startY, startTurn];
    do {
      done[(y * wide + x) * 4 + turn] = 1;
      points.push({ x, y });
      x += element(stepX, turn);
      y += element(stepY, turn);
      turn = nextTurn(x, y, turn, label);
    } while (x !== startX || y !== startY || turn !== startTurn);
    if (points.length < SPECK) return;
    const half = points.length >> 1;
    const ring = [
      ...simplified(points.slice(0, half + 1), ROUGH).slice(0, -1),
      ...simplified([...points.slice(half), element(points, 0)], ROUGH).slice(0, -1),
    ];
    if (ring.length < 3) return;
    found.set(label, (found.get(label) ?? '') + pathOf(ring, true));
  };
  for (let y = 0; y <= height; y += 1)
    for (let x = 0; x < width; x += 1) {
      const [above, below] = [at(x, y - 1), at(x, y)];
      if (above === below) continue;
      if (above >= 0 && done[(y * wide + x) * 4] === 0) trace(x, y, 0, above);
      if (below >= 0 && done[(y * wide + x + 1) * 4 + 2] === 0) trace(x + 1, y, 2, below);
    }
  return found;
}
