/**
 * The steps of a ray: a place on a panel, the sun's direction there, the tilt of the mirror, the reflection. All in the
 * frame of the panel: x along its mid-line, y across, z up. Each step runs over a block of rays, column by column: one
 * ray at a time through the same steps takes twice as long. Random numbers have fixed columns.
 */
import { curlCells, curlTable, type MidLine, midLine, tiled } from './mid-line.js';
import type { SunShape } from './sun-shape.js';
import type { TraceSettings } from './trace.js';
import { f64 } from '../geometry/typed-arrays.js';
import { interpolated } from './typed-arrays.js';

const TURN = 2 * Math.PI;

/** What all rays have in common. */
export interface Mirror {
  readonly settings: TraceSettings;
  readonly line: MidLine;
  readonly curl: Float64Array | null;
  /** Slope along a panel from ribs of uneven height, standard deviation. */
  readonly ribWave: number;
  /** ∫halfWidth du up to the inner end, and from there to the outer. */
  readonly widthFrom: number;
  readonly widthAll: number;
  readonly cosPointing: number;
  readonly sinPointing: number;
}

/** Rays in a block: its columns fit into a core's cache. */
export const BLOCK = 512;

const columnNames = [
  // place on the panel, along, across and up; half its width and tan ψ there
  ...(['u', 'w', 'z', 'half', 'tan'] as const),
  // the panel's turn about the axis, and −1 for the half that is traced in the mirror
  ...(['turnCos', 'turnSin', 'mirrored'] as const),
  // towards the sun, a unit vector
  ...(['sx', 'sy', 'sz'] as const),
  // tilt of the mirror along the panel and across it
  ...(['along', 'across'] as const),
  // the reflected ray
  ...(['rx', 'ry', 'rz'] as const),
] as const;

/** A block of rays, changed from step to step. */
export interface RayBlock extends Readonly<Record<(typeof columnNames)[number], Float64Array>> {
  /** Random numbers of each use. */
  readonly choice: Float64Array;
  readonly place: readonly [Float64Array, Float64Array];
  readonly disc: readonly [Float64Array, Float64Array];
  readonly slope: readonly [Float64Array, Float64Array];
  readonly haze: readonly [Float64Array, Float64Array];
}

const column = () => new Float64Array(BLOCK);
const pair = () => [column(), column()] as const;

export function emptyBlock(): RayBlock {
  const columns = Object.fromEntries(columnNames.map((name) => [name, column()]));
  const block = { ...columns, choice: column(), place: pair(), disc: pair(), slope: pair(), haze: pair() } as RayBlock;
  block.turnCos.fill(1);
  block.mirrored.fill(1);
  return block;
}

/** The columns of random numbers in the order in which they are drawn. */
export function drawn({ choice, place, disc, slope, haze }: RayBlock): readonly Float64Array[] {
  return [choice, ...place, ...disc, ...slope, ...haze];
}

export function mirrorOf(settings: TraceSettings): Mirror {
  const { shape, pointing, ribError, edgeCurlMrad } = settings;
  const line = midLine(shape);
  const { from, to, widthSlope: k, widthTaken: m } = line;
  const widthFrom = (k * from * from) / 2 - m * from;
  return {
    settings,
    line: settings.tile > 0 ? tiled(line, settings.tile) : line,
    curl: edgeCurlMrad === 0 ? null : curlTable(shape, line, edgeCurlMrad),
    ribWave: ribSlopes(line, ribError),
    widthFrom,
    widthAll: (k * to * to) / 2 - m * to - widthFrom,
    cosPointing: Math.cos(pointing),
    sinPointing: Math.sin(pointing),
  };
}

/**
 * Slope along a panel that two ribs give it whose height deviates by σ (a wave as long as the lit rib, each rib by
 * itself): the mean of the two has σ/√2, and a wave of length L and standard deviation s has the slope 2π·s/L.
 */
function ribSlopes(line: MidLine, ribError: number): number {
  return (2 * Math.PI * ribError * Math.SQRT1_2) / (line.to - line.from);
}

/** Where on the panel: ∫halfWidth du is a quadratic of u. */
export function placeRays(block: RayBlock, count: number, { line, widthFrom, widthAll }: Mirror): void {
  const { from, to, widthSlope: k, widthTaken: m, height, tanSlope } = line;
  const [length, width] = block.place;
  const { u, w, z, half, tan } = block;
  const perMm = line.cells / (to - from);
  for (let i = 0; i < count; i++) {
    const taken = widthFrom + widthAll * f64(length, i);
    const at = Math.min(to, Math.max(from, (m + Math.sqrt(m * m + 2 * k * taken)) / k));
    const index = (at - from) * perMm;
    u[i] = at;
    half[i] = k * at - m;
    w[i] = f64(width, i) * (k * at - m);
    z[i] = interpolated(height, index);
    tan[i] = interpolated(tanSlope, index);
  }
}

