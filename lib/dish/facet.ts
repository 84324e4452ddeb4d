/**
 * One facing panel on its two ribs, in the plane that bisects them: x radial, z up from the vertex, w across.
 *
 * A panel's level chords are parallel, so it bends along the radius only. Along a chord the square top of a rib rises
 * outward from the facing corner (its height depends on the radius along the rib alone), so the panel's underside
 * touches first at its own edge, which lies a distance o off the rib's centre plane: x = r·cos α + o·sin α.
 * The reflecting edge stays half the seam gap g off that plane, and the edge is cut square, so the underside's edge
 * lies at o = g/2 + c·sin ψ·sin α.
 */
import { parabolaHeight, slopeAngle } from './paraboloid.js';
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

function facet(shape: DishShape, u: number, z: number, psi: number): Facet {
  const { halfAngle, facingThickness: c, seamGap } = shape;
  const undersideX = u + c * Math.sin(psi);
  const edgeOffset = seamGap / 2 + c * Math.sin(psi) * Math.sin(halfAngle);
  return {
    u,
    z,
    slopeAngle: psi,
    undersideX,
    undersideZ: z - c * Math.cos(psi),
    edgeOffset,
    ribRadius: (undersideX - edgeOffset * Math.sin(halfAngle)) / Math.cos(halfAngle),
    halfWidth: u * Math.tan(halfAngle) - seamGap / 2 / Math.cos(halfAngle),
  };
}

// the true parabola is the reflecting mid-line itself
function panelFacet(shape: DishShape, u: number): Facet {
  return facet(shape, u, parabolaHeight(u, shape.focalLength), slopeAngle(u, shape.focalLength));
}

/**
 * Slope of the panel that lies on a rib whose edge is the parabola z = r²/4f itself.
 *
 * The contact wanders across the rib as the slope grows, so x = r·cos α + (g/2)·sin α + ε·sin ψ with ε = c·sin²α, and
 * dz/dx = tan ψ asks for ε·sin ψ = (r/2f − cos α·tan ψ)·dr/dψ. Its smooth solution is r = 2f·cos α·tan ψ + ρ with
 * ρ = 2f·ε·sin ψ/(2f·cos α/cos²ψ + dρ/dψ); here dρ/dψ is that of ρ = ε·sin ψ·cos²ψ/cos α, which leaves out a relative
 * (ε/2f)³.
 * @returns ψ, and its rate of change along the rib
 */
export function slopeOnParabolicRib(
  shape: DishShape,
  ribRadius: number,
): { readonly psi: number; readonly turn: number } {
  const { halfAngle, facingThickness, focalLength: f } = shape;
  const [cos, eps] = [Math.cos(halfAngle), facingThickness * Math.sin(halfAngle) ** 2];
  let psi = Math.atan(ribRadius / (2 * f * cos));
  let rate = 0;
  // Newton from a start that is right to ε/2f: three steps reach the last digit
  for (let step = 0; step < 3; step++) {
    const [s, c] = [Math.sin(psi), Math.cos(psi)];
    const main = (2 * f * cos) / (c * c);
    rate = main + (eps * c * (c * c - 2 * s * s)) / cos;
    psi -= (2 * f * cos * Math.tan(psi) + (2 * f * eps * s) / rate - ribRadius) / rate;
  }
  return { psi, turn: 1 / rate };
}

function ribFacet(shape: DishShape, ribRadius: number): Facet {
  const { halfAngle, facingThickness: c, seamGap, focalLength } = shape;
  const { psi } = slopeOnParabolicRib(shape, ribRadius);
  const edgeOffset = seamGap / 2 + c * Math.sin(psi) * Math.sin(halfAngle);
  const undersideX = ribRadius * Math.cos(halfAngle) + edgeOffset * Math.sin(halfAngle);
  const u = undersideX - c * Math.sin(psi);
  const z = parabolaHeight(ribRadius, focalLength) + c * Math.cos(psi);
  return { ...facet(shape, u, z, psi), ribRadius };
}

// both figures have u rising with r at nearly cos α; a safeguarded secant needs a handful of steps
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
  const guess = u / Math.cos(shape.halfAngle);
  return ribFacet(
    shape,
    solve(u, (r) => ribFacet(shape, r).u, guess),
  );
}

/** The facet that touches the rib at radius `r` along it (r > 0, mm). */
export function facetOnRib(shape: DishShape, r: number): Facet {
  if (shape.figure === 'rib') return ribFacet(shape, r);
  const guess = r * Math.cos(shape.halfAngle);
  return panelFacet(
    shape,
    solve(r, (u) => panelFacet(shape, u).ribRadius, guess),
  );
}

/** Mid-line radii at which the reflecting surface begins and ends: where the ribs do. */
export function litRange(shape: DishShape): { readonly from: number; readonly to: number } {
  return { from: facetOnRib(shape, shape.innerRadius).u, to: facetOnRib(shape, shape.apertureRadius).u };
}

/**
 * Height above the vertex at which a ray that comes down along the axis and meets the mid-line at this facet crosses
 * the axis: z + u/tan 2ψ. For figure `panel` that is f everywhere. For `rib` it is f·cos²α + c/(2·cos ψ), and
 * o·sin α/tan 2ψ more, because the contact lies off the rib's middle: little at the rim, some mm near the hub
 * (to within c·sin²α).
 */
export function crossingHeight(at: Facet): number {
  return at.z + at.u / Math.tan(2 * at.slopeAngle);
}
