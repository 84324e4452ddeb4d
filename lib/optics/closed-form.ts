/** What needs no trace: a point sun on a panel without errors. */
import { type DishShape, crossingHeight, facetAt } from '../dish/index.js';
import { halfWidthAt, type MidLine, midLine } from './mid-line.js';

/** Half the number of intervals of the rule below: its error is far below a millionth on these smooth pieces. */
const HALF_INTERVALS = 2000;
/** A vessel that is exactly as wide as the panels asks for no further rib, whatever the last bit is. */
const ROUNDING = 1e-9;

/**
 * Share of a panel's light within radius `a` of the axis in a level plane, for a point sun on the axis and no errors.
 * Light that lands at distance w from the mid-line stays at w; along the panel it lands at (Z − h)·tan 2ψ, where Z is
 * the height at which the mid-line's ray crosses the axis. In the focal plane of figure `panel` that is
 * γ(a) = ∫min(halfWidth(u), a)du / ∫halfWidth(u)du, in closed form; elsewhere the integral is summed by Simpson's rule.
 * @param a radius, mm
 * @param height of the plane above the vertex, mm; above the mirror's rim
 */
export function pointSunIntercept(shape: DishShape, a: number, height: number): number {
  const line = midLine(shape);
  const total = integralOfWidth(line, line.from, line.to);
  if (shape.figure === 'panel' && shape.profile.aim(line.to) === 0 && height === shape.profile.focusHeight) {
    const meets = Math.min(Math.max((a + line.widthTaken) / line.widthSlope, line.from), line.to);
    return (integralOfWidth(line, line.from, meets) + a * (line.to - meets)) / total;
  }
  const caught = (u: number): number => {
    const facet = facetAt(shape, u);
    const along = (crossingHeight(facet) - height) * Math.tan(2 * facet.slopeAngle);
    return along * along >= a * a ? 0 : Math.min(halfWidthAt(line, u), Math.sqrt(a * a - along * along));
  };
  const step = (line.to - line.from) / (2 * HALF_INTERVALS);
  let sum = 0;
  for (let i = 0; i <= 2 * HALF_INTERVALS; i++) {
    const weight = i === 0 || i === 2 * HALF_INTERVALS ? 1 : i % 2 === 0 ? 2 : 4;
    sum += weight * caught(Math.max(line.from + i * step, 1e-9));
  }
  return (sum * step) / 3 / total;
}

function integralOfWidth(line: MidLine, from: number, to: number): number {
  return (line.widthSlope * (to * to - from * from)) / 2 - line.widthTaken * (to - from);
}

/**
 * Least number of ribs at which the panels' flat width falls wholly on a vessel: N ≥ π/asin(a/R), as the panel's
 * half-chord at the rim is R·sin α.
 */
export function minRibs(vesselRadius: number, apertureRadius: number): number {
  if (vesselRadius >= apertureRadius) return 3;
  return Math.max(3, Math.ceil(Math.PI / Math.asin(vesselRadius / apertureRadius) - ROUNDING));
}
