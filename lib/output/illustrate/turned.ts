/** Round bodies: screws, bolts, dowels and pins. */
import { element } from '../../geometry/index.js';
import type { Turned } from './scene.js';
import type { SolidFace, Vec3 } from './solids.js';

/** Sides of a round body: each turns by less than what is drawn as an edge. */
const SIDES = 26;

/** The faces of a turned body. */
export function turnedFaces({ profile }: Turned): SolidFace[] {
  const ring = ([r, z]: readonly [number, number]): Vec3[] =>
    Array.from({ length: SIDES }, (_, k) => {
      const angle = (2 * Math.PI * k) / SIDES;
      return [r * Math.cos(angle), r * Math.sin(angle), z];
    });
  const rings = profile.map(ring);
  const sides = rings.slice(1).flatMap((upper, i) => {
    const lower = element(rings, i);
    return upper.map((_, k): SolidFace => {
      const next = (k + 1) % SIDES;
      return { ring: [element(lower, k), element(lower, next), element(upper, next), element(upper, k)], holes: [] };
    });
  });
  return [
    { ring: [...element(rings, 0)].reverse(), holes: [] },
    ...sides,
    { ring: element(rings, rings.length - 1), holes: [] },
  ];
}
