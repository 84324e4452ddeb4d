/** Closed forms of the paraboloid z = r²/4f. Radii and lengths in mm, angles in radians. */

/** Height of the paraboloid above its vertex at radius `r`. */
export function parabolaHeight(r: number, focalLength: number): number {
  return (r * r) / (4 * focalLength);
}

/** Angle ψ of the surface against the level at radius `r`: tan ψ = r/2f. */
export function slopeAngle(r: number, focalLength: number): number {
  return Math.atan(r / (2 * focalLength));
}

/** Rim angle φ seen from the focus: tan(φ/2) = R/2f. A half sphere's 90° is reached at f = R/2. */
export function rimAngle(apertureRadius: number, focalLength: number): number {
  return 2 * Math.atan(apertureRadius / (2 * focalLength));
}

/** Length of the profile from the vertex to radius `u`: (u/2)·√(1+(u/2f)²) + f·asinh(u/2f). */
export function profileLength(u: number, focalLength: number): number {
  const k = u / (2 * focalLength);
  return (u / 2) * Math.sqrt(1 + k * k) + focalLength * Math.asinh(k);
}

/**
 * Length from the axis to radius `u` of the curve at distance `d` on the convex side of the profile:
 * s(u) + d·ψ(u), since a parallel curve gains d for each radian turned.
 */
export function parallelLength(u: number, focalLength: number, d: number): number {
  return profileLength(u, focalLength) + d * slopeAngle(u, focalLength);
}

/** Area of the paraboloid up to radius R: (8πf²/3)·[(1+R²/4f²)^{3/2} − 1], in mm². */
export function paraboloidArea(apertureRadius: number, focalLength: number): number {
  const k = (apertureRadius * apertureRadius) / (4 * focalLength * focalLength);
  // expm1 of the logarithm keeps a flat dish exact
  return ((8 * Math.PI * focalLength * focalLength) / 3) * Math.expm1(1.5 * Math.log1p(k));
}
