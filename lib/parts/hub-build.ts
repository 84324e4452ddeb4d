/** What the hub is built up of: how far it reaches, how high its plates lie, and its slots. */
import {
  bulgeOfSweep,
  circle,
  type Contour,
  placePoint,
  polar,
  regularPolygon,
  type Vertex,
} from '../geometry/index.js';
import { type Dish, noseLength, slottedReach, upperDiscHeight } from '../dish/index.js';
import type { Design } from '../design/index.js';
import { thicknessOf } from './blank.js';

const isSlotted = (design: Design): boolean => design.hub.build === 'slotted-discs';

/** Depth of the grooves that the ribs stand in, mm; 0 where they stand in none. */
export function grooveDepth({ rib }: Design): number {
  return rib.joint === 'housing' ? (rib.housing ?? 0) : 0;
}

/** Whether the ribs' inner ends go into the edge of the hub, by slots of discs or grooves of layers. */
export const takesRibs = (design: Design): boolean => isSlotted(design) || grooveDepth(design) > 0;

/** From the axis to a flat of the hub, or to its edge if round, mm: slots and grooves reach past the ribs' inner ends. */
export function hubReach(design: Design, dish: Dish): number {
  return isSlotted(design)
    ? slottedReach(dish.innerRadius, thicknessOf(design, design.hub.material))
    : dish.innerRadius + grooveDepth(design);
}

/** Heights of the lower faces of the hub's plates above the board, from below, mm. */
export function hubHeights(design: Design, dish: Dish): number[] {
  const thickness = thicknessOf(design, design.hub.material);
  return isSlotted(design)
    ? [0, upperDiscHeight(dish.innerEndHeight, thickness)]
    : Array.from({ length: design.hub.layers }, (_, k) => k * thickness);
}

/** Height of the hub's top above the board, mm. */
export function hubTop(design: Design, dish: Dish): number {
  return (hubHeights(design, dish).at(-1) ?? 0) + thicknessOf(design, design.hub.material);
}

/** The nose of a rib between two slotted discs: how far inward of the curve it reaches, and between which heights. */
export interface Nose {
  readonly length: number;
  readonly low: number;
  readonly high: number;
}

/** Null where the ribs butt against a stack of layers. */
export function noseOf(design: Design, dish: Dish): Nose | null {
  if (!isSlotted(design)) return null;
  const thickness = thicknessOf(design, design.hub.material);
  const high = upperDiscHeight(dish.innerEndHeight, thickness);
  // the rib stands on the board, so that its nose stays off the disc that lies there
  return { length: noseLength(thickness), low: thickness + design.rib.fit, high };
}

/** The hub's outline without slots: flats face the ribs, so the corners lie half way between them. */
export function hubOutline(design: Design, dish: Dish): Contour {
  const reach = hubReach(design, dish);
  const { halfAngle, ribs } = dish.layout;
  const centre = { x: 0, y: 0 };
  return design.hub.shape === 'round'
    ? circle(centre, reach)
    : regularPolygon(centre, reach / Math.cos(halfAngle), ribs.length, halfAngle);
}

/** A disc or layer with a slot for each rib, open at the edge; the bottoms of the slots are where the ribs' curves start. */
export interface SlottedDisc {
  readonly outline: Contour;
  /** For each rib the vertices at the bottom of its slot, and the edges of the slot. */
  readonly slots: readonly { readonly corners: readonly [number, number]; readonly edges: readonly [number, number] }[];
}

/** The outline of a slotted disc, anticlockwise, slot by slot. */
export function slottedDisc(design: Design, dish: Dish): SlottedDisc {
  const { innerRadius, layout, ribThickness } = dish;
  const { halfAngle, ribs } = layout;
  const half = (ribThickness + design.rib.fit) / 2;
  const reach = hubReach(design, dish);
  const round = design.hub.shape === 'round';
  const mouth = round ? Math.sqrt(reach * reach - half * half) : reach;
  const finger = bulgeOfSweep(2 * (halfAngle - Math.asin(half / reach)));
  const outline = ribs.flatMap(({ rotationDeg }): Vertex[] => {
    const at = (x: number, y: number, bulge = 0): Vertex => ({
      ...placePoint({ x, y }, { x: 0, y: 0, rotationDeg, mirrored: false }),
      bulge,
    });
    const slot = [at(mouth, -half), at(innerRadius, -half), at(innerRadius, half), at(mouth, half, round ? finger : 0)];
    if (round) return slot;
    const corner = polar(reach / Math.cos(halfAngle), (rotationDeg * Math.PI) / 180 + halfAngle);
    return [...slot, { ...corner, bulge: 0 }];
  });
  const step = round ? 4 : 5;
  return {
    outline,
    slots: ribs.map((_, k) => ({ corners: [step * k + 1, step * k + 2], edges: [step * k, step * k + 2] })),
  };
}
