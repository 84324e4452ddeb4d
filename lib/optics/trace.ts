/**
 * The ray trace over one half panel, rotated. Points are spread evenly over the mirror's face in plan and carry the
 * light that falls on them, so no ray is wasted; the sun's disc, waviness and specularity are drawn for each. The
 * reflected rays are kept as lines, so that any receiver plane can be looked at afterwards.
 *
 * Light is not followed to a second meeting with the dish: a bowl that curves one way leaves every ray free up to the
 * axis. The shade of a deep dish's own rim, when it is aimed off the sun, is left out.
 */
import type { DishShape } from '../dish/index.js';
import { curlCells, curlTable, type MidLine, midLine } from './mid-line.js';
import { recurrenceSteps, uniformNumbers } from './sampling.js';
import type { SunShape } from './sun-shape.js';

/** Half panel choice and its number, place (2), sun (2), slope (2), specularity (2). */
const DIMENSIONS = 9;

export interface TraceSettings {
  readonly shape: DishShape;
  /** Null for a point sun. */
  readonly sun: SunShape | null;
  /** Standard deviations, radians. */
  readonly slopeError: number;
  readonly specularity: number;
  /** Slope at the panels' edges in mrad, null for the estimate; 0 for none. */
  readonly edgeCurlMrad: number | null;
  /** Angle between axis and sun, radians; the sun stands off towards +x, the mid-line of a panel. */
  readonly pointing: number;
  /** Standard deviation of rib height, mm, as a wave of one rib's length, each rib by itself. */
  readonly ribError: number;
  /** A level disc that shades the dish: radius (0 for none) and height above the vertex, mm. */
  readonly shade: { readonly radius: number; readonly height: number };
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
  /** Light on the ray, about 1; the sign of what the shade takes is negative. */
  readonly light: Float32Array;
}

/**
 * Traces. Cost: about a third of a microsecond a ray.
 * @throws RangeError when the seam leaves nothing of the panels, or there is less than one ray a batch
 */
