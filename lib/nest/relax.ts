/**
 * All overlapping pieces pushed apart at once, each pair along its shortest way out, over and over: what is nearly free
 * becomes free, or shows that it cannot (after the separation of Imamichi, Yagiura and Nagamochi, Discrete Optimization
 * 6, 2009, from memory, with sweeps over the pairs in place of their quasi-Newton steps).
 */
import type { NoFits } from './no-fit.js';
import type { Packing } from './packing.js';
import { TOUCHING } from './search.js';

const SWEEPS = 400;
/** Sweeps over which the total has to fall by this share. */
const LOOK = 25;
const FALL = 0.15;
/** A push goes a little further than the way out, so that the sweeps end. */
const PUSH = 1.02;

/** Pushes pieces apart; true when nothing overlaps any more. The packing is changed either way. */
export function relax(packing: Packing, noFits: NoFits): { free: boolean; work: number } {
  const { x, y, sheet } = packing;
  const n = packing.pieces.length;
  const way = new Float64Array(2);
  const shapes = packing.pieces.map((_, i) => packing.orientation(i).shape);
  const clamp = (i: number): void => {
    const { space, right } = packing.sheets[sheet[i]!]!;
    const { margin } = space;
    x[i] = Math.max(margin, Math.min(x[i]!, right - margin - shapes[i]!.width));
    y[i] = Math.max(margin, Math.min(y[i]!, space.height - margin - shapes[i]!.height));
  };
  const fits = shapes.every((shape, i) => {
    const { space, right } = packing.sheets[sheet[i]!]!;
    return shape.width + 2 * space.margin <= right + TOUCHING;
  });
  let work = 0;
  if (!fits) return { free: false, work };
  for (let i = 0; i < n; i++) clamp(i);
  let before = Infinity;
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    let total = 0;
    work += (n * n) >> 1;
    for (let i = 0; i < n; i++) {
      const row = noFits.row(shapes[i]!);
      for (const obstacle of packing.sheets[sheet[i]!]!.space.obstacles) {
        const noFit = obstacle.noFit(shapes[i]!);
        const depth = noFit.separationVector(x[i]! - obstacle.x, y[i]! - obstacle.y, way);
        work += noFit.count;
        if (depth <= TOUCHING) continue;
        total += depth;
        x[i]! += PUSH * way[0]!;
        y[i]! += PUSH * way[1]!;
        clamp(i);
      }
      for (let j = 0; j < i; j++) {
        if (sheet[j] !== sheet[i]) continue;
        const noFit = row[shapes[j]!.index] ?? noFits.of(shapes[j]!, shapes[i]!);
        const depth = noFit.separationVector(x[i]! - x[j]!, y[i]! - y[j]!, way);
        if (depth === 0) continue;
        work += noFit.count;
        if (depth <= TOUCHING) continue;
        total += depth;
        const half = PUSH / 2;
        x[i]! += half * way[0]!;
        y[i]! += half * way[1]!;
        x[j]! -= half * way[0]!;
        y[j]! -= half * way[1]!;
        clamp(i);
        clamp(j);
      }
    }
    if (total === 0) return { free: true, work };
    if (sweep % LOOK === LOOK - 1) {
      if (total > before * (1 - FALL)) return { free: false, work };
      before = total;
    }
  }
  return { free: false, work };
}
