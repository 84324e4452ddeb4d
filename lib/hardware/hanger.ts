/** The hanger of a vessel: flat steel on two pipes along the tilt axis. Millimetres. */
import type { Pipe } from './pipes.js';

/** Flat steel as it is sold: width by thickness. */
export const flatSteel = {
  end: { width: 40, thickness: 5 },
  long: { width: 30, thickness: 5 },
  strap: { width: 30, thickness: 4 },
};

/** The frame's inside is wider than the vessel by this, unless it is stated. */
export const holderPlay = 20;
/** Span of the pipes between the side frames of a stand, for a dish of that radius. */
export const axleSpan = (apertureRadius: number): number => 2 * (apertureRadius + 50);

/**
 * What the hanger shades, as two level arms from the axis to the rim of the width that covers the same area: what the
 * optics takes.
 */
export function holderShade(pipe: Pipe, inside: number, vesselDiameter: number, apertureRadius: number): number {
  const { end, long } = flatSteel;
  const half = inside / 2;
  const free = apertureRadius - vesselDiameter / 2;
  const pipeArea = 2 * pipe.outside * (apertureRadius - half - end.width);
  const frame = 2 * end.width * 2 * (half + long.width) + 2 * long.width * 2 * half;
  return Math.ceil((pipeArea + frame) / (2 * free));
}
