/**
 * The steps of a ray: a place on a panel, the sun's direction there, the tilt of the mirror, the reflection. All in the
 * frame of the panel: x along its mid-line, y across, z up. Each step runs over a block of rays, column by column: one
 * ray at a time through the same steps takes twice as long. Random numbers have fixed columns.
 */
import { onCircle } from './circle.js';
import { curlCells, curlTable, type MidLine, midLine, tiled } from './mid-line.js';
import type { SunShape } from './sun-shape.js';
import type { TraceSettings } from './trace.js';
import { f64 } from '../geometry/typed-arrays.js';
import { interpolated } from './typed-arrays.js';

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
  /** Cosine and sine of each panel's angle, and of that less the direction in which the sun stands off. */
  readonly turns: { readonly cos: Float64Array; readonly sin: Float64Array };
  readonly sunTurns: { readonly cos: Float64Array; readonly sin: Float64Array };
}

/** Cosines and sines of the angles of all panels, less `from`. */
function turnsOf({ ribs, halfAngle }: TraceSettings['shape']['layout'], from: number) {
  const angles = ribs.map((_, i) => 2 * i * halfAngle - from);
  return { cos: Float64Array.from(angles, Math.cos), sin: Float64Array.from(angles, Math.sin) };
}

/** Rays in a block: its columns fit into a core's cache. */
export const BLOCK = 512;

const column = () => new Float64Array(BLOCK);
const pair = () => [column(), column()] as const;

/** A block of rays, changed from step to step. Written out: code is compiled for objects that are made at one place. */
export const emptyBlock = () => ({
  // place on the panel, along, across and up; half its width and tan ψ there
  u: column(),
  w: column(),
  z: column(),
  half: column(),
  tan: column(),
  // the panel's turn about the axis, and −1 for the half that is traced in the mirror
  turnCos: column(),
  turnSin: column(),
  mirrored: column(),
  // towards the sun, a unit vector: in the frame of the dish, and of the panel
  dishX: column(),
  dishY: column(),
  dishZ: column(),
  sx: column(),
  sy: column(),
  sz: column(),
  // tilt of the mirror along the panel and across it
  along: column(),
  across: column(),
  // a point of the unit circle, of each step that draws a direction
  circleCos: column(),
  circleSin: column(),
  // the reflected ray
  rx: column(),
  ry: column(),
  rz: column(),
  // random numbers of each use
  choice: column(),
  place: pair(),
  disc: pair(),
  slope: pair(),
  haze: pair(),
});

export type RayBlock = Readonly<ReturnType<typeof emptyBlock>>;

/** The columns of random numbers in the order in which they are drawn. */
export function drawn({ choice, place, disc, slope, haze }: RayBlock): readonly Float64Array[] {
  return [choice, ...place, ...disc, ...slope, ...haze];
}

/** A forecast traces one dish with one curl some hundred times over. */
const curls = new WeakMap<TraceSettings['shape'], Map<number | null, Float64Array>>();

function curlOf(shape: TraceSettings['shape'], line: MidLine, edgeMrad: number | null): Float64Array {
  const known = curls.get(shape) ?? new Map<number | null, Float64Array>();
  curls.set(shape, known);
  const table = known.get(edgeMrad) ?? curlTable(shape, line, edgeMrad);
  known.set(edgeMrad, table);
  return table;
}

