/**
 * The profile that spreads its light evenly over a level disc instead of bringing it to a point.
 *
 * A ring of the aperture between u and u + du gathers light as its area 2πu·du, and a ring of the disc holds
 * 2πρ·dρ; the two keep step for all u when ρ = a·u/R, with a the disc's radius. The ray that comes down at u and is
 * sent to ρ at the height h is turned by 2ψ = atan2(u − ρ, h − z), since the mirror's normal halves the angle between
 * the two (law of reflection). As dz/du = tan ψ, that is an ordinary differential equation for z with z(0) = 0.
 *
 * Rays stay on their side of the axis. Crossing it would spread them as evenly, but takes a deeper dish, and gathers
 * them to a point below the vessel, in the open; here they would meet only above its base, where the vessel is.
 */
import { curveProfile } from './curve-profile.js';
import type { Profile } from './profile.js';

export interface SpreadTarget {
  /** Height of the disc above the vertex, mm. */
  readonly height: number;
  /** Radius of the disc that is lit, mm; 0 gives the paraboloid of that focal length. */
  readonly radius: number;
  /** Radius of the aperture whose light goes there, mm. */
  readonly apertureRadius: number;
}

/** The curve is solved to this share of the aperture's radius, and runs on straight beyond. */
const solvedTo = 1.1;
/** Greatest difference between two solutions of which one has twice the steps, mm; the error is a fifteenth of it. */
const closeEnough = 1e-9;
const firstSteps = 256;
const maxSteps = 1 << 17;

type Rate = (u: number, z: number) => number;

/** Heights at `steps` + 1 even radii by the classical fourth-order rule of Runge and Kutta. */
function solve(rate: Rate, end: number, steps: number): Float64Array {
  const h = end / steps;
  const heights = new Float64Array(steps + 1);
  let z = 0;
  for (let i = 0; i < steps; i++) {
    const u = i * h;
    const k1 = rate(u, z);
    const k2 = rate(u + h / 2, z + (h / 2) * k1);
    const k3 = rate(u + h / 2, z + (h / 2) * k2);
    const k4 = rate(u + h, z + h * k3);
    z += (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
    heights[i + 1] = z;
  }
  return heights;
}

/** The solution with steps halved until it no longer moves. */
function solveClosely(rate: Rate, end: number): Float64Array {
  let coarse = solve(rate, end, firstSteps);
  for (let steps = 2 * firstSteps; steps <= maxSteps; steps *= 2) {
    const fine = solve(rate, end, steps);
    const moved = coarse.reduce((max, z, i) => Math.max(max, Math.abs(z - (fine[2 * i] ?? Infinity))), 0);
    if (moved < closeEnough) return fine;
    coarse = fine;
  }
  throw new RangeError(`no smooth profile sends the light to this disc`);
}

/** Value between two points with their first and second derivatives, by the polynomial of fifth degree. */
function between(
  share: number,
  h: number,
  [y0, d0, s0]: readonly [number, number, number],
  [y1, d1, s1]: readonly [number, number, number],
): number {
  const [t, v] = [share, 1 - share];
  const half = (a: number, y: number, d: number, s: number, b: number): number =>
    b ** 3 * (y * (1 + 3 * a + 6 * a * a) + d * a * (1 + 3 * a) + (s * a * a) / 2);
  return half(t, y0, h * d0, h * h * s0, v) + half(v, y1, -h * d1, h * h * s1, t);
}

/**
 * The profile of a target.
 * @throws RangeError when a length is not above 0, the disc is as wide as the aperture, or no smooth profile does it
 */
export function spread(target: SpreadTarget): Profile {
  const { height: h, radius: a, apertureRadius: R } = target;
  if (!(h > 0 && R > 0 && a >= 0 && a < R))
    throw new RangeError(`a disc of radius ${a} mm at ${h} mm cannot be lit by an aperture of radius ${R} mm`);
  const share = a / R;
  const aimedSlope = (u: number, z: number): number => Math.atan2(u - share * u, h - z) / 2;
  const end = solvedTo * R;
  const heights = solveClosely((u, z) => Math.tan(aimedSlope(u, z)), end);
  const cells = heights.length - 1;
  const step = end / cells;
  /** Rate of ψ along the curve: 2ψ' is the derivative of atan2((1 − share)·u, h − z). */
  const aimedTurn = (u: number, z: number): number => {
    const [across, up] = [u - share * u, h - z];
    const slope = Math.tan(aimedSlope(u, z));
    return ((1 - share) * up + across * slope) / (2 * (across * across + up * up));
  };
  const knot = (i: number): readonly [number, number, number] => {
    const z = heights[i] ?? 0;
    const slope = Math.tan(aimedSlope(i * step, z));
    return [z, slope, aimedTurn(i * step, z) * (1 + slope * slope)];
  };
  const [endHeight, endSlope] = knot(cells);
  const height = (u: number): number => {
    if (u >= end) return endHeight + endSlope * (u - end);
    const cell = Math.min(cells - 1, Math.floor(u / step));
    return between(u / step - cell, step, knot(cell), knot(cell + 1));
  };
  return curveProfile({
    kind: 'spread',
    focusHeight: h,
    focusTerm: 'height of the lit disc',
    height,
    slopeAngle: (u) => (u >= end ? Math.atan(endSlope) : aimedSlope(u, height(u))),
    turn: (u) => (u >= end ? 0 : aimedTurn(u, height(u))),
    aim: (u) => share * u,
    refocused: (other) => spread({ ...target, height: other }),
  });
}
