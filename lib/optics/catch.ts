/** How much of the mirror's light each surface of the vessel gets. Shares are of the light before the shade. */
import { f32, f64 } from '../geometry/typed-arrays.js';
import { firstMet, nowhere, type Place, shades, type Solid, type Surface, surfaces } from './solid.js';
import type { Rays } from './trace.js';
import type { Vessel } from './types.js';

/** Shares, batch by batch. */
export type SurfaceShares = Readonly<Record<Surface | 'shade', Float64Array>>;

/** Calls back with each ray's origin and direction; the z of a direction is 1 or −1. */
function eachRay(
  rays: Rays,
  from: number,
  to: number,
  take: (i: number, ox: number, oy: number, oz: number, dx: number, dy: number, dz: number) => void,
): void {
  const { reference, x, y, dxdz, dydz, low, high } = rays;
  for (let i = from; i < to; i++) {
    const upward = f32(low, i) > -Infinity;
    const oz = upward ? f32(low, i) : f32(high, i);
    if (oz === -Infinity) continue;
    const [dx, dy] = [f32(dxdz, i), f32(dydz, i)];
    const dz = upward ? 1 : -1;
    take(i, f32(x, i) + dx * (oz - reference), f32(y, i) + dy * (oz - reference), oz, dx * dz, dy * dz, dz);
  }
}

/** The same rays with the light negative that the solid keeps from the mirror. */
export function withShade(rays: Rays, solid: Solid | null): Rays {
  if (solid === null) return rays;
  const light = rays.light.slice();
  const at: Place = { a: 0, b: 0 };
  eachRay(rays, 0, rays.count, (i, ox, oy, oz) => {
    if (shades(solid, ox, oy, oz, f32(rays.sunX, i), f32(rays.sunY, i), at)) light[i] = -Math.abs(f32(light, i));
  });
  return { ...rays, light };
}

/**
 * Shade and catch of a solid.
 * @param taken asked for each ray that arrives, with the place on the surface
 */
export function lightOn(
  rays: Rays,
  solid: Solid,
  taken?: (batch: number, surface: number, at: Readonly<Place>, light: number) => void,
): SurfaceShares {
  const each = rays.count / rays.batches;
  const shares = Array.from({ length: surfaces.length + 1 }, () => new Float64Array(rays.batches));
  const at: Place = { a: 0, b: 0 };
  const got = new Float64Array(surfaces.length + 1);
  for (let batch = 0; batch < rays.batches; batch++) {
    let all = 0;
    got.fill(0);
    for (let i = batch * each; i < (batch + 1) * each; i++) all += Math.abs(f32(rays.light, i));
    eachRay(rays, batch * each, (batch + 1) * each, (i, ox, oy, oz, dx, dy, dz) => {
      const light = Math.abs(f32(rays.light, i));
      if (shades(solid, ox, oy, oz, f32(rays.sunX, i), f32(rays.sunY, i), at)) {
        got[0] = f64(got, 0) + light;
        return;
      }
      const met = firstMet(solid, ox, oy, oz, dx, dy, dz, at);
      if (met === nowhere) return;
      got[met] = f64(got, met) + light;
      taken?.(batch, met, at, light);
    });
    shares.forEach((of, k) => {
      of[batch] = f64(got, k) / all;
    });
  }
  const [shade, base, side, lid, mouth] = shares as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  return { shade, base, side, lid, mouth };
}

/** Share of the light on each surface that it takes up. */
export function absorptances(vessel: Vessel): Readonly<Record<Surface, number>> {
  const { baseAbsorptance: base, sideAbsorptance: side } = vessel;
  return { base, side, lid: side, mouth: mouthAbsorptance(vessel) };
}

/**
 * Share of the light through the mouth that a cavity with a diffuse inside keeps: α/(α + (1 − α)·mouth/inside), the
 * sphere with many reflections (Gouffé, Revue d'Optique 24, 1945, without its term for the shape; from memory).
 */
function mouthAbsorptance({ kind, diameter, height, opening, baseAbsorptance: a }: Vessel): number {
  if (kind !== 'cavity') return a;
  const mouth = (Math.PI * opening * opening) / 4;
  const inside = (Math.PI * diameter * diameter) / 2 + Math.PI * diameter * height - mouth;
  return a / (a + ((1 - a) * mouth) / inside);
}

/** Light on any surface, batch by batch. */
export function caughtOf({ base, side, lid, mouth }: SurfaceShares): Float64Array {
  return base.map((one, i) => one + f64(side, i) + f64(lid, i) + f64(mouth, i));
}

/** Light that is taken up, batch by batch. */
export function takenUpOf({ base, side, lid, mouth }: SurfaceShares, vessel: Vessel): Float64Array {
  const alpha = absorptances(vessel);
  return base.map(
    (one, i) => one * alpha.base + f64(side, i) * alpha.side + f64(lid, i) * alpha.lid + f64(mouth, i) * alpha.mouth,
  );
}
