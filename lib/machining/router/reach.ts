/** Whether every cut stays on the sheet and out of the clamps. */
import { bounds, closestOfContours, contourFromPoints, element, sideOfContour } from '../../geometry/index.js';
import type { CutOperation } from '../types.js';
import type { RoutedSheet, RouterProblem } from './types.js';

const slack = 1e-6;

/** Problems of closed cuts that run off the sheet, or into a place that is to be kept clear. */
export function reachProblems(
  { cut, keepOuts = [] }: RoutedSheet,
  operations: readonly CutOperation[],
  reach: number,
): RouterProblem[] {
  const problems: RouterProblem[] = [];
  const clamps = keepOuts.map((ring) => ({ ring: contourFromPoints(ring), box: bounds(contourFromPoints(ring)) }));
  for (const { operation, part, copy, vertices, bore } of operations) {
    const path = bore ?? vertices;
    const box = bounds(path);
    const name = `${cut.id}: the ${operation} of ${part} ${copy}`;
    const over = Math.max(
      reach - box.minX,
      reach - box.minY,
      box.maxX + reach - cut.width,
      box.maxY + reach - cut.height,
    );
    if (over > slack)
      problems.push({
        code: 'router-sheet-edge',
        severity: 'error',
        key: ['process'],
        message: `${name} would run ${Number(over.toFixed(2))} mm off the sheet`,
        remedy: `use a process.margin (or a margin of the stock) of at least ${Number((cut.margin + over).toFixed(2))} mm`,
      });
    for (const { ring, box: clamp } of clamps) {
      const apart =
        clamp.minX > box.maxX + reach ||
        clamp.maxX < box.minX - reach ||
        clamp.minY > box.maxY + reach ||
        clamp.maxY < box.minY - reach;
      if (apart) continue;
      const crosses = closestOfContours(path, ring).distance < reach - slack;
      if (!crosses && sideOfContour(ring, element(path, 0), 0) !== 'inside') continue;
      problems.push({
        code: 'router-clamp',
        severity: 'error',
        key: ['process'],
        message: `${name} would run into a place that the stock keeps out (a clamp or damage)`,
        remedy: 'move it, or make its keepOut larger so that the nest stays clear',
      });
    }
  }
  return problems;
}
