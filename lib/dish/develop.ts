/**
 * The panel laid flat. A panel is a cylinder in the general sense: its level chords stay straight and parallel, and
 * a layer of it at a given depth below the reflecting face is as long as the curve that this layer follows.
 */
import { facetAt, facetOnRib, type Facet } from './facet.js';
import { parallelLength } from './paraboloid.js';
import type { DishShape } from './types.js';

/**
 * Length along the radius, from where the slope is nothing to a facet, of the layer `depth` mm below the reflecting
 * face.
 *
 * For figure `panel` the reflecting mid-line is the parabola of focal length f and the layer its parallel on the
 * convex side. For figure `rib` the underside's mid-line is z = (x/cos α)²/4f but for the shift o·sin α, which is
 * left out as in the facet itself (see there): a parabola of focal length f·cos²α, to which the layer is a parallel
 * on the concave side.
 */
export function developedLength(shape: DishShape, facet: Facet, depth: number): number {
  const { figure, focalLength, halfAngle, facingThickness } = shape;
  if (figure === 'panel') return parallelLength(facet.u, focalLength, depth);
  const cos = Math.cos(halfAngle);
  return parallelLength(facet.ribRadius * cos, focalLength * cos * cos, depth - facingThickness);
}

/** A place on the flat pattern: length from the panel's inner end, half the width there, and the facet it comes from. */
export interface DevelopedChord {
  readonly length: number;
  readonly halfWidth: number;
  readonly facet: Facet;
}

/** A panel's flat pattern at a depth, chord by chord. */
export interface DevelopedPanel {
  /** The whole length of the pattern, mm. */
  readonly length: number;
  /** Parameter of the chords, from the inner end to the rim: u for figure `panel`, the radius along the rib for `rib`. */
  readonly from: number;
  readonly to: number;
  readonly chord: (t: number) => DevelopedChord;
  /** Rates of `length` and `halfWidth` by the parameter. */
  readonly rates: (t: number) => { readonly length: number; readonly halfWidth: number };
}

/**
 * The flat pattern of a panel's layer `depth` mm below its reflecting face (half the thickness of a sheet is its
 * neutral layer, which keeps its length when bent).
 */
export function developPanel(shape: DishShape, depth: number): DevelopedPanel {
  const { figure, focalLength: f, halfAngle, facingThickness: c, innerRadius, apertureRadius } = shape;
  const [cos, sin, tan] = [Math.cos(halfAngle), Math.sin(halfAngle), Math.tan(halfAngle)];
  const byMidLine = figure === 'panel';
  const [from, to] = byMidLine
    ? [facetOnRib(shape, innerRadius).u, facetOnRib(shape, apertureRadius).u]
    : [innerRadius, apertureRadius];
  const facet = (t: number): Facet => (byMidLine ? facetAt(shape, t) : facetOnRib(shape, t));
  const start = developedLength(shape, facet(from), depth);
  const chord = (t: number): DevelopedChord => {
    const at = facet(t);
    return { length: developedLength(shape, at, depth) - start, halfWidth: at.halfWidth, facet: at };
  };
  // with tan ψ = k: a profile's length grows by √(1+k²) = 1/cos ψ, a parallel's by depth times the turn
  const rates = (t: number): { length: number; halfWidth: number } => {
    const focal = byMidLine ? f : f * cos;
    const psi = Math.atan(t / (2 * focal));
    const turn = Math.cos(psi) ** 2 / (2 * focal);
    if (byMidLine) return { length: 1 / Math.cos(psi) + depth * turn, halfWidth: tan };
    return {
      length: cos / Math.cos(psi) + (depth - c) * turn,
      halfWidth: tan * (cos - c * Math.cos(psi) * turn * (1 - sin * sin)),
    };
  };
  return { length: chord(to).length, from, to, chord, rates };
}
