/** A photo of the focus, measured by the widths of the spot: a second way to the waviness. */
import { element } from '../../geometry/index.js';
import { estimate, scaled } from '../estimate.js';
import { setUp } from '../set-up.js';
import { interceptCurve, squaredRadii } from '../spot.js';
import { trace } from '../trace.js';
import type { OpticsInput } from '../types.js';
import { type SlopeFinding, slopeThatGives } from './inverse.js';

/** One width read off a photo of a white card in the vessel's plane. */
export interface SpotWidth {
  /** Brightness at which it was read, as a share of the brightest: above 0, below 1. */
  readonly share: number;
  /** Full width there, mm. */
  readonly width: number;
}

export interface WidthFinding extends SpotWidth {
  /** What the forecast has there, mm. */
  readonly forecastWidth: number;
  readonly finding: SlopeFinding;
}

/** A width is read to so much of itself (standard error; an estimate from memory: exposure and edge). */
const READ_TO = 0.05;
/** Coarse enough that rays do not run out in a ring, fine enough for a width to a hundredth. */
const RINGS = 40;

/**
 * Full width at which the brightness has fallen to a share of the brightest, mean round the axis. The brightness of the
 * middle is the mean over the innermost rings, as far as a photo resolves it.
 */
export function widthAt(input: OpticsInput, slopeErrorMrad: number, share: number, rays: number, seed: number): number {
  const set = setUp(input);
  const { apertureRadius } = input.dish;
  // the card stands where the vessel's base would, and shades next to nothing
  const traced = trace({ ...set.settings, slopeError: slopeErrorMrad / 1000, pointing: 0, rays, seed });
  const squared = squaredRadii(traced, set.planeHeight);
  const wide = interceptCurve(traced, squared, apertureRadius, 400);
  const holds = wide.find(({ intercept }) => intercept.value > 0.98)?.radius ?? apertureRadius;
  const rings = interceptCurve(traced, squared, holds, RINGS);
  const suns = rings.slice(1).map(({ radius, ringShare }) => {
    const inner = radius - holds / RINGS;
    return { radius: radius - holds / RINGS / 2, bright: ringShare.value / (radius * radius - inner * inner) };
  });
  const middle = element(rings, 2);
  const peak = scaled(estimate([middle.intercept.value]), 1 / middle.radius ** 2).value;
  // from outside inward, so that a ring of noise near the middle is not taken for the edge
  for (let i = suns.length - 1; i > 0; i--) {
    const [inner, outer] = [element(suns, i - 1), element(suns, i)];
    if (inner.bright < share * peak) continue;
    const part = inner.bright === outer.bright ? 0 : (inner.bright - share * peak) / (inner.bright - outer.bright);
    return 2 * (inner.radius + Math.min(1, part) * (outer.radius - inner.radius));
  }
  return 0;
}

/** What each width says of the waviness. */
export function widthFindings(
  input: OpticsInput,
  widths: readonly SpotWidth[],
  rays: number,
  seed: number,
): WidthFinding[] {
  return widths.map(({ share, width }) => ({
    share,
    width,
    forecastWidth: widthAt(input, input.sun.slopeErrorMrad, share, rays, seed),
    finding: slopeThatGives((mrad) => widthAt(input, mrad, share, rays, seed), {
      value: width,
      standardError: READ_TO * width,
    }),
  }));
}
