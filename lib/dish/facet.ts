/**
 * One facing panel on its two ribs, in the plane that bisects them: x radial, z up from the vertex, w across.
 *
 * A panel's level chords are parallel, so it bends along the radius only. Along a chord the square top of a rib rises
 * outward from the facing corner (its height depends on the radius along the rib alone), so the panel's underside
 * touches first at its own edge, which lies a distance o off the rib's centre plane: x = r·cos α + o·sin α.
 * The reflecting edge stays half the seam gap g off that plane, and the edge is cut square, so the underside's edge
 * lies at o = g/2 + c·sin ψ·sin α.
 */
import type { Profile } from './profile.js';
import type { DishShape } from './types.js';

/** One level chord of a panel, named by its reflecting mid-line radius u. */
export interface Facet {
  /** Reflecting mid-line: radius, height above the vertex, angle against the level. */
  readonly u: number;
  readonly z: number;
  readonly slopeAngle: number;
  /** Underside mid-line, facing thickness below along the normal. */
  readonly undersideX: number;
  readonly undersideZ: number;
  /** Distance of the underside's edge from the rib's centre plane. */
  readonly edgeOffset: number;
  /** Radius along the rib at which the two touch; their common height is undersideZ. */
  readonly ribRadius: number;
  /** Half the reflecting chord, the same on both faces of the panel. */
  readonly halfWidth: number;
}

/** Distance of the underside's edge from the rib's centre plane where the panel slopes by ψ: o = g/2 + c·sin ψ·sin α. */
export function edgeOffsetAt(
  { layout, facingThickness, seamGap }: Pick<DishShape, 'layout' | 'facingThickness' | 'seamGap'>,
  psi: number,
): number {
  return seamGap / 2 + facingThickness * Math.sin(psi) * Math.sin(layout.halfAngle);
}

/**
 * From a panel's edge to a pin, square to the rib, where the panel slopes by ψ. A pin is square to its panel, so its point
 * slants towards the face of the rib by its length times sin ψ·sin α: it enters as far from the panel's edge as its point
 * ends from that face.
 */
export function pinFromEdge(shape: DishShape, psi: number, length: number): number {
  const slant = length * Math.sin(psi) * Math.sin(shape.layout.halfAngle);
  return (shape.ribThickness / 2 - edgeOffsetAt(shape, psi) - slant) / 2;
}

function facet(shape: DishShape, u: number, z: number, psi: number): Facet {
  const { layout, facingThickness: c, seamGap } = shape;
  const { halfAngle, halfPitch } = layout;
  const undersideX = u + c * Math.sin(psi);
  const edgeOffset = edgeOffsetAt(shape, psi);
  return {
    u,
    z,
    slopeAngle: psi,
    undersideX,
    undersideZ: z - c * Math.cos(psi),
    edgeOffset,
    ribRadius: (undersideX - edgeOffset * Math.sin(halfAngle)) / Math.cos(halfAngle),
    halfWidth: halfPitch + u * Math.tan(halfAngle) - seamGap / 2 / Math.cos(halfAngle),
  };
}

// the true profile is the reflecting mid-line itself
function panelFacet(shape: DishShape, u: number): Facet {
  return facet(shape, u, shape.profile.height(u), shape.profile.slopeAngle(u));
}

/** Half the step of the difference that gives how fast a slope changes along a rib, mm. */
const rateStep = 0.05;

/** How fast a function of the radius along a rib changes there. */
function rateAlongRib(value: (r: number) => number, r: number): number {
  const h = Math.min(rateStep, r / 4);
  return (value(r + h) - value(r - h)) / (2 * h);
}

/**
 * Slope ψ at radius r along the rib of the panel that lies on a rib whose edge is the profile z(r) itself.
 *
 * The contact wanders across the rib as the slope grows, so the underside's mid-line has
 * x = r·cos α + (g/2)·sin α + ε·sin ψ with ε = c·sin²α, and dz/dx = tan ψ gives
 * tan ψ = z'(r)/(cos α + ε·cos ψ·dψ/dr). ε is a small part of the radius of bend, so the smooth solution is found by
 * putting the slope without the last term into it, and that result once more, which leaves out a relative (ε/bend)³.
 */