/** The sun's direction: the axis, or a point of the disc about it. */
export function aimRays({ disc: [share, turn], sx, sy, sz }: RayBlock, count: number, sun: SunShape | null): void {
  if (sun === null) {
    sx.fill(0);
    sy.fill(0);
    sz.fill(1);
    return;
  }
  const { angleAtShare } = sun;
  const last = angleAtShare.length - 1;
  for (let i = 0; i < count; i++) {
    const sine = Math.sin(interpolated(angleAtShare, f64(share, i) * last));
    const x = sine * Math.cos(TURN * f64(turn, i));
    const y = sine * Math.sin(TURN * f64(turn, i));
    sx[i] = x;
    sy[i] = y;
    sz[i] = Math.sqrt(1 - x * x - y * y);
  }
}

/** Off the axis: which half of which panel, and the sun in that panel's frame; the ray is turned back at the end. */
export function turnRays(block: RayBlock, count: number, { settings, cosPointing, sinPointing }: Mirror): void {
  const { choice, sx, sy, sz, turnCos, turnSin, mirrored } = block;
  const { ribs, halfAngle } = settings.shape.layout;
  const halves = 2 * ribs.length;
  for (let i = 0; i < count; i++) {
    const [x, y, z] = [f64(sx, i), f64(sy, i), f64(sz, i)];
    const tilted = x * cosPointing + z * sinPointing;
    const number = (f64(choice, i) * halves) | 0;
    const side = number % 2 === 0 ? 1 : -1;
    const turn = (number >> 1) * 2 * halfAngle;
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    mirrored[i] = side;
    turnCos[i] = cos;
    turnSin[i] = sin;
    sx[i] = tilted * cos + y * sin;
    sy[i] = side * (y * cos - tilted * sin);
    sz[i] = z * cosPointing - x * sinPointing;
  }
}

/** The tilt of the mirror from curled edges, waviness and ribs of uneven height. */
export function tiltRays(block: RayBlock, count: number, { settings, curl, line, ribWave }: Mirror): void {
  const { slopeError, ribError } = settings;
  const { u, w, half, along, across, slope } = block;
  const [size, turn] = slope;
  const length = line.to - line.from;
  along.fill(0);
  across.fill(0);
  if (curl)
    for (let i = 0; i < count; i++) {
      const h = f64(half, i);
      across[i] = curlAt(curl, (f64(u, i) - line.from) / length, h > 0 ? f64(w, i) / h : 0);
    }
  if (slopeError === 0 && ribError === 0) return;
  const lengthwise = Math.sqrt(slopeError * slopeError + ribWave * ribWave);
  for (let i = 0; i < count; i++) {
    const deviation = Math.sqrt(-2 * Math.log(1 - f64(size, i)));
    const h = f64(half, i);
    const uneven = h > 0 ? (Math.SQRT1_2 * ribError) / h : 0;
    along[i] = deviation * Math.cos(TURN * f64(turn, i)) * lengthwise;
    across[i] =
      f64(across, i) + deviation * Math.sin(TURN * f64(turn, i)) * Math.sqrt(slopeError * slopeError + uneven * uneven);
  }
}

/** The table of edge curl at shares of the panel's length and half-width. */
function curlAt(curl: Float64Array, length: number, width: number): number {
  const row = length * curlCells;
  const place = width * curlCells;
  const r = Math.min(curlCells - 1, row | 0);
  const c = Math.min(curlCells - 1, place | 0);
  const o = r * (curlCells + 1) + c;
  const next = o + curlCells + 1;
  const part = place - c;
  return (
    (1 - (row - r)) * ((1 - part) * f64(curl, o) + part * f64(curl, o + 1)) +
    (row - r) * ((1 - part) * f64(curl, next) + part * f64(curl, next + 1))
  );
}

/** The reflection on the tilted mirror. */
export function reflectRays(block: RayBlock, count: number): void {
  const { rx, ry, rz } = block;
  for (let i = 0; i < count; i++) {
    const [sx, sy, sz] = [f64(block.sx, i), f64(block.sy, i), f64(block.sz, i)];
    const [a, b] = [f64(block.along, i), f64(block.across, i)];
    const tan = f64(block.tan, i);
    const cosPsi = 1 / Math.sqrt(1 + tan * tan);
    const sinPsi = tan * cosPsi;
    const nx = -sinPsi + a * cosPsi;
    const nz = cosPsi + a * sinPsi;
    const norm = 1 / Math.sqrt(nx * nx + b * b + nz * nz);
    const twice = 2 * norm * norm * (sx * nx + sy * b + sz * nz);
    rx[i] = twice * nx - sx;
    ry[i] = twice * b - sy;
    rz[i] = twice * nz - sz;
  }
}

/** Spreads the reflected rays by the mirror's haze. */
export function scatterRays({ haze: [size, turn], rx, ry, rz }: RayBlock, count: number, specularity: number): void {
  for (let i = 0; i < count; i++) {
    const [x, y, z] = [f64(rx, i), f64(ry, i), f64(rz, i)];
    const deviation = specularity * Math.sqrt(-2 * Math.log(1 - f64(size, i)));
    const g1 = deviation * Math.cos(TURN * f64(turn, i));
    const g2 = deviation * Math.sin(TURN * f64(turn, i));
    const flat = 1 / Math.sqrt(x * x + z * z);
    const ex = z * flat;
    const ez = -x * flat;
    // second direction across the ray: r × e
    rx[i] = x + g1 * ex + g2 * y * ez;
    ry[i] = y + g2 * (z * ex - x * ez);
    rz[i] = z + g1 * ez - g2 * y * ex;
  }
}
