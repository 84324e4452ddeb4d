/**
 * A slow tracer that shares nothing with the one under test but the panel's mid-line: points on a plain grid over every
 * panel in space, normals from differences of the surface, vector reflection.
 */
import { type DishShape, facetAt, litRange } from '../../lib/dish/index.js';

type Vector = readonly [number, number, number];

const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

export interface Hit {
  /** Where it meets the plane, and its light (plan area times the rise of the sun over the surface). */
  readonly x: number;
  readonly y: number;
  readonly light: number;
  readonly shaded: boolean;
}

/**
 * Every ray of a point sun in the direction of `towardsSun` (a unit vector) in the plane at `height`.
 * @param shadeRadius of a level disc in that plane
 */
export function bruteRays(
  shape: DishShape,
  towardsSun: Vector,
  height: number,
  shadeRadius: number,
  along: number,
  across: number,
): Hit[] {
  const lit = litRange(shape);
  const hits: Hit[] = [];
  const z = (u: number) => facetAt(shape, u).z;
  for (let i = 0; i < along; i++) {
    const u = lit.from + ((i + 0.5) * (lit.to - lit.from)) / along;
    const half = facetAt(shape, u).halfWidth;
    const slope = (z(u + 0.01) - z(u - 0.01)) / 0.02;
    const heightHere = z(u);
    for (let j = 0; j < across; j++) {
      const w = -half + ((j + 0.5) * 2 * half) / across;
      for (let panel = 0; panel < shape.layout.ribs.length; panel++) {
        const angle = panel * 2 * shape.layout.halfAngle;
        const [c, s] = [Math.cos(angle), Math.sin(angle)];
        const point: Vector = [u * c - w * s, u * s + w * c, heightHere];
        const radial: Vector = [c, s, slope];
        const chord: Vector = [-s, c, 0];
        const n = cross(radial, chord);
        const k = (2 * dot(towardsSun, n)) / dot(n, n);
        const out: Vector = [k * n[0] - towardsSun[0], k * n[1] - towardsSun[1], k * n[2] - towardsSun[2]];
        const area = ((lit.to - lit.from) / along) * ((2 * half) / across);
        const reach = (height - point[2]) / out[2];
        const back = (height - point[2]) / towardsSun[2];
        hits.push({
          x: reach > 0 ? point[0] + reach * out[0] : Infinity,
          y: reach > 0 ? point[1] + reach * out[1] : Infinity,
          light: area * dot(towardsSun, n),
          shaded: Math.hypot(point[0] + back * towardsSun[0], point[1] + back * towardsSun[1]) < shadeRadius,
        });
      }
    }
  }
  return hits;
}

/** Share of all light that is not shaded and lands within a radius. */
export function caughtShare(hits: readonly Hit[], radius: number): number {
  const all = hits.reduce((sum, { light }) => sum + light, 0);
  return (
    hits.reduce((sum, { x, y, light, shaded }) => (!shaded && Math.hypot(x, y) <= radius ? sum + light : sum), 0) / all
  );
}
