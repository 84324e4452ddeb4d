/**
 * The vessel as a solid in the frame of the dish: z up along the axis from the vertex, x towards the upper edge of the
 * tilted rim, y level. The vessel is a cylinder with a base, a side and a lid; a hung one stands upright while the axis
 * follows the sun.
 */
import type { Vessel } from './types.js';

/** A cylinder whose axis lies in the plane of x and z. A disc has no height. */
export interface Solid {
  readonly radius: number;
  readonly height: number;
  /** Middle of the base. */
  readonly baseX: number;
  readonly baseZ: number;
  /** Its own axis, from base to lid, a unit vector. */
  readonly upX: number;
  readonly upZ: number;
  /** Radius of the mouth in the base of a cavity; 0 for a closed base. */
  readonly mouthRadius: number;
  /** Bars that carry it, level and straight outward from the axis to beyond the rim; they only shade. */
  readonly arms: readonly { readonly cos: number; readonly sin: number }[];
  readonly armHalfWidth: number;
  readonly armHeight: number;
}

export const surfaces = ['base', 'side', 'lid', 'mouth'] as const;
/** A part of the vessel's surface. */
export type Surface = (typeof surfaces)[number];

const RAD = Math.PI / 180;

/**
 * Height of the dish's axis above the horizon, radians, when the sun stands off the axis.
 * @param sunElevation radians
 * @param off angle between the axis and the sun, radians
 * @param towards direction in which the sun stands off, from x (the dish points too low) over y (to a side), radians
 */
export function axisElevation(sunElevation: number, off: number, towards: number): number {
  if (off === 0) return sunElevation;
  const along = Math.cos(off);
  const upward = Math.sin(off) * Math.cos(towards);
  const reach = Math.hypot(along, upward);
  return Math.asin(Math.min(1, Math.sin(sunElevation) / reach)) - Math.atan2(upward, along);
}

/**
 * Places a vessel.
 * @param focusHeight of the focus above the vertex; the base's middle stands `offset` above it, plumb for a level one
 * @param elevation of the dish's axis above the horizon, radians
 */
export function placeVessel(vessel: Vessel, focusHeight: number, elevation: number): Solid {
  const { diameter, height, offset, opening, holder } = vessel;
  const level = vessel.mount === 'level';
  const [upX, upZ] = level ? [Math.cos(elevation), Math.sin(elevation)] : [0, 1];
  return {
    radius: diameter / 2,
    height,
    baseX: offset * upX,
    baseZ: focusHeight + offset * upZ,
    upX,
    upZ,
    mouthRadius: vessel.kind === 'cavity' ? opening / 2 : 0,
    arms: Array.from({ length: holder.arms }, (_, i) => {
      // the first arm is level however the dish is tilted
      const angle = (i * 360 * RAD) / holder.arms + 90 * RAD;
      return { cos: Math.cos(angle), sin: Math.sin(angle) };
    }),
    armHalfWidth: holder.width / 2,
    armHeight: focusHeight,
  };
}

/** A level disc on the axis, lit from both sides: what a vessel is to a sun overhead when it has no side. */
export function disc(radius: number, height: number): Solid {
  return {
    radius,
    height: 0,
    baseX: 0,
    baseZ: height,
    upX: 0,
    upZ: 1,
    mouthRadius: 0,
    arms: [],
    armHalfWidth: 0,
    armHeight: height,
  };
}

/** Where a ray meets the solid, in its own frame: across (x', y') on a base or lid, (angle, height) on a side. */
export interface Place {
  a: number;
  b: number;
}

/** Code of no surface; those of surfaces count from 1 in their order. */
export const nowhere = 0;
const [baseCode, sideCode, lidCode, mouthCode] = [1, 2, 3, 4] as const;

/**
 * The surface that a ray from outside meets first, by its code, 0 for none.
 * @param at takes the place
 */
export function firstMet(
  solid: Solid,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  at: Place,
): number {
  const { radius, height, baseX, baseZ, upX, upZ } = solid;
  const px = ox - baseX;
  const pz = oz - baseZ;
  // across and along the vessel's own axis
  const o1 = px * upZ - pz * upX;
  const ow = px * upX + pz * upZ;
  const d1 = dx * upZ - dz * upX;
  const dw = dx * upX + dz * upZ;
  const square = radius * radius;
  const fromBelow = ow < 0 && dw > 0;
  if (fromBelow || (ow > height && dw < 0)) {
    const t = ((fromBelow ? 0 : height) - ow) / dw;
    const a = o1 + t * d1;
    const b = oy + t * dy;
    const out = a * a + b * b;
    if (out <= square) {
      at.a = a;
      at.b = b;
      if (!fromBelow) return lidCode;
      return out < solid.mouthRadius * solid.mouthRadius ? mouthCode : baseCode;
    }
  }
  if (height === 0) return nowhere;
  const aa = d1 * d1 + dy * dy;
  const ab = o1 * d1 + oy * dy;
  const root = ab * ab - aa * (o1 * o1 + oy * oy - square);
  if (!(root > 0)) return nowhere;
  const t = (-ab - Math.sqrt(root)) / aa;
  const w = ow + t * dw;
  if (!(t > 0 && w >= 0 && w <= height)) return nowhere;
  at.a = Math.atan2(oy + t * dy, o1 + t * d1);
  at.b = w;
  return sideCode;
}

/** Whether the solid or an arm of its holder keeps the sun from a point. */
export function shades(solid: Solid, ox: number, oy: number, oz: number, dx: number, dy: number, at: Place): boolean {
  if (solid.radius > 0 && firstMet(solid, ox, oy, oz, dx, dy, 1, at) !== nowhere) return true;
  const rise = solid.armHeight - oz;
  if (solid.arms.length === 0 || rise <= 0) return false;
  const x = ox + rise * dx;
  const y = oy + rise * dy;
  for (const { cos, sin } of solid.arms)
    if (x * cos + y * sin > 0 && Math.abs(y * cos - x * sin) < solid.armHalfWidth) return true;
  return false;
}
