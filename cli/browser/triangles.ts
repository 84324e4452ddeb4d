import { ShapeUtils, Vector2 } from 'three';
import type { SolidFace, Vec3 } from '../../lib/output/illustrate/solids.js';

/** Which two coordinates of a face lie best in a plane: those across its normal's largest part. */
function flattened(ring: readonly Vec3[]): (point: Vec3) => Vector2 {
  let [x, y, z] = [0, 0, 0];
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length] ?? a;
    x += (a[1] - b[1]) * (a[2] + b[2]);
    y += (a[2] - b[2]) * (a[0] + b[0]);
    z += (a[0] - b[0]) * (a[1] + b[1]);
  });
  // each pair keeps the sense of the ring as seen against the normal
  if (Math.abs(z) >= Math.abs(x) && Math.abs(z) >= Math.abs(y))
    return z > 0 ? (p) => new Vector2(p[0], p[1]) : (p) => new Vector2(p[1], p[0]);
  if (Math.abs(y) >= Math.abs(x)) return y > 0 ? (p) => new Vector2(p[2], p[0]) : (p) => new Vector2(p[0], p[2]);
  return x > 0 ? (p) => new Vector2(p[1], p[2]) : (p) => new Vector2(p[2], p[1]);
}

/** Corners of the triangles that fill a face, nine numbers a triangle, in the face's sense. */
export function trianglesOf({ ring, holes }: SolidFace): number[] {
  const to2d = flattened(ring);
  const corners = [ring, ...holes].flat();
  return ShapeUtils.triangulateShape(
    ring.map(to2d),
    holes.map((hole) => hole.map(to2d)),
  ).flatMap((triangle) => triangle.flatMap((index) => [...(corners[index] ?? [0, 0, 0])]));
}
