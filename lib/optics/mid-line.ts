/** The panel as the trace sees it: tables over the mid-line's radius. */
import { type DishShape, facetAt, litRange } from '../dish/index.js';
import { curlSlope } from './edge-curl.js';
import { f64 } from '../geometry/typed-arrays.js';

/** Linear interpolation over so many cells errs by under 1e-5 mm in height on any dish in use. */
const CELLS = 2048;
/** Cells of the table of edge curl, along and across the panel. */
export const curlCells = 32;

export interface MidLine {
  readonly from: number;
  readonly to: number;
  /** Half the reflecting width is slope·u − taken. */
  readonly widthSlope: number;
  readonly widthTaken: number;
  readonly cells: number;
  readonly height: Float64Array;
  readonly tanSlope: Float64Array;
}

/** A forecast traces one dish some forty times over. */
const made = new WeakMap<DishShape, MidLine>();

/**
 * Tables of the lit part of a panel's mid-line. It ends where the ribs do, and begins where they do, or where the seam
 * has narrowed the panel to nothing. Made once for each dish.
 * @throws RangeError when nothing of the panel is left
 */
export function midLine(shape: DishShape): MidLine {
  const line = made.get(shape) ?? tabulated(shape);
  made.set(shape, line);
  return line;
}

function tabulated(shape: DishShape): MidLine {
  const lit = litRange(shape);
  const widthSlope = Math.tan(shape.layout.halfAngle);
  const widthTaken = shape.seamGap / 2 / Math.cos(shape.layout.halfAngle) - shape.layout.halfPitch;
  const from = Math.max(lit.from, widthTaken / widthSlope);
  const to = lit.to;
  if (!(to > from)) throw new RangeError(`a seam of ${shape.seamGap} mm leaves nothing of the panels`);
  const height = new Float64Array(CELLS + 1);
  const tanSlope = new Float64Array(CELLS + 1);
  for (let i = 0; i <= CELLS; i++) {
    const facet = facetAt(shape, Math.max(from + ((to - from) * i) / CELLS, 1e-9));
    height[i] = facet.z;
    tanSlope[i] = Math.tan(facet.slopeAngle);
  }
  return { from, to, widthSlope, widthTaken, cells: CELLS, height, tanSlope };
}

/**
 * The mid-line laid with flat tiles from its inner end: each tile is a chord of the curve, with one slope. Tiles are far
 * longer than a cell of the table.
 * @param size of a tile along the curve, mm
 */
export function tiled(line: MidLine, size: number): MidLine {
  const step = (line.to - line.from) / line.cells;
  const tanSlope = new Float64Array(line.tanSlope.length);
  for (let first = 0; first <= line.cells;) {
    let last = first;
    for (let length = 0; length < size && last < line.cells; last++)
      length += Math.hypot(step, f64(line.height, last + 1) - f64(line.height, last));
    const chord =
      last > first
        ? (f64(line.height, last) - f64(line.height, first)) / ((last - first) * step)
        : f64(tanSlope, first - 1);
    tanSlope.fill(chord, first, last + 1);
    first = last + (last === line.cells ? 1 : 0);
  }
  return { ...line, tanSlope };
}

/** Half the reflecting width at mid-line radius u. */
export function halfWidthAt(line: MidLine, u: number): number {
  return line.widthSlope * u - line.widthTaken;
}

/** Area of one panel's mirror in plan, mm²: ∫2·halfWidth du. */
export function panelPlanArea(line: MidLine): number {
  const { from, to, widthSlope, widthTaken } = line;
  return widthSlope * (to * to - from * from) - 2 * widthTaken * (to - from);
}

/**
 * Slope across the panel over (radius, share of the half-width), row by row; radians.
 * @param edgeMrad slope at the edge, growing evenly from the mid-line; null to estimate it from the bending
 */
export function curlTable(shape: DishShape, line: MidLine, edgeMrad: number | null): Float64Array {
  const side = curlCells + 1;
  const table = new Float64Array(side * side);
  const thickness = shape.panelThickness > 0 ? shape.panelThickness : shape.facingThickness;
  for (let i = 0; i < side; i++) {
    const at = (line.cells * i) / curlCells;
    const u = line.from + ((line.to - line.from) * i) / curlCells;
    const next = Math.min(at + 1, line.cells);
    const last = next - 1;
    const step = (line.to - line.from) / line.cells;
    const tan = f64(line.tanSlope, at);
    // κ = cos³ψ·d(tan ψ)/du
    const curvature = (1 + tan * tan) ** -1.5 * ((f64(line.tanSlope, next) - f64(line.tanSlope, last)) / step);
    const half = halfWidthAt(line, u);
    for (let j = 0; j < side; j++) {
      const share = j / curlCells;
      table[i * side + j] =
        edgeMrad === null ? curlSlope(curvature, thickness, half, share * half) : (edgeMrad / 1000) * share;
    }
  }
  return table;
}