export function slopeOnProfiledRib({ layout, facingThickness, profile }: DishShape, ribRadius: number): number {
  const cos = Math.cos(layout.halfAngle);
  const eps = facingThickness * Math.sin(layout.halfAngle) ** 2;
  const once = (r: number): number => {
    const slope = profile.slope(r);
    const size = Math.hypot(slope, cos);
    // z'' = ψ'·(1 + z'²), and d atan(z'/cos α)/dr = z''·cos α/(cos²α + z'²); cos ψ = cos α/size
    const turn = (profile.turn(r) * (1 + slope * slope) * cos) / (size * size);
    return Math.atan2(slope, cos + ((eps * cos) / size) * turn);
  };
  return Math.atan2(profile.slope(ribRadius), cos + eps * Math.cos(once(ribRadius)) * rateAlongRib(once, ribRadius));
}

/** How fast that slope changes along the rib, dψ/dr. */
export function turnOnProfiledRib(shape: DishShape, ribRadius: number): number {
  return rateAlongRib((r) => slopeOnProfiledRib(shape, r), ribRadius);
}

function ribFacet(shape: DishShape, ribRadius: number): Facet {
  const { layout, facingThickness: c, profile } = shape;
  const psi = slopeOnProfiledRib(shape, ribRadius);
  const edgeOffset = edgeOffsetAt(shape, psi);
  const undersideX = ribRadius * Math.cos(layout.halfAngle) + edgeOffset * Math.sin(layout.halfAngle);
  const u = undersideX - c * Math.sin(psi);
  const z = profile.height(ribRadius) + c * Math.cos(psi);
  return { ...facet(shape, u, z, psi), ribRadius };
}

// with either figure u rises with r at nearly cos α; a safeguarded secant needs a handful of steps
function solve(target: number, value: (t: number) => number, guess: number): number {
  let low = 0;
  let high = Math.max(2 * guess, 1);
  while (value(high) < target) high *= 2;
  let t = guess;
  for (let step = 0; step < 100; step += 1) {
    const miss = value(t) - target;
    if (Math.abs(miss) < 1e-12 * Math.max(1, target)) break;
    if (miss > 0) high = t;
    else low = t;
    const slope = (value(t + 1e-3) - value(t)) / 1e-3;
    const next = t - miss / slope;
    t = next > low && next < high ? next : (low + high) / 2;
  }
  return t;
}

/** The facet at radius `u` of the reflecting mid-line (u > 0, mm). */
export function facetAt(shape: DishShape, u: number): Facet {
  if (shape.figure === 'panel') return panelFacet(shape, u);
  const guess = u / Math.cos(shape.layout.halfAngle);
  return ribFacet(
    shape,
    solve(u, (r) => ribFacet(shape, r).u, guess),
  );
}

/** The facet that touches the rib at radius `r` along it (r > 0, mm). */
export function facetOnRib(shape: DishShape, r: number): Facet {
  if (shape.figure === 'rib') return ribFacet(shape, r);
  const guess = r * Math.cos(shape.layout.halfAngle);
  return panelFacet(
    shape,
    solve(r, (u) => panelFacet(shape, u).ribRadius, guess),
  );
}

/** Mid-line radii at which the reflecting surface begins and ends: where the ribs do. */
export function litRange(shape: DishShape): { readonly from: number; readonly to: number } {
  return { from: facetOnRib(shape, shape.innerRadius).u, to: facetOnRib(shape, shape.apertureRadius).u };
}

/** Height above the vertex at which a ray that comes down along the axis and meets the mid-line here crosses the axis. */
export function crossingHeight(at: Facet): number {
  return at.z + at.u / Math.tan(2 * at.slopeAngle);
}

/**
 * Height above the vertex at which that ray is at the radius that the profile aims it at: z + (u − aim)/tan 2ψ. For
 * figure `panel` that is the profile's own plane everywhere. For `rib` on a paraboloid it is f·cos²α + c/(2·cos ψ), and
 * o·sin α/tan 2ψ more, because the contact lies off the rib's middle: little at the rim, some mm near the hub
 * (to within c·sin²α).
 */
export function focusHeight(profile: Profile, at: Facet): number {
  return at.z + (at.u - profile.aim(at.u)) / Math.tan(2 * at.slopeAngle);
}
