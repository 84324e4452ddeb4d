/** Plates as solids of a general-purpose library (manifold-3d). */
import type { Manifold, ManifoldToplevel } from 'manifold-3d';
import type { AssembledPlate, AssembledSheet } from '../../lib/assembly/index.js';
import { sheetPoint, sheetShape } from '../../lib/assembly/sheet-shape.js';
import { facetAt } from '../../lib/dish/index.js';
import { type Contour, flatten } from '../../lib/geometry/index.js';
import { ringsOf } from '../../lib/part/index.js';
import type { Prepared } from '../../lib/pipeline/types.js';

const cross = (a: readonly number[], b: readonly number[]) => [
  a[1]! * b[2]! - a[2]! * b[1]!,
  a[2]! * b[0]! - a[0]! * b[2]!,
  a[0]! * b[1]! - a[1]! * b[0]!,
];

/** A plate: its rings pushed out by its thickness, less its pockets, then carried to its place by a rigid motion. */
export function plateSolid(library: ManifoldToplevel, { part, frame }: AssembledPlate, chord = 0.002): Manifold {
  const points = (ring: Contour) => flatten(ring, chord, 'on').map(({ x, y }): [number, number] => [x, y]);
  const rings = ringsOf(part).map(points);
  const { origin, x, y } = frame;
  const z = cross(x, y);
  // columns of the motion, as the library takes them
  const motion = [...x, 0, ...y, 0, ...z, 0, ...origin, 1];
  const whole = new library.CrossSection(rings, 'NonZero').extrude(part.thickness);
  return part.pockets
    .reduce((solid, { ring, depth, from }) => {
      const cleared = new library.CrossSection([points(ring).toReversed()], 'NonZero').extrude(depth);
      return solid.subtract(cleared.translate(0, 0, from === 'front' ? part.thickness - depth : 0));
    }, whole)
    .transform(motion);
}

/** A bent panel: hulls between chords, as near to the curve as their number. */
export function panelSolid(
  library: ManifoldToplevel,
  prepared: Prepared,
  { bay }: AssembledSheet,
  count = 200,
): Manifold {
  const { dish } = prepared;
  const turn = (bay.rotationDeg * Math.PI) / 180;
  const sections = Array.from({ length: count + 1 }, (_, i) => {
    const facet = facetAt(dish, dish.litFrom + ((dish.litTo - dish.litFrom) * i) / count);
    return [dish.reflectorThickness, dish.facingThickness].flatMap((depth) =>
      [-1, 1].map((side): [number, number, number] => {
        const u = facet.u + depth * Math.sin(facet.slopeAngle);
        const w = side * facet.halfWidth;
        return [
          u * Math.cos(turn) - w * Math.sin(turn),
          u * Math.sin(turn) + w * Math.cos(turn),
          dish.baseHeight + facet.z - depth * Math.cos(facet.slopeAngle),
        ];
      }),
    );
  });
  return library.Manifold.union(
    sections.slice(1).map((section, i) => library.Manifold.hull([...sections[i]!, ...section])),
  );
}

/** A bent sheet as the assembly places it: hulls between its chords. */
export function sheetSolid(
  library: ManifoldToplevel,
  { design, dish }: Prepared,
  sheet: AssembledSheet,
  count = 200,
): Manifold {
  const shape = sheetShape(design, dish, sheet);
  const ys = sheet.part.outline.map(({ y }) => y);
  const sections = Array.from({ length: count + 1 }, (_, i) => {
    const at = shape.at((i / count) * shape.length);
    return [0, sheet.part.thickness].flatMap((below) =>
      [Math.min(...ys), Math.max(...ys)].map((y): [number, number, number] => [
        ...(sheetPoint(shape, sheet.bay, at, y, below) as [number, number, number]),
      ]),
    );
  });
  return library.Manifold.union(
    sections.slice(1).map((section, i) => library.Manifold.hull([...sections[i]!, ...section])),
  );
}
