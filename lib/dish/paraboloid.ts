/** The paraboloid z = u²/4f in closed form. Radii and lengths in mm, angles in radians. */
import type { Profile } from './profile.js';

/** Length of the parabola from the vertex to radius u: (u/2)·√(1+(u/2f)²) + f·asinh(u/2f). */
function arcLength(u: number, f: number): number {
  const k = u / (2 * f);
  return (u / 2) * Math.sqrt(1 + k * k) + f * Math.asinh(k);
}

/** Area up to radius u: (8πf²/3)·[(1+u²/4f²)^{3/2} − 1]. */
function area(u: number, f: number): number {
  const k = (u * u) / (4 * f * f);
  // expm1 of the logarithm keeps a flat dish exact
  return ((8 * Math.PI * f * f) / 3) * Math.expm1(1.5 * Math.log1p(k));
}

/** The paraboloid of focal length f > 0: every ray along the axis goes to the focus. */
export function paraboloid(f: number): Profile {
  const slopeAngle = (u: number): number => Math.atan(u / (2 * f));
  return {
    kind: 'paraboloid',
    focusHeight: f,
    focusTerm: 'focal length',
    height: (u) => (u * u) / (4 * f),
    slope: (u) => u / (2 * f),
    slopeAngle,
    turn: (u) => Math.cos(slopeAngle(u)) ** 2 / (2 * f),
    arcLength: (u) => arcLength(u, f),
    area: (u) => area(u, f),
    aim: () => 0,
    // z = u²/4f = (u·share)²/(4·f·share²)
    narrowed: (share) => paraboloid(f * share * share),
    refocused: paraboloid,
  };
}
