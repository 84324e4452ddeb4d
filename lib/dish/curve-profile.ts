/** A profile from its height and slope alone: what follows from them without a closed form. */
import type { Profile } from './profile.js';
import { integral } from './quadrature.js';

/** What a curve states of itself; the terms are those of `Profile`. */
export type ProfileCurve = Pick<
  Profile,
  'kind' | 'focusHeight' | 'focusTerm' | 'height' | 'slopeAngle' | 'turn' | 'aim' | 'refocused'
>;

/** The whole profile: length and area by quadrature, the narrowed curve by the chain rule. */
export function curveProfile(curve: ProfileCurve): Profile {
  const slope = (u: number): number => Math.tan(curve.slopeAngle(u));
  const speed = (u: number): number => 1 / Math.cos(curve.slopeAngle(u));
  return {
    ...curve,
    slope,
    arcLength: (u) => integral(speed, 0, u),
    area: (u) => integral((r) => 2 * Math.PI * r * speed(r), 0, u),
    narrowed: (share) => curveProfile(narrowedCurve(curve, slope, share)),
  };
}

function narrowedCurve(curve: ProfileCurve, slope: (u: number) => number, share: number): ProfileCurve {
  return {
    ...curve,
    height: (x) => curve.height(x / share),
    slopeAngle: (x) => Math.atan(slope(x / share) / share),
    turn: (x) => {
      // z'' = ψ'·(1 + z'²) of the wide curve; over x it is 1/share² times as large
      const wide = slope(x / share);
      const second = (curve.turn(x / share) * (1 + wide * wide)) / (share * share);
      return second / (1 + (wide / share) ** 2);
    },
    aim: (x) => share * curve.aim(x / share),
    refocused: (focusHeight) => curve.refocused(focusHeight).narrowed(share),
  };
}
