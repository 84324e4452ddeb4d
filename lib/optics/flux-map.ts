/** How bright each place of the vessel's plane is. */
import { element } from '../geometry/index.js';
import { estimate } from './estimate.js';
import type { Rays } from './trace.js';
import type { Estimate } from './types.js';
import { f32, f64 } from '../geometry/typed-arrays.js';

/** Cells along a side; odd, so that one has the axis in its middle. */
const CELLS = 41;
/** Rays are repeated about the axis this many times at most; more would smooth no further. */
const MAX_TURNS = 24;

export interface FluxMap {
  /** Cells along a side, and half the side of the square, mm. */
  readonly cells: number;
  readonly halfSide: number;
  /** Brightness of each cell in suns (times the direct irradiance), rows from −y to +y, in each row from −x to +x. */
  readonly suns: readonly number[];
  /** Brightest cell. The mean over a cell: a tinier spot can be brighter. */
  readonly peak: Estimate;
}

/**
 * The map in the level plane at `height`. On the axis every ray stands for its images in all panels; off the axis, where
 * the sun stands off towards +x, for its mirror image in y.
 * @param area of mirror in plan times what of the light it gives back, mm²
 */
export function fluxMap(
  rays: Rays,
  height: number,
  halfSide: number,
  area: number,
  ribCount: number,
  onAxis: boolean,
): FluxMap {
  const turns = onAxis ? Math.min(ribCount, MAX_TURNS) : 1;
  const turn = Array.from({ length: turns }, (_, k) => {
    // any of the panels' angles is a symmetry; spread the chosen ones over the whole turn
    const angle = (2 * Math.PI * Math.round((k * ribCount) / turns)) / ribCount;
    return [Math.cos(angle), Math.sin(angle)] as const;
  });
  const cos = Float64Array.from(turn, ([c]) => c);
  const sin = Float64Array.from(turn, ([, s]) => s);
  const side = (2 * halfSide) / CELLS;
  const each = rays.count / rays.batches;
  const rise = height - rays.reference;
  const toCell = 1 / side;
  const maps = Array.from({ length: rays.batches }, (_, batch) => {
    const map = new Float64Array(CELLS * CELLS);
    let all = 0;
    for (let i = batch * each; i < (batch + 1) * each; i++) {
      const light = f32(rays.light, i);
      all += Math.abs(light);
      if (light <= 0 || !(f32(rays.low, i) < height && height < f32(rays.high, i))) continue;
      const x = f32(rays.x, i) + f32(rays.dxdz, i) * rise;
      const y = f32(rays.y, i) + f32(rays.dydz, i) * rise;
      if (x * x + y * y > 2 * halfSide * halfSide) continue;
      for (let k = 0; k < turns; k++) {
        const px = x * f64(cos, k) - y * f64(sin, k) + halfSide;
        const py = x * f64(sin, k) + y * f64(cos, k);
        if (!(px >= 0 && px < 2 * halfSide)) continue;
        const column = (px * toCell) | 0;
        if (Math.abs(py) < halfSide) {
          const above = (((py + halfSide) * toCell) | 0) * CELLS + column;
          const below = (((halfSide - py) * toCell) | 0) * CELLS + column;
          map[above] = f64(map, above) + light;
          map[below] = f64(map, below) + light;
        }
      }
    }
    const suns = area / (2 * turns * all * side * side);
    return map.map((light) => light * suns);
  });
  const suns = Array.from(
    { length: CELLS * CELLS },
    (_, cell) => maps.reduce((sum, map) => sum + f64(map, cell), 0) / maps.length,
  );
  const brightest = suns.reduce((best, value, cell) => (value > element(suns, best) ? cell : best), 0);
  return { cells: CELLS, halfSide, suns, peak: estimate(maps.map((map) => f64(map, brightest))) };
}
