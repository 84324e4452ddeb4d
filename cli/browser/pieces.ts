/** The solids of the dish as meshes with their lines, each copy in a group of its own. */
import {
  BufferGeometry,
  Color,
  Float32BufferAttribute,
  Group,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshStandardMaterial,
  type Scene,
  Vector3,
} from 'three';
import {
  facesOf,
  type SolidInstance,
  type Model,
  placed,
  type Solid,
  thirdAxis,
  type Vec3,
} from '../../lib/output/illustrate/solids.js';
import { trianglesOf } from './triangles.js';

export interface Pieces {
  /** 0 together to 1 fully exploded. */
  spread(share: number): void;
  /** Lights up the solids of a part; null puts the light out. */
  light(part: string | null): void;
  /** Takes the page's colours, by the names of its style. */
  colour(of: (name: string) => Color): void;
}

/** Corner after corner of every line, three numbers each. */
function linesOf(solid: Solid): number[] {
  const points: number[] = [];
  const ring = (corners: readonly (readonly number[])[]) =>
    corners.forEach((from, i) => points.push(...from, ...(corners[(i + 1) % corners.length] ?? from)));
  const { shape } = solid;
  if (shape.kind === 'bent') {
    // a panel's upper face lies under its mirror, where its lines would show through
    const face = solid.role === 'panel' ? 'bottom' : 'top';
    const side = (sign: number) => shape.sections.map((at) => [at[face][0], sign * at.halfWidth, at[face][1]]);
    ring([...side(-1), ...side(1).reverse()]);
    return points;
  }
  for (const [from, to] of solid.scribes ?? []) points.push(...from, shape.thickness, ...to, shape.thickness);
  for (const face of facesOf(shape).slice(0, 2)) [face.ring, ...face.holes].forEach(ring);
  return points;
}

function geometryOf(points: number[]): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new Float32BufferAttribute(points, 3));
  return geometry;
}

/** Pushed back a little, so that lines on an edge are seen whole. */
function surface(): MeshStandardMaterial {
  return new MeshStandardMaterial({
    roughness: 0.8,
    polygonOffset: true,
    polygonOffsetFactor: 2,
    polygonOffsetUnits: 4,
  });
}

function place(group: Group, instance: SolidInstance, spread: number): void {
  const { frame } = instance;
  const axis = (direction: Vec3) => new Vector3(...direction);
  group.matrixAutoUpdate = false;
  group.matrix
    .makeBasis(axis(frame.x), axis(frame.y), axis(thirdAxis(frame)))
    .setPosition(axis(placed([0, 0, 0], instance, spread)));
  group.matrixWorldNeedsUpdate = true;
}

/** Puts every copy of every solid into the scene. */
export function addPieces(scene: Scene, model: Model): Pieces {
  const ink = new LineBasicMaterial();
  const lit = surface();
  const materials = new Map(model.solids.map(({ role }) => [role, surface()]));
  const pieces = model.solids.flatMap((solid) => {
    const material = materials.get(solid.role) ?? lit;
    const body = geometryOf(facesOf(solid.shape).flatMap(trianglesOf));
    body.computeVertexNormals();
    const lines = geometryOf(linesOf(solid));
    return solid.instances.map((instance) => {
      const group = new Group();
      const mesh = new Mesh(body, material);
      group.add(mesh, new LineSegments(lines, ink));
      scene.add(group);
      return { solid, instance, group, mesh, material };
    });
  });
  return {
    spread: (share) => {
      for (const { instance, group } of pieces) place(group, instance, share);
    },
    light: (part) => {
      for (const { solid, mesh, material } of pieces)
        mesh.material = part !== null && solid.parts.includes(part) ? lit : material;
    },
    colour: (of) => {
      for (const [role, material] of materials) material.color = of(role);
      lit.color = of('lit');
      ink.color = of('ink');
    },
  };
}
