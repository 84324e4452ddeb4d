/**
 * All overlapping pieces pushed apart at once, each pair along its shortest vector out, over and over: what is nearly free
 * becomes free, or shows that it cannot (after the separation of Imamichi, Yagiura and Nagamochi, Discrete Optimization
 * 6, 2009, from memory, with sweeps over the pairs in place of their quasi-Newton steps).
 */
import { element } from '../geometry/index.js';
import type { NoFits } from './no-fit.js';
import type { Packing } from './packing.js';
import { TOUCHING } from './search.js';
import { f64, i32 } from '../geometry/typed-arrays.js';

const SWEEPS = 400;
/** Sweeps over which the total has to fall by this share. */
const LOOK = 25;
const FALL = 0.15;
/** A push goes a little further than the vector out, so that the sweeps end. */
const PUSH = 1.02;

/** Pushes pieces apart; true when nothing overlaps any more. The packing is changed either way. */
export function relax(packing: Packing, noFits: NoFits): { free: boolean; work: number } {
  const { x, y, sheet } = packing;
  const n = packing.pieces.length;
  const vector = new Float64Array(2);
  const shapes = packing.pieces.map((_, i) => packing.orientation(i).shape);
  const clamp = (i: number): void => {
    const { space, right } = packing.sheetAt(i32(sheet, i));
    const { margin } = space;
    x[i] = Math.max(margin, Math.min(f64(x, i), right - margin - element(shapes, i).width));
    y[i] = Math.max(margin, Math.min(f64(y, i), space.height - margin - element(shapes, i).height));
  };
  const push = (i: number, share: number): void => {
    x[i] = f64(x, i) + share * f64(vector, 0);
    y[i] = f64(y, i) + share * f64(vector, 1);
    clamp(i);
  };
  const fits = shapes.every((shape, i) => {
    const { space, right } = packing.sheetAt(i32(sheet, i));
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
      const row = noFits.row(element(shapes, i));
      for (const obstacle of packing.sheetAt(i32(sheet, i)).space.obstacles) {
        const noFit = obstacle.noFit(element(shapes, i));
        const depth = noFit.separationVector(f64(x, i) - obstacle.x, f64(y, i) - obstacle.y, vector);
        work += noFit.count;
        if (depth <= TOUCHING) continue;
        total += depth;
        push(i, PUSH);
      }
      for (let j = 0; j < i; j++) {
        if (sheet[j] !== sheet[i]) continue;
        const noFit = row[element(shapes, j).index] ?? noFits.of(element(shapes, j), element(shapes, i));
        const depth = noFit.separationVector(f64(x, i) - f64(x, j), f64(y, i) - f64(y, j), vector);
        if (depth === 0) continue;
        work += noFit.count;
        if (depth <= TOUCHING) continue;
        total += depth;
        const half = PUSH / 2;
        push(i, half);
        push(j, -half);
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
