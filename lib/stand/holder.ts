/**
 * The hanger: a frame of flat steel round the vessel on two pipes along the tilt axis, and two straps below the vessel.
 * The pipes are fixed in the side frames, so that it stays level whatever the tilt. Steel alone: wood burns there.
 * Heights are above the tilt axis, mm.
 */
import { flatSteel, type Pipe, steelDensity, steelModulus } from '../hardware/index.js';

/** The vessel's base can stand at most so far above and below the frame's upper face. */
const maxAbove = 0;
const maxDrop = 400;

/**
 * How far the straps are apart, as a share of the frame's inside: near the vessel's edge, where the least light falls,
 * and far enough within it that the vessel does not tip over one (common practice, no source).
 */
const strapShare = 0.6;

export interface Holder {
  /** Width inside. */
  readonly inside: number;
  /** The frame from its lower to its upper face. */
  readonly low: number;
  readonly high: number;
  /** Underside of the straps, on which the vessel stands. */
  readonly bottom: number;
  /** Half the frame along x and y. */
  readonly halfX: number;
  readonly halfY: number;
  /** Cut lengths. */
  readonly endBar: number;
  readonly longBar: number;
  readonly strap: number;
  /** Between the middles of both straps. */
  readonly strapsApart: number;
  readonly pipe: number;
  readonly kg: number;
  /** Height of its centre of gravity. */
  readonly middle: number;
  /** How the strap sags under the vessel, mm, and how far it is stressed, N/mm². */
  readonly strapSag: number;
  readonly strapStress: number;
}

/** Whether a vessel's base at that height above the focus can be hung. */
export const canHang = (
  pipe: Pipe,
  offset: number,
): { readonly from: number; readonly to: number; readonly fits: boolean } => {
  const to = Math.floor(frameTop(pipe) + maxAbove);
  return { from: to - maxDrop, to, fits: offset <= to && offset >= to - maxDrop };
};

const frameTop = ({ outside }: Pipe): number => outside / 2 + flatSteel.end.thickness + flatSteel.long.thickness;

/**
 * The hanger of a vessel.
 * @param inside width of the frame inside
 * @param offset of the vessel's base above the focus
 * @param span from the middle to the outer face of a side frame
 * @param carriedN weight of the vessel with its load
 */
export function holderOf(pipe: Pipe, inside: number, offset: number, span: number, carriedN: number): Holder {
  const { end, long, strap } = flatSteel;
  const half = inside / 2;
  const high = frameTop(pipe);
  const drop = high - offset;
  const halfX = half + long.width;
  const halfY = half + end.width + 5;
  const straps = 2 * drop + inside + 2 * long.width;
  const pipeLength = Math.ceil(span + 20 - half);
  const kgOf = ({ width, thickness }: { readonly width: number; readonly thickness: number }, length: number): number =>
    width * thickness * length * steelDensity * 1e-9;
  const frameKg = 2 * (kgOf(end, 2 * halfX) + kgOf(long, 2 * halfY));
  const strapKg = 2 * kgOf(strap, straps);
  // each strap carries half the load over the inside of the frame, spread by the vessel's base
  const inertia = (strap.width * strap.thickness ** 3) / 12;
  const each = carriedN / 2;
  return {
    inside,
    low: pipe.outside / 2,
    high,
    bottom: offset - strap.thickness,
    halfX,
    halfY,
    endBar: 2 * halfX,
    longBar: 2 * halfY,
    strap: Math.ceil(straps),
    strapsApart: Math.round(strapShare * inside),
    pipe: pipeLength,
    kg: frameKg + strapKg,
    middle: (frameKg * (high - 5) + strapKg * (offset + drop / 2)) / (frameKg + strapKg),
    // evenly loaded beam with ends held by the upright legs: 5·w·L⁴/384EI and w·L²/8 without that help
    strapSag: (5 * each * inside ** 3) / (384 * steelModulus * inertia),
    strapStress: ((each * inside) / 8) * (strap.thickness / 2 / inertia),
  };
}
