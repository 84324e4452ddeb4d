/**
 * The panel laid flat. A panel is a cylinder in the general sense: its level chords stay straight and parallel, and
 * a layer of it at a given depth below the reflecting face is as long as the curve that this layer follows.
 */
import { facetAt, facetOnRib, type Facet, slopeOnProfiledRib, turnOnProfiledRib } from './facet.js';
import { parallelLength } from './profile.js';
import type { DishShape } from './types.js';

/**
 * Length along the radius, from where the slope is nothing to a facet, of the layer `depth` mm below the reflecting
 * face.
 *
 * For figure `panel` the reflecting mid-line is the profile, and the layer is its parallel on the convex side. For
 * figure `rib` the underside's mid-line is that of `slopeOnProfiledRib`: as long as the profile narrowed by cos α to
 * r·cos α, and ε·(ψ/2 + sin 2ψ/4) more for the wandering contact (the integral of dx/cos ψ to the first order in
 * ε over the radius of bend); the layer is its parallel on the concave side.
 */
function developedLength(shape: DishShape, facet: Facet, depth: number): number {
  const { figure, profile, layout, facingThickness } = shape;
  if (figure === 'panel') return parallelLength(profile, facet.u, depth);
  const cos = Math.cos(layout.halfAngle);
  const eps = facingThickness * Math.sin(layout.halfAngle) ** 2;
  const psi = facet.slopeAngle;
  const underside = profile.narrowed(cos).arcLength(facet.ribRadius * cos) + eps * (psi / 2 + Math.sin(2 * psi) / 4);
  return underside + (depth - facingThickness) * psi;
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
  const { figure, profile, layout, facingThickness: c, innerRadius, apertureRadius } = shape;
  const { halfAngle } = layout;
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
  // a profile's length grows by dx/cos ψ, a parallel's by depth times the turn
  const rates = (t: number): { length: number; halfWidth: number } => {
    if (byMidLine) {
      return { length: 1 / Math.cos(profile.slopeAngle(t)) + depth * profile.turn(t), halfWidth: tan };
    }
    const [psi, turn] = [slopeOnProfiledRib(shape, t), turnOnProfiledRib(shape, t)];
    const alongUnderside = cos + c * sin * sin * Math.cos(psi) * turn;
    return {
      length: alongUnderside / Math.cos(psi) + (depth - c) * turn,
      halfWidth: tan * (alongUnderside - c * Math.cos(psi) * turn),
    };
  };
  return { length: chord(to).length, from, to, chord, rates };
}
