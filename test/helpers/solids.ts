/** Plates as solids of a general-purpose library (manifold-3d). */
import type { Manifold, ManifoldToplevel } from 'manifold-3d';
import type { AssembledPlate } from '../../lib/assembly/index.js';
import { flatten } from '../../lib/geometry/index.js';
import { ringsOf } from '../../lib/part/index.js';

const cross = (a: readonly number[], b: readonly number[]) => [
  a[1]! * b[2]! - a[2]! * b[1]!,
  a[2]! * b[0]! - a[0]! * b[2]!,
  a[0]! * b[1]! - a[1]! * b[0]!,
];

/** A plate: its rings pushed out by its thickness, then carried to its place by a rigid motion. */
export function plateSolid(library: ManifoldToplevel, { part, frame }: AssembledPlate): Manifold {
  const rings = ringsOf(part).map((ring) => flatten(ring, 0.002, 'on').map(({ x, y }): [number, number] => [x, y]));
  const { origin, x, y } = frame;
  const z = cross(x, y);
  // columns of the motion, as the library takes them
  const motion = [...x, 0, ...y, 0, ...z, 0, ...origin, 1];
  return new library.CrossSection(rings, 'NonZero').extrude(part.thickness).transform(motion);
}
