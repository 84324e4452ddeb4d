/** A solid as faces and the edges between them, so that an edge knows what it parts. */
import { element, type Vec3, vecDot } from '../../geometry/index.js';
import type { Body } from './scene.js';
import { facesOf } from './solids.js';
import { turnedFaces } from './turned.js';

export interface MeshFace {
  /** The ring first, then holes; places in `points`. */
  readonly rings: readonly (readonly number[])[];
}

export interface MeshEdge {
  readonly from: number;
  readonly to: number;
  /** The faces on both sides; the second is missing on an open sheet. */
  readonly faces: readonly [number, number | null];
  /** Whether the faces run on into each other: then it is drawn only where it is the outline. */
  readonly smooth: boolean;
}

export interface Mesh {
  readonly points: readonly Vec3[];
  readonly faces: readonly MeshFace[];
  readonly edges: readonly MeshEdge[];
}

/** Faces that turn by less run on into each other: a curve is flattened into finer steps, a hub of 24 flats is not one. */
const SMOOTH = Math.cos((14.9 * Math.PI) / 180);

/** Newell's normal of a ring, length 1. */
export function normal(ring: readonly Vec3[]): Vec3 {
  let [x, y, z] = [0, 0, 0];
  for (let i = 0; i < ring.length; i += 1) {
    const a = element(ring, i);
    const b = element(ring, (i + 1) % ring.length);
    x += (a[1] - b[1]) * (a[2] + b[2]);
    y += (a[2] - b[2]) * (a[0] + b[0]);
    z += (a[0] - b[0]) * (a[1] + b[1]);
  }
  const length = Math.hypot(x, y, z) || 1;
  return [x / length, y / length, z / length];
}

const nameOf = (point: Vec3): string => point.map((value) => Math.round(value * 1e4)).join(' ');

export function meshOf(shape: Body['shape']): Mesh {
  const points: Vec3[] = [];
  const places = new Map<string, number>();
  const placeOf = (point: Vec3): number => {
    const name = nameOf(point);
    const found = places.get(name);
    if (found !== undefined) return found;
    places.set(name, points.length);
    points.push(point);
    return points.length - 1;
  };
  const solid = shape.kind === 'turned' ? turnedFaces(shape) : facesOf(shape);
  const normals = solid.map(({ ring }) => normal(ring));
  const faces = solid.map(({ ring, holes }): MeshFace => ({ rings: [ring, ...holes].map((one) => one.map(placeOf)) }));
  const sides = new Map<string, { from: number; to: number; first: number; second: number | null }>();
  faces.forEach(({ rings }, face) => {
    for (const ring of rings)
      ring.forEach((from, i) => {
        const to = element(ring, (i + 1) % ring.length);
        if (from === to) return;
        const name = from < to ? `${from} ${to}` : `${to} ${from}`;
        const known = sides.get(name);
        if (known === undefined) sides.set(name, { from, to, first: face, second: null });
        else known.second = face;
      });
  });
  const edges = [...sides.values()].map(({ from, to, first, second }): MeshEdge => {
    const a = element(normals, first);
    const b = second === null ? null : element(normals, second);
    const smooth = b !== null && vecDot(a, b) > SMOOTH;
    return { from, to, faces: [first, second], smooth };
  });
  return { points, faces, edges };
}
