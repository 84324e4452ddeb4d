/**
 * The ray trace of the mirror: half panels, each ray in one of them. Points are spread evenly over the mirror's face in plan and carry the
 * light that falls on them, so no ray is wasted; the sun's disc, waviness and specularity are drawn for each. The
 * reflected rays are kept as lines, so that any vessel plane can be looked at afterwards.
 *
 * Light is not followed to a second reflection: a bowl that curves one way leaves every ray free up to the
 * axis. The shade of a deep dish's own rim, when it is aimed off the sun, is left out.
 */
import type { DishShape } from '../dish/index.js';
import {
  aimRays,
  BLOCK,
  type RayBlock,
  drawn,
  emptyBlock,
  mirrorOf,
  placeRays,
  reflectRays,
  scatterRays,
  tiltRays,
  turnRays,
} from './ray.js';
import { recurrenceSteps } from './sampling.js';
import type { SunShape } from './sun-shape.js';
import { randomFrom } from '../geometry/index.js';
import { f64 } from '../geometry/typed-arrays.js';

export interface TraceSettings {
  readonly shape: DishShape;
  /** Null for a point sun. */
  readonly sun: SunShape | null;
  /** Standard deviations, radians. */
  readonly slopeError: number;
  readonly specularity: number;
  /** Slope at the panels' edges in mrad, null for the estimate; 0 for none. */
  readonly edgeCurlMrad: number | null;
  /** Angle between axis and sun, radians. */
  readonly pointing: number;
  /** Direction in which the sun stands off: from +x, the mid-line of a panel, over +y; radians. */
  readonly towards: number;
  /** Standard deviation of rib height, mm, as a wave of one rib's length, each rib by itself. */
  readonly ribError: number;
  /** How far outward of their place all ribs stand, mm. */
  readonly ribShift: number;
  /** Side of flat mirror tiles along the panel, mm; 0 for a mirror that bends with its panel. */
  readonly tile: number;
  readonly rays: number;
  readonly batches: number;
  readonly seed: number;
}

/** Reflected rays as lines: they cross the level plane at `reference` in x, y and run on at dx/dz, dy/dz. */
export interface Rays {
  readonly count: number;
  readonly batches: number;
  /** Height of the reference plane above the vertex: the focal length. */
  readonly reference: number;
  readonly x: Float32Array;
  readonly y: Float32Array;
  readonly dxdz: Float32Array;
  readonly dydz: Float32Array;
  /**
   * The heights between which there is a ray: from where it leaves the mirror upward, or, from the part of a deep dish
   * above its focus, downward. None for a level one.
   */
  readonly low: Float32Array;
  readonly high: Float32Array;
  /** Towards the sun, from where the ray left the mirror: dx/dz and dy/dz. */
  readonly sunX: Float32Array;
  readonly sunY: Float32Array;
  /** Light on the ray, about 1; `withShade` makes that negative which a vessel keeps from the mirror. */
  readonly light: Float32Array;
}

/**
 * Traces. Cost: about a fifth of a microsecond a ray.
 * @param into rays of as many, no longer needed, which the new ones overwrite
 * @throws RangeError when the seam leaves nothing of the panels, or there is less than one ray a batch
 */
export function trace(settings: TraceSettings, into: Rays | null = null): Rays {
  const { batches, sun, specularity } = settings;
  const perBatch = Math.floor(settings.rays / batches);
  if (!(perBatch >= 1)) throw new RangeError(`${settings.rays} rays are too few for ${batches} batches`);
  const count = perBatch * batches;
  const reference = settings.shape.profile.focusHeight;
  const rays = into?.count === count ? { ...into, batches, reference } : emptyRays(count, batches, reference);
  const mirror = mirrorOf(settings);
  const block = emptyBlock();
  const columns = drawn(block);
  const steps = recurrenceSteps(columns.length);
  const next = randomFrom(settings.seed).real;
  for (let batch = 0; batch < batches; batch++) {
    const at = steps.map(next);
    const end = (batch + 1) * perBatch;
    for (let first = batch * perBatch; first < end; first += BLOCK) {
      const count = Math.min(BLOCK, end - first);
      columns.forEach((column, j) => {
        at[j] = draw(column, count, f64(at, j), f64(steps, j));
      });
      placeRays(block, count, mirror);
      aimRays(block, count, sun);
      turnRays(block, count, mirror);
      tiltRays(block, count, mirror);
      reflectRays(block, count);
      if (specularity > 0) scatterRays(block, count, specularity);
      keepRays(rays, first, block, count);
    }
  }
  return rays;
}

/** Traces rays that are looked at once: each call overwrites the rays of the one before. */
export function passingTraces(): (settings: TraceSettings) => Rays {
  let last: Rays | null = null;
  return (settings) => {
    last = trace(settings, last);
    return last;
  };
}

/** The next numbers of the recurrence; returns the last. */
function draw(column: Float64Array, count: number, last: number, step: number): number {
  let at = last;
  for (let i = 0; i < count; i++) {
    const moved = at + step;
    at = moved >= 1 ? moved - 1 : moved;
    column[i] = at;
  }
  return at;
}

function emptyRays(count: number, batches: number, reference: number): Rays {
  return {
    count,
    batches,
    reference,
    x: new Float32Array(count),
    y: new Float32Array(count),
    dxdz: new Float32Array(count),
    dydz: new Float32Array(count),
    low: new Float32Array(count),
    high: new Float32Array(count),
    sunX: new Float32Array(count),
    sunY: new Float32Array(count),
    light: new Float32Array(count),
  };
}

/** Keeps the rays as lines in the frame of the dish. */
function keepRays(rays: Rays, first: number, block: RayBlock, count: number): void {
  const { reference, x, y, dxdz, dydz, low, high, sunX, sunY, light } = rays;
  for (let i = 0, to = first; i < count; i++, to++) {
    const u = f64(block.u, i);
    const w = f64(block.w, i);
    const z = f64(block.z, i);
    const rx = f64(block.rx, i);
    const ry = f64(block.ry, i);
    const rz = f64(block.rz, i);
    const cos = f64(block.turnCos, i);
    const sin = f64(block.turnSin, i);
    const side = f64(block.mirrored, i);
    const level = Math.abs(rz) <= 1e-6;
    const perUp = level ? 0 : 1 / rz;
    const dx = rx * perUp;
    const dy = side * ry * perUp;
    const hitX = u + dx * (reference - z);
    const hitY = side * w + dy * (reference - z);
    x[to] = hitX * cos - hitY * sin;
    y[to] = hitX * sin + hitY * cos;
    dxdz[to] = dx * cos - dy * sin;
    dydz[to] = dx * sin + dy * cos;
    low[to] = rz > 0 && !level ? z : -Infinity;
    high[to] = rz > 0 && !level ? Infinity : level ? -Infinity : z;
    // a wall that the sun stands behind gets none
    light[to] = Math.max(0, f64(block.sz, i) - f64(block.sx, i) * f64(block.tan, i));
    const perSunUp = 1 / f64(block.dishZ, i);
    sunX[to] = f64(block.dishX, i) * perSunUp;
    sunY[to] = f64(block.dishY, i) * perSunUp;
  }
}