export function mirrorOf(settings: TraceSettings): Mirror {
  const { shape, pointing, towards, ribError, edgeCurlMrad } = settings;
  const line = midLine(shape);
  const { from, to, widthSlope: k, widthTaken: m } = line;
  const widthFrom = (k * from * from) / 2 - m * from;
  return {
    settings,
    line: settings.tile > 0 ? tiled(line, settings.tile) : line,
    curl: edgeCurlMrad === 0 ? null : curlOf(shape, line, edgeCurlMrad),
    ribWave: ribSlopes(line, ribError),
    widthFrom,
    widthAll: (k * to * to) / 2 - m * to - widthFrom,
    cosPointing: Math.cos(pointing),
    sinPointing: Math.sin(pointing),
    turns: turnsOf(shape.layout, 0),
    sunTurns: turnsOf(shape.layout, towards),
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
export function placeRays(block: RayBlock, count: number, { line, widthFrom, widthAll, settings }: Mirror): void {
  const { from, to, widthSlope: k, widthTaken: m, height, tanSlope } = line;
  const [length, width] = block.place;
  const { u, w, z, half, tan } = block;
  const perMm = line.cells / (to - from);
  for (let i = 0; i < count; i++) {
    const taken = widthFrom + widthAll * f64(length, i);
    const at = Math.min(to, Math.max(from, (m + Math.sqrt(m * m + 2 * k * taken)) / k));
    // a rib that was pushed outward has the height and slope of its own radius
    const index = Math.min(line.cells, Math.max(0, at - settings.ribShift - from) * perMm);
    u[i] = at;
    half[i] = k * at - m;
    w[i] = f64(width, i) * (k * at - m);
    z[i] = interpolated(height, index);
    tan[i] = interpolated(tanSlope, index);
  }
}

/** The sun's direction about its centre: the centre, or a point of the disc. */
export function aimRays(
  { disc: [share, turn], circleCos, circleSin, dishX, dishY, dishZ }: RayBlock,
  count: number,
  sun: SunShape | null,
): void {
  if (sun === null) {
    dishX.fill(0);
    dishY.fill(0);
    dishZ.fill(1);
    return;
  }
  const { angleAtShare } = sun;
  const last = angleAtShare.length - 1;
  onCircle(turn, count, circleCos, circleSin);
  for (let i = 0; i < count; i++) {
    const sine = Math.sin(interpolated(angleAtShare, f64(share, i) * last));
    const x = sine * f64(circleCos, i);
    const y = sine * f64(circleSin, i);
    dishX[i] = x;
    dishY[i] = y;
    dishZ[i] = Math.sqrt(1 - x * x - y * y);
  }
}

/** Which half of which panel, and the sun in the panel's frame and in the dish's. */
export function turnRays(
  block: RayBlock,
  count: number,
  { settings, cosPointing, sinPointing, turns, sunTurns }: Mirror,
): void {
  const { choice, dishX, dishY, dishZ, sx, sy, sz, turnCos, turnSin, mirrored } = block;
  const halves = 2 * settings.shape.layout.ribs.length;
  const [cosTowards, sinTowards] = [Math.cos(settings.towards), Math.sin(settings.towards)];
  for (let i = 0; i < count; i++) {
    const x = f64(dishX, i);
    const y = f64(dishY, i);
    const z = f64(dishZ, i);
    const tilted = x * cosPointing + z * sinPointing;
    const number = (f64(choice, i) * halves) | 0;
    const side = number % 2 === 0 ? 1 : -1;
    const panel = number >> 1;
    const cos = f64(sunTurns.cos, panel);
    const sin = f64(sunTurns.sin, panel);
    mirrored[i] = side;
    turnCos[i] = f64(turns.cos, panel);
    turnSin[i] = f64(turns.sin, panel);
    sx[i] = tilted * cos + y * sin;
    sy[i] = side * (y * cos - tilted * sin);
    const up = z * cosPointing - x * sinPointing;
    sz[i] = up;
    dishX[i] = tilted * cosTowards - y * sinTowards;
    dishY[i] = tilted * sinTowards + y * cosTowards;
    dishZ[i] = up;
  }
}

/** The tilt of the mirror from curled edges, waviness and ribs of uneven height. */
export function tiltRays(block: RayBlock, count: number, { settings, curl, line, ribWave }: Mirror): void {
  const { slopeError, ribError } = settings;
  const { u, w, half, along, across, slope, circleCos, circleSin } = block;
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
  onCircle(turn, count, circleCos, circleSin);
  const lengthwise = Math.sqrt(slopeError * slopeError + ribWave * ribWave);
  for (let i = 0; i < count; i++) {
    const deviation = Math.sqrt(-2 * Math.log(1 - f64(size, i)));
    const h = f64(half, i);
    const uneven = h > 0 ? (Math.SQRT1_2 * ribError) / h : 0;
    along[i] = deviation * f64(circleCos, i) * lengthwise;
    across[i] = f64(across, i) + deviation * f64(circleSin, i) * Math.sqrt(slopeError * slopeError + uneven * uneven);
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
    const sx = f64(block.sx, i);
    const sy = f64(block.sy, i);
    const sz = f64(block.sz, i);
    const a = f64(block.along, i);
    const b = f64(block.across, i);
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
export function scatterRays(
  { haze: [size, turn], circleCos, circleSin, rx, ry, rz }: RayBlock,
  count: number,
  specularity: number,
): void {
  onCircle(turn, count, circleCos, circleSin);
  for (let i = 0; i < count; i++) {
    const x = f64(rx, i);
    const y = f64(ry, i);
    const z = f64(rz, i);
    const deviation = specularity * Math.sqrt(-2 * Math.log(1 - f64(size, i)));
    const g1 = deviation * f64(circleCos, i);
    const g2 = deviation * f64(circleSin, i);
    const flat = 1 / Math.sqrt(x * x + z * z);
    const ex = z * flat;
    const ez = -x * flat;
    // second direction across the ray: r × e
    rx[i] = x + g1 * ex + g2 * y * ez;
    ry[i] = y + g2 * (z * ex - x * ez);
    rz[i] = z + g1 * ez - g2 * y * ex;
  }
}
