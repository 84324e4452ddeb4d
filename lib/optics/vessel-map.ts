/** How bright each place of the vessel is. */
import { element } from '../geometry/index.js';
import { f64 } from '../geometry/typed-arrays.js';
import { absorptances, lightOn } from './catch.js';
import { estimate } from './estimate.js';
import { type Solid, type Surface, surfaces } from './solid.js';
import type { Rays } from './trace.js';
import type { Estimate, Vessel } from './types.js';

/** Cells across a base or lid, and round half a side, which is alike on the left and the right. */
const ACROSS = 41;
const ROUND = 24;
/** Height of a cell on the side, mm, about. */
const CELL_HEIGHT = 10;

export interface SurfaceMap {
  readonly surface: Surface;
  /** Rows from −y to +y of a base or lid, or from the base up on a side; columns from −x to +x, or from the upper rim round to the lower. */
  readonly columns: number;
  readonly rows: number;
  readonly suns: readonly number[];
  /** Brightest cell, suns. */
  readonly peak: Estimate;
}

export interface VesselMap {
  readonly maps: readonly SurfaceMap[];
  /** Brightest place of all, suns. */
  readonly peak: Estimate;
  readonly peakOn: Surface;
  /** Brightest place by what is taken up, suns times absorptance. */
  readonly hottest: Estimate;
}

const exactZero: Estimate = { value: 0, standardError: 0 };

/**
 * The maps of all surfaces that get light. The sun may stand off the axis upward or downward only: left and right are
 * folded.
 * @param area of mirror in plan times what it gives back, mm²
 */
export function vesselMap(rays: Rays, solid: Solid, vessel: Vessel, area: number): VesselMap {
  const { radius, height } = solid;
  const rows = Math.max(1, Math.round(height / CELL_HEIGHT));
  const side = (2 * radius) / ACROSS;
  const cellsOf = (surface: Surface) => (surface === 'side' ? ROUND * rows : ACROSS * ACROSS);
  const counts = surfaces.map((surface) =>
    Array.from({ length: rays.batches }, () => new Float64Array(cellsOf(surface))),
  );
  const all = new Float64Array(rays.batches);
  const each = rays.count / rays.batches;
  for (let i = 0; i < rays.count; i++)
    all[Math.floor(i / each)] = f64(all, Math.floor(i / each)) + Math.abs(rays.light[i] ?? 0);
  lightOn(rays, solid, (batch, code, at, light) => {
    const cells = counts[code - 1]?.[batch];
    if (!cells) return;
    const add = (cell: number, share: number) => {
      cells[cell] = f64(cells, cell) + share;
    };
    if (surfaces[code - 1] === 'side') {
      const column = Math.min(ROUND - 1, Math.floor((Math.abs(at.a) / Math.PI) * ROUND));
      add(Math.min(rows - 1, Math.floor((at.b / height) * rows)) * ROUND + column, light / 2);
      return;
    }
    const column = Math.min(ACROSS - 1, Math.floor((at.a + radius) / side));
    for (const b of [at.b, -at.b])
      add(Math.min(ACROSS - 1, Math.max(0, Math.floor((b + radius) / side))) * ACROSS + column, light / 2);
  });
  const sideCell = ((Math.PI * radius) / ROUND) * (height / rows);
  const maps = surfaces.flatMap((surface, k): SurfaceMap[] => {
    const batches = counts[k] ?? [];
    const cell = surface === 'side' ? sideCell : side * side;
    const suns = Array.from(
      { length: cellsOf(surface) },
      (_, i) =>
        batches.reduce((sum, one, batch) => sum + (f64(one, i) * area) / (cell * f64(all, batch)), 0) / batches.length,
    );
    if (!suns.some((one) => one > 0)) return [];
    const brightest = suns.reduce((best, value, i) => (value > element(suns, best) ? i : best), 0);
    const peak = estimate(batches.map((one, batch) => (f64(one, brightest) * area) / (cell * f64(all, batch))));
    return surface === 'side'
      ? [{ surface, columns: ROUND, rows, suns, peak }]
      : [{ surface, columns: ACROSS, rows: ACROSS, suns, peak }];
  });
  const alpha = absorptances(vessel);
  const brightestBy = (weigh: (surface: Surface) => number) =>
    maps.reduce<SurfaceMap | null>(
      (best, one) =>
        best === null || one.peak.value * weigh(one.surface) > best.peak.value * weigh(best.surface) ? one : best,
      null,
    );
  const bright = brightestBy(() => 1);
  // light through a mouth is spread over the inside of the cavity
  const hot = brightestBy((surface) => (surface === 'mouth' ? 0 : alpha[surface]));
  const weight = hot ? alpha[hot.surface] : 0;
  return {
    maps,
    peak: bright?.peak ?? exactZero,
    peakOn: bright?.surface ?? 'base',
    hottest: hot ? { value: hot.peak.value * weight, standardError: hot.peak.standardError * weight } : exactZero,
  };
}
