/**
 * A batten over the seam of two panels. It lies level across its rib, on its two lower edges, as the panels rise on both
 * sides of the seam: like a panel it is bent along one direction only. An edge lies d off the rib's centre plane, d half
 * the batten's width, so it meets the panels' faces at r = (x - d·sin α)/cos α along the rib, at the height that they
 * have at x; there it slopes by tan β = tan ψ·cos α.
 */
import { type Facet, facetAt, litRange } from './facet.js';
import type { DishShape } from './types.js';

/** One level chord of a bent sheet in the plane that it is bent in: radius, height above the vertex, slope. */
export type SheetChord = Pick<Facet, 'u' | 'z' | 'slopeAngle'>;

/** Lengths in mm. */
export interface BattenCurve {
  /** Length of its middle layer, which keeps it when bent: as it is cut. */
  readonly length: number;
  /** The chord of its underside at a length from the inner end; the radius counts along the rib. */
  readonly at: (length: number) => SheetChord;
  /** Least radius to which its middle layer is bent. */
  readonly tightest: number;
}

const pieces = 200;

interface Station {
  readonly u: number;
  readonly chord: SheetChord;
  readonly length: number;
}

/** The chord of the underside over the panels' chord at u. */
function chordOver(shape: DishShape, width: number, u: number): SheetChord {
  const { layout, reflectorThickness: below } = shape;
  const { z, slopeAngle } = facetAt(shape, u);
  const [sin, cos] = [Math.sin(layout.halfAngle), Math.cos(layout.halfAngle)];
  return {
    u: (u + below * Math.sin(slopeAngle) - (width / 2) * sin) / cos,
    z: z - below * Math.cos(slopeAngle),
    slopeAngle: Math.atan(Math.tan(slopeAngle) * cos),
  };
}

/** The panels' chord over which the underside has a radius along the rib, by halving. */
function chordFrom(shape: DishShape, width: number, radius: number): number {
  let { from: low, to: high } = litRange(shape);
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (chordOver(shape, width, middle).u < radius) low = middle;
    else high = middle;
  }
  return high;
}

/**
 * The batten's curve from a radius along the rib to where the panels end. Its middle layer is followed in short arcs.
 * @param batten `width` and `thickness`, mm; `start` radius of its inner end
 */
export function battenCurve(
  shape: DishShape,
  { width, thickness, start }: { readonly width: number; readonly thickness: number; readonly start: number },
): BattenCurve {
  const from = chordFrom(shape, width, start);
  const { to } = litRange(shape);
  const stations: Station[] = [];
  let [length, tightest] = [0, Infinity];
  let last: SheetChord | null = null;
  for (let i = 0; i <= pieces; i++) {
    const u = from + ((to - from) * i) / pieces;
    const chord = chordOver(shape, width, u);
    if (last !== null) {
      const turn = chord.slopeAngle - last.slopeAngle;
      const middle = ({ u: r, z, slopeAngle }: SheetChord): readonly [number, number] => [
        r - (thickness / 2) * Math.sin(slopeAngle),
        z + (thickness / 2) * Math.cos(slopeAngle),
      ];
      const [[ax, az], [bx, bz]] = [middle(last), middle(chord)];
      const straight = Math.hypot(bx - ax, bz - az);
      const arc = turn === 0 ? straight : (straight * (turn / 2)) / Math.sin(turn / 2);
      length += arc;
      if (turn !== 0) tightest = Math.min(tightest, arc / Math.abs(turn));
    }
    stations.push({ u, chord, length });
    last = chord;
  }
  const at = (wanted: number): SheetChord => {
    const next = Math.max(
      1,
      stations.findIndex((one) => one.length >= wanted),
    );
    const [a, b] = [stations[next - 1], wanted >= length ? stations[pieces] : stations[next]];
    if (a === undefined || b === undefined || wanted <= 0) return chordOver(shape, width, from);
    if (wanted >= length) return b.chord;
    return chordOver(shape, width, a.u + ((b.u - a.u) * (wanted - a.length)) / (b.length - a.length));
  };
  return { length, at, tightest };
}
