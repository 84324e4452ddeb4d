/**
 * Battens over the seams: they lie on both panels that they hold, clear of the mirror beside them and of each other. What
 * is judged is the width as it is cut.
 */
import { bounds, flatten } from '../../geometry/index.js';
import { type Dish, facetAt } from '../../dish/index.js';
import type { Design } from '../../design/index.js';
import { isSheet, nameOf } from '../copies.js';
import { sheetPoint, sheetShape } from '../sheet-shape.js';
import type { Assembly, AssembledSheet } from '../types.js';
import type { AssemblyFault } from './fault.js';

/** Parts may run into each other, or stay apart, by this much, mm. */
const tolerance = 0.01;
/** Chords of curved edges, mm. */
const chord = 0.01;
const stations = 12;

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** Height of the panels' upper face over the board, at a radius in the middle plane of their bay. */
function faceAt(dish: Dish, radius: number): number {
  let u = radius;
  // the face is a parallel of the mirror: its chord lies a little further in
  for (let i = 0; i < 8; i++) u = radius - dish.reflectorThickness * Math.sin(facetAt(dish, u).slopeAngle);
  const { z, slopeAngle } = facetAt(dish, u);
  return dish.baseHeight + z - dish.reflectorThickness * Math.cos(slopeAngle);
}

/** How far the lower edges of a batten lie over the panels' faces: least and greatest. */
function overPanels(design: Design, dish: Dish, batten: AssembledSheet): readonly [number, number] {
  const shape = sheetShape(design, dish, batten);
  const { minX, maxX, minY, maxY } = bounds(batten.part.outline);
  const bay = dish.layout.bays[(batten.rib ?? 1) - 1];
  const turn = radians(bay?.rotationDeg ?? 0);
  const spaces = Array.from({ length: stations + 1 }, (_, i) => {
    const at = shape.at(minX + ((maxX - minX) * i) / stations);
    // on the side of the bay after the rib; the other is its mirror image
    const [x, y, z] = sheetPoint(shape, batten.bay, at, (maxY - minY) / 2, batten.part.thickness);
    return z - faceAt(dish, x * Math.cos(turn) + y * Math.sin(turn));
  });
  return [Math.min(...spaces), Math.max(...spaces)];
}

/** How deep a mirror lies under the batten after its bay. */
function underBatten(design: Design, dish: Dish, mirror: AssembledSheet, batten: AssembledSheet): number {
  const shape = sheetShape(design, dish, mirror);
  const rib = radians(batten.bay.rotationDeg);
  const { minY, maxY } = bounds(batten.part.outline);
  const depths = flatten(mirror.part.outline, chord, 'on').flatMap(({ x, y }) => {
    const length = mirror.start + x;
    if (length > shape.length) return [];
    const [px, py] = sheetPoint(shape, mirror.bay, shape.at(length), y, 0);
    const along = px * Math.cos(rib) + py * Math.sin(rib);
    return along < 0 ? [] : [(maxY - minY) / 2 - Math.abs(py * Math.cos(rib) - px * Math.sin(rib))];
  });
  return Math.max(0, ...depths);
}

/** What is wrong with the battens; all copies are turns of the first. */
export function battenFaults(design: Design, dish: Dish, { placed }: Assembly): AssemblyFault[] {
  const sheets = placed.filter(isSheet);
  const [batten, next] = sheets.filter(({ part }) => part.kind === 'batten');
  if (batten === undefined) return [];
  const faults: AssemblyFault[] = [];
  const [min, max] = overPanels(design, dish, batten);
  const between = [nameOf(batten), 'the panels beside it'] as const;
  if (min < -tolerance) faults.push({ kind: 'overlap', between, depth: -min });
  if (max > tolerance) faults.push({ kind: 'gap', between, gap: max });
  const { minX, minY, maxY } = bounds(batten.part.outline);
  const [half, { halfAngle }] = [(maxY - minY) / 2, dish.layout];
  const inner = sheetShape(design, dish, batten).at(minX).u;
  const apart = inner * Math.sin(halfAngle) - half * Math.cos(halfAngle);
  if (next !== undefined && apart < -tolerance / 2)
    faults.push({ kind: 'overlap', between: [nameOf(batten), nameOf(next)], depth: -2 * apart });
  for (const mirror of sheets.filter(({ part, copy }) => part.kind === 'reflector' && copy === 1)) {
    const depth = underBatten(design, dish, mirror, batten);
    if (depth > tolerance) faults.push({ kind: 'overlap', between: [mirror.part.id, nameOf(batten)], depth });
  }
  return faults;
}
