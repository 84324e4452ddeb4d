/**
 * How bright it is round the dish: the light that the mirror sends through each cell of the space about it. A cell's
 * brightness is the length of ray within it times the light on each ray, over its volume: what a small surface takes up
 * that faces the light from wherever it comes (fluence rate; never less than what any flat surface there gets).
 */
import { f32, f64 } from '../../geometry/typed-arrays.js';
import type { Rays } from '../trace.js';

/** Where to look: a box about the axis, cells of one size. */
export interface BeamBox {
  readonly cell: number;
  /** Reach to either side of the axis, in whole cells. */
  readonly across: number;
  /** Cells from the vertex upward. */
  readonly up: number;
}

export interface BeamMap extends BeamBox {
  /** Suns, the brightest along y: rows from the vertex upward, in each from −x to +x. The sun stands off towards +x. */
  readonly side: Float64Array;
  /** Suns, the brightest along the axis outside the bowl: rows from the mid-plane to +y, in each from −x to +x. */
  readonly plan: Float64Array;
  /** Suns in each cell: layers from the vertex upward, in each rows from the mid-plane to +y, in each from −x to +x. */
  readonly suns: Float64Array;
  /** Suns at a place; the same at y and −y. */
  readonly at: (x: number, y: number, z: number) => number;
}

export interface BeamOptions {
  /** Area of mirror in plan times what it reflects, mm². */
  readonly given: number;
  readonly rim: { readonly radius: number; readonly height: number };
  /** What stands in the way: the light ends on it, and what it shades is missing. Null without it. */
  readonly vessel: { readonly radius: number; readonly height: number } | null;
}

/** Cell of directions, in slope; and the steepest slope away from the axis that is looked at. */
const SLOPE_CELL = 0.1;
const MAX_SLOPE = 6;

/**
 * Light of the brightest direction far from the dish: suns times the square of the distance, mm². Counted in cells of
 * some degrees; a cell of slopes (a, b) is (1 + a² + b²)^(-3/2) of its size as a solid angle.
 */
export function farIntensity(rays: Rays, options: BeamOptions): number {
  const across = Math.ceil(MAX_SLOPE / SLOPE_CELL);
  const cells = new Float64Array(2 * across * across);
  const perRay = options.given / rays.count;
  for (let i = 0; i < rays.count; i++) {
    const light = f32(rays.light, i);
    const [dx, dy] = [f32(rays.dxdz, i), Math.abs(f32(rays.dydz, i))];
    if (f32(rays.low, i) === -Infinity || (light < 0 && options.vessel !== null)) continue;
    if (Math.abs(dx) >= MAX_SLOPE || dy >= MAX_SLOPE || endOf(rays, i, options) < Infinity) continue;
    const place = Math.floor(dy / SLOPE_CELL) * 2 * across + Math.floor(dx / SLOPE_CELL) + across;
    // y is folded, so a cell stands for two
    const solidAngle = 2 * SLOPE_CELL ** 2 * (1 + dx * dx + dy * dy) ** -1.5;
    cells[place] = (cells[place] ?? 0) + (Math.abs(light) * perRay) / solidAngle;
  }
  return cells.reduce((max, one) => Math.max(max, one), 0);
}

/** A ray nearly level runs through a cell for ever; it counts this many cells at most. */
const MAX_LENGTH = 20;

/** The height at which a ray ends: on the vessel; at once for one that hits the bowl again; else never. */
function endOf(rays: Rays, i: number, { rim, vessel }: BeamOptions): number {
  const radiusAt = (height: number) =>
    Math.hypot(
      f32(rays.x, i) + f32(rays.dxdz, i) * (height - rays.reference),
      f32(rays.y, i) + f32(rays.dydz, i) * (height - rays.reference),
    );
  // the bowl is convex: a ray leaves it if it passes within the rim
  if (radiusAt(rim.height) > rim.radius) return rim.height;
  const low = f32(rays.low, i);
  return vessel !== null && low < vessel.height && radiusAt(vessel.height) <= vessel.radius ? vessel.height : Infinity;
}

/** Cost: rays times cells upward; about half a second for 131072 rays and 60 cells. */
export function beamMap(rays: Rays, box: BeamBox, options: BeamOptions): BeamMap {
  const { cell, across, up } = box;
  const width = 2 * across;
  const cells = new Float64Array(width * across * up);
  // y is folded onto its upper half, so a cell stands for two
  const perRay = options.given / (rays.count * 2 * cell * cell);
  for (let i = 0; i < rays.count; i++) {
    const light = f32(rays.light, i);
    const low = f32(rays.low, i);
    if (light === 0 || low === -Infinity || (light < 0 && options.vessel !== null)) continue;
    const [dx, dy] = [f32(rays.dxdz, i), f32(rays.dydz, i)];
    const suns = Math.abs(light) * perRay * Math.min(MAX_LENGTH, Math.sqrt(1 + dx * dx + dy * dy));
    const end = Math.min(up, Math.floor(endOf(rays, i, options) / cell));
    const first = Math.max(0, Math.ceil(low / cell));
    const rise = first + 0.5 - rays.reference / cell;
    // places in cells: from one layer to the next they move by the slopes
    let column = f32(rays.x, i) / cell + dx * rise + across;
    let row = f32(rays.y, i) / cell + dy * rise;
    for (let k = first; k < end; k++, column += dx, row += dy) {
      const off = Math.abs(row);
      if (column < 0 || column >= width || off >= across) continue;
      const place = (k * across + (off | 0)) * width + (column | 0);
      cells[place] = f64(cells, place) + suns;
    }
  }
  const side = new Float64Array(up * width);
  const plan = new Float64Array(across * width);
  const bowl = options.rim.height / cell;
  for (let k = 0, place = 0; k < up; k++)
    for (let row = 0; row < across; row++)
      for (let column = 0; column < width; column++, place++) {
        const suns = f64(cells, place);
        const [inSide, inPlan] = [k * width + column, row * width + column];
        if (suns > f64(side, inSide)) side[inSide] = suns;
        if (k >= bowl && suns > f64(plan, inPlan)) plan[inPlan] = suns;
      }
  return {
    ...box,
    suns: cells,
    side,
    plan,
    at: (x, y, z) =>
      cells[(Math.floor(z / cell) * across + Math.floor(Math.abs(y) / cell)) * width + Math.floor(x / cell) + across] ??
      0,
  };
}
