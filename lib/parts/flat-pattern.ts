/**
 * Flat patterns of panels and reflector strips: x along the panel from its inner end, y across it from its mid-line.
 */
import { type Contour, cyclic, fitArcs, type Path, type Point, reversed, type Vertex } from '../geometry/index.js';
import type { DevelopedPanel } from '../dish/index.js';
import { parameterAt } from './chord.js';

/** The outline of a flat pattern, and where its sides are. */
export interface FlatPattern {
  /** Anticlockwise, from the inner end of the lower side. */
  readonly outline: Contour;
  /** The upper side from the inner end to the rim; the lower is its mirror image. */
  readonly side: Path;
  /** The upper side without a flap. */
  readonly long: Path;
  /** Greatest distance of a side from the true curve (mm). */
  readonly deviation: number;
  /** Edges of the outline that make up each side. */
  readonly lower: { readonly from: number; readonly to: number };
  readonly upper: { readonly from: number; readonly to: number };
}

/** The corners of a flap's upper side, from the end of the pattern's. */
function flapOf({ x, y }: Point, { past, narrower }: { readonly past: number; readonly narrower: number }): Vertex[] {
  // as wide as the pattern it has no corner at its root
  const from = narrower === 0 ? [x + past] : [x, x + past];
  return from.map((at) => ({ x: at, y: y - narrower, bulge: 0 }));
}

/**
 * The pattern between two lengths along the panel.
 * @param range `from` and `to` lengths from the panel's inner end, where the ends are cut square (mm); `inset` how far
 *   the sides lie inside the panel's own, measured square to them; `flap` a straight piece past `to` (a hem), and by
 *   how much it is narrower on each side than the pattern is there
 * @param tolerance greatest distance of the fitted sides from the true curve, mm
 */
export function flatPattern(
  panel: DevelopedPanel,
  range: {
    readonly from: number;
    readonly to: number;
    readonly inset: number;
    readonly flap?: { readonly past: number; readonly narrower: number };
  },
  tolerance: number,
): FlatPattern {
  const { inset, flap } = range;
  // point and tangent are asked for at the same place, one after the other
  let known = { t: NaN, along: { x: 0, y: 0 } };
  const tangent = (t: number): Point => {
    if (known.t !== t) {
      const { length, halfWidth } = panel.rates(t);
      known = { t, along: { x: length, y: halfWidth } };
    }
    return known.along;
  };
  const at = (t: number): Point => {
    const { length, halfWidth } = panel.chord(t);
    const along = tangent(t);
    const size = Math.hypot(along.x, along.y);
    return { x: length + (inset * along.y) / size, y: halfWidth - (inset * along.x) / size };
  };
  const from = parameterAt(panel, (t) => at(t).x, range.from);
  const to = parameterAt(panel, (t) => at(t).x, range.to);
  const fitted = fitArcs({ from, to, at, tangent }, tolerance);
  const end = cyclic(fitted.path, -1);
  const side: Path = flap === undefined ? fitted.path : [...fitted.path, ...flapOf(end, flap)];
  const mirrored = side.map(({ x, y, bulge }) => ({ x, y: -y, bulge: bulge === 0 ? 0 : -bulge }));
  const n = side.length;
  return {
    outline: [...mirrored, ...reversed(side)],
    side,
    long: fitted.path,
    deviation: fitted.deviation,
    lower: { from: 0, to: n - 2 },
    upper: { from: n, to: 2 * n - 2 },
  };
}
