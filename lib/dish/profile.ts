/**
 * The curve that the mirror follows along a panel's mid-line: height z over the radius u from the axis, both from the
 * vertex, mm; angles in radians. A further profile is a file beside `paraboloid.ts` that makes one of these.
 */
import type { Point } from '../geometry/index.js';

export interface Profile {
  /** What the design file calls it. */
  readonly kind: string;
  /** Height above the vertex of the level plane in which the profile is meant to put the light. */
  readonly focusHeight: number;
  /** What that height is called. */
  readonly focusTerm: string;
  /** Height z(u); rises from the axis outward, defined for every u from 0 on. */
  readonly height: (u: number) => number;
  /** dz/du = tan ψ. */
  readonly slope: (u: number) => number;
  /** Angle ψ of the surface against the level. */
  readonly slopeAngle: (u: number) => number;
  /** dψ/du; the curvature is this times cos ψ, the radius of bend its inverse. */
  readonly turn: (u: number) => number;
  /** Length of the curve from the axis to u. */
  readonly arcLength: (u: number) => number;
  /** Area of the surface that the curve makes about the axis, from the axis to u, mm². */
  readonly area: (u: number) => number;
  /** Radius at which a ray that comes down along the axis at u is meant to cross the plane at `focusHeight`. */
  readonly aim: (u: number) => number;
  /** The same heights at radii `share` times as large: height(u·share) of it is height(u) of this one. */
  readonly narrowed: (share: number) => Profile;
  /** The profile of this kind whose plane lies at another height. */
  readonly refocused: (focusHeight: number) => Profile;
}

/** The point of the curve at distance `depth` below the profile (on its convex side), square to it at u. */
export function offsetPoint(profile: Profile, u: number, depth: number): Point {
  const psi = profile.slopeAngle(u);
  return { x: u + depth * Math.sin(psi), y: profile.height(u) - depth * Math.cos(psi) };
}

/**
 * Length from the axis of the curve at distance `depth` on the convex side of the profile: s(u) + depth·ψ(u), since a
 * parallel curve gains its distance for each radian turned.
 */
export function parallelLength(profile: Profile, u: number, depth: number): number {
  return profile.arcLength(u) + depth * profile.slopeAngle(u);
}

/** Radius to which the profile is bent at u: 1/(dψ/ds) = 1/(ψ'·cos ψ), mm. */
export function bendRadius(profile: Profile, u: number): number {
  return 1 / (profile.turn(u) * Math.cos(profile.slopeAngle(u)));
}

/** Angle between the axis and the rim at radius u, seen from the middle of the profile's plane. */
export function rimAngle(profile: Profile, u: number): number {
  return Math.atan2(u, profile.focusHeight - profile.height(u));
}