export function trace(settings: TraceSettings): Rays {
  const { shape, sun, slopeError, specularity, pointing, ribError, batches } = settings;
  const perBatch = Math.floor(settings.rays / batches);
  if (!(perBatch >= 1)) throw new RangeError(`${settings.rays} rays are too few for ${batches} batches`);
  const count = perBatch * batches;
  const rays: Rays = {
    count,
    batches,
    reference: shape.profile.focusHeight,
    x: new Float32Array(count),
    y: new Float32Array(count),
    dxdz: new Float32Array(count),
    dydz: new Float32Array(count),
    low: new Float32Array(count),
    high: new Float32Array(count),
    light: new Float32Array(count),
  };
  const line = midLine(shape);
  const curl = settings.edgeCurlMrad === 0 ? null : curlTable(shape, line, settings.edgeCurlMrad);
  const angles = sun?.angleAtShare;
  const ribWave = ribSlopes(line, ribError);
  const shadeRadius2 = settings.shade.radius ** 2;
  const shadeHeight = settings.shade.height;
  const { from, to, widthSlope: k, widthTaken: m, height, tanSlope, cells } = line;
  const cellOf = cells / (to - from);
  const widthFrom = (k * from * from) / 2 - m * from;
  const widthWhole = (k * to * to) / 2 - m * to - widthFrom;
  const cosPointing = Math.cos(pointing);
  const sinPointing = Math.sin(pointing);
  const offAxis = pointing !== 0;
  const steps = recurrenceSteps(DIMENSIONS);
  const next = uniformNumbers(settings.seed);
  const at = new Float64Array(DIMENSIONS);
  const TURN = 2 * Math.PI;
  const side = curlCells + 1;

  for (let batch = 0, i = 0; batch < batches; batch++) {
    for (let j = 0; j < DIMENSIONS; j++) at[j] = next();
    for (const end = i + perBatch; i < end; i++) {
      for (let j = 0; j < DIMENSIONS; j++) {
        const moved = at[j]! + steps[j]!;
        at[j] = moved >= 1 ? moved - 1 : moved;
      }
      // where on the panel: ∫halfWidth du is a quadratic of u
      const taken = widthFrom + widthWhole * at[1]!;
      const u = Math.min(to, Math.max(from, (m + Math.sqrt(m * m + 2 * k * taken)) / k));
      const half = k * u - m;
      const w = at[2]! * half;
      const cellAt = (u - from) * cellOf;
      const cell = Math.min(cells - 1, cellAt | 0);
      const part = cellAt - cell;
      const z = height[cell]! + part * (height[cell + 1]! - height[cell]!);
      const tan = tanSlope[cell]! + part * (tanSlope[cell + 1]! - tanSlope[cell]!);
      const cosPsi = 1 / Math.sqrt(1 + tan * tan);
      const sinPsi = tan * cosPsi;

      // towards the sun
      let sx = 0;
      let sy = 0;
      if (angles) {
        const shareAt = at[3]! * (angles.length - 1);
        const low = shareAt | 0;
        const angle = angles[low]! + (shareAt - low) * (angles[low + 1]! - angles[low]!);
        const sine = Math.sin(angle);
        sx = sine * Math.cos(TURN * at[4]!);
        sy = sine * Math.sin(TURN * at[4]!);
      }
      let sz = Math.sqrt(1 - sx * sx - sy * sy);
      let turnCos = 1;
      let turnSin = 0;
      let mirrored = 1;
      if (offAxis) {
        const tilted = sx * cosPointing + sz * sinPointing;
        sz = sz * cosPointing - sx * sinPointing;
        // which half of which panel; the ray is traced in that panel's frame and turned back
        const half2 = at[0]! * 2 * shape.layout.ribs.length;
        const number = half2 | 0;
        mirrored = number % 2 === 0 ? 1 : -1;
        const turn = (number >> 1) * 2 * shape.layout.halfAngle;
        turnCos = Math.cos(turn);
        turnSin = Math.sin(turn);
        sx = tilted * turnCos + sy * turnSin;
        sy = mirrored * (sy * turnCos - tilted * turnSin);
      }

      // a wall that the sun stands behind gets none
      const light = Math.max(0, sz - sx * tan);
      let shaded = false;
      if (shadeRadius2 > 0 && shadeHeight > z) {
        const px = u + (sx / sz) * (shadeHeight - z);
        const py = w + (sy / sz) * (shadeHeight - z);
        shaded = px * px + py * py < shadeRadius2;
      }

      // the normal: tilted along the panel (a) and across it (b)
      let a = 0;
      let b = 0;
      if (curl) {
        const row = ((u - from) / (to - from)) * curlCells;
        const column = half > 0 ? (w / half) * curlCells : 0;
        const r0 = Math.min(curlCells - 1, row | 0);
        const c0 = Math.min(curlCells - 1, column | 0);
        const pr = row - r0;
        const pc = column - c0;
        const o = r0 * side + c0;
        b +=
          (1 - pr) * ((1 - pc) * curl[o]! + pc * curl[o + 1]!) +
          pr * ((1 - pc) * curl[o + side]! + pc * curl[o + side + 1]!);
      }
      if (slopeError > 0 || ribError > 0) {
        const size = Math.sqrt(-2 * Math.log(1 - at[5]!));
        const g1 = size * Math.cos(TURN * at[6]!);
        const g2 = size * Math.sin(TURN * at[6]!);
        const across = ribError > 0 && half > 0 ? (Math.SQRT1_2 * ribError) / half : 0;
        a += g1 * Math.sqrt(slopeError * slopeError + ribWave * ribWave);
        b += g2 * Math.sqrt(slopeError * slopeError + across * across);
      }
      let nx = -sinPsi + a * cosPsi;
      let ny = b;
      let nz = cosPsi + a * sinPsi;
      const norm = 1 / Math.sqrt(nx * nx + ny * ny + nz * nz);
      nx *= norm;
      ny *= norm;
      nz *= norm;
      const twice = 2 * (sx * nx + sy * ny + sz * nz);
      let rx = twice * nx - sx;
      let ry = twice * ny - sy;
      let rz = twice * nz - sz;
      if (specularity > 0) {
        const size = specularity * Math.sqrt(-2 * Math.log(1 - at[7]!));
        const g1 = size * Math.cos(TURN * at[8]!);
        const g2 = size * Math.sin(TURN * at[8]!);
        const flat = 1 / Math.sqrt(rx * rx + rz * rz);
        const ex = rz * flat;
        const ez = -rx * flat;
        // second direction across the ray: r × e
        const fx = ry * ez;
        const fy = rz * ex - rx * ez;
        const fz = -ry * ex;
        rx += g1 * ex + g2 * fx;
        ry += g2 * fy;
        rz += g1 * ez + g2 * fz;
      }
      const level = Math.abs(rz) <= 1e-6;
      const dx = level ? 0 : rx / rz;
      const dy = level ? 0 : ry / rz;
      const rise = shape.profile.focusHeight - z;
      const hitX = u + dx * rise;
      const hitY = mirrored * (w + dy * rise);
      const slopeY = mirrored * dy;
      rays.x[i] = hitX * turnCos - hitY * turnSin;
      rays.y[i] = hitX * turnSin + hitY * turnCos;
      rays.dxdz[i] = dx * turnCos - slopeY * turnSin;
      rays.dydz[i] = dx * turnSin + slopeY * turnCos;
      rays.low[i] = rz > 0 && !level ? z : -Infinity;
      rays.high[i] = rz > 0 && !level ? Infinity : level ? -Infinity : z;
      rays.light[i] = shaded ? -light : light;
    }
  }
  return rays;
}

/**
 * Slope along a panel that two ribs give it whose height strays by σ (a wave as long as the lit rib, each rib by
 * itself): the mean of the two has σ/√2, and a wave of length L and standard deviation s has the slope 2π·s/L.
 */
function ribSlopes(line: MidLine, ribError: number): number {
  return (2 * Math.PI * ribError * Math.SQRT1_2) / (line.to - line.from);
}
