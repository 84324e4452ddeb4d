/** The hub: one layer, on its axis; flat k faces rib k, counted anticlockwise from x. */
import {
  contourFromPoints,
  cyclic,
  placePoint,
  type Point,
  polar,
  rotate,
  strokeTextWidth,
} from '../geometry/index.js';
import { type Dish, flatLength, ribNumbers } from '../dish/index.js';
import type { Design } from '../design/index.js';
import { dowelRoom, dowelStagger } from '../hardware/index.js';
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import { blank, lineMark, type Part, type TextMark, textMark, throughHole } from '../part/index.js';
import { inUnits, thicknessOf } from './blank.js';
import { grooveDepth, hubHeights, hubOutline, noseOf, type SlottedDisc, slottedDisc, takesRibs } from './hub-build.js';
import { ribDirectionDeg } from './plan.js';

/** Lettering that a person reads without a glass (mm): common practice, no source. */
const minLetters = 2.5;

/** Radii between which a dowel has wood round it on both sides. */
function dowelRing({ hub, board }: Design, dish: Dish): { readonly from: number; readonly to: number } {
  return dowelRoom(hub.dowelDiameter, dish.innerRadius, Math.max(hub.boltDiameter, board.centreHole));
}

/**
 * Where the dowels stand that hold hub and board in register: at unequal radii and neither in one line nor square to
 * each other, so that a layer goes on in one position only, turned or turned over it does not.
 * @param joints directions in which the board is divided, radians: the dowels keep off them
 */
export function dowelPlaces(design: Design, dish: Dish, joints: readonly number[] = []): Point[] {
  const { dowels, dowelDiameter } = design.hub;
  if (dowels === 0) return [];
  const { from, to } = dowelRing(design, dish);
  const { bays } = dish.layout;
  const far = Math.max(1, Math.round(0.36 * bays.length));
  const places = (shift: number): Point[] =>
    [
      { radius: from + 0.6 * (to - from), bay: shift },
      { radius: from + 0.15 * (to - from), bay: shift + far },
    ]
      .slice(0, dowels)
      .map(({ radius, bay }) => polar(radius, (cyclic(bays, bay).rotationDeg * Math.PI) / 180));
  const clear = (place: Point): boolean =>
    joints.every((joint) => {
      const { x, y } = rotate(place, -joint);
      return x < 0 || Math.abs(y) >= dowelDiameter;
    });
  const shift = bays.findIndex((_, i) => places(i).every(clear));
  return places(Math.max(0, shift));
}

function dowelProblems(design: Design, dish: Dish): Diagnostic[] {
  const { dowels, dowelDiameter } = design.hub;
  if (dowels === 0) return [];
  const { from, to } = dowelRing(design, dish);
  if (to - from >= dowelStagger) return [];
  const show = (mm: number) => inUnits(design, Math.ceil(10 * mm) / 10);
  return [
    diagnostic(
      'hub-dowel',
      ['hub', 'dowelDiameter'],
      `a hub of ${show(dish.innerRadius)} radius has no room for ${dowels === 1 ? 'a dowel' : 'dowels'} of ${show(dowelDiameter)} beside its bolt`,
      `use thinner dowels, a thinner bolt, a hub.radius of ${show(dish.innerRadius + dowelStagger - (to - from))} or more, or hub.dowels: 0`,
    ),
  ];
}

/** Whether the bolt leaves a hub round it, and the dowels find room. */
export function hubProblems(design: Design, dish: Dish): Diagnostic[] {
  return [...boltProblems(design, dish), ...dowelProblems(design, dish)];
}

function boltProblems(design: Design, dish: Dish): Diagnostic[] {
  const { boltDiameter } = design.hub;
  const nose = noseOf(design, dish);
  if (nose !== null && boltDiameter / 2 > dish.innerRadius - nose.length)
    return [
      diagnostic(
        'hub-bolt',
        ['hub', 'boltDiameter'],
        `hub.boltDiameter of ${inUnits(design, boltDiameter)} runs into the noses of the ribs, which end ${inUnits(design, dish.innerRadius - nose.length)} from the axis`,
        `use a smaller bolt, or a hub.radius of ${inUnits(design, Math.ceil(boltDiameter / 2 + nose.length))} or more`,
      ),
    ];
  const wall = dish.innerRadius - boltDiameter / 2;
  const min = Math.max(5, boltDiameter / 2);
  if (boltDiameter === 0 || wall >= min) return [];
  return [
    diagnostic(
      'hub-bolt',
      ['hub', 'boltDiameter'],
      `hub.boltDiameter of ${inUnits(design, boltDiameter)} leaves only ${inUnits(design, Math.max(0, wall))} of the hub around it`,
      'use a smaller bolt or a larger hub.radius',
    ),
  ];
}

/** Rib numbers just inside the flats, read from the rim; where all would crowd, only every fifth and the first. */
function ribNumberLabels(dish: Dish): TextMark[] {
  const { innerRadius, layout } = dish;
  const ribCount = layout.ribs.length;
  const widest = strokeTextWidth(String(ribCount), 1);
  const fit = (step: number): number => (0.75 * flatLength(ribCount / step, 0.8 * innerRadius)) / widest;
  const step = fit(1) >= minLetters || ribCount <= 5 ? 1 : 5;
  const height = Math.min(8, innerRadius / 5, step === 1 ? fit(1) : minLetters);
  return ribNumbers(layout)
    .filter((rib) => step === 1 || rib === 1 || rib % step === 0)
    .map((rib) => {
      const text = String(rib);
      const rotationDeg = ribDirectionDeg(dish, rib);
      // the foot of the letters looks outward, as they are read from the rib
      const corner = { x: innerRadius - 0.12 * innerRadius, y: -strokeTextWidth(text, height) / 2 };
      const at = placePoint(corner, { x: 0, y: 0, rotationDeg, mirrored: false });
      return textMark(text, at, height, (rotationDeg * Math.PI) / 180 + Math.PI / 2);
    });
}

/** The hub's layers or discs, all alike. */
export function makeHub(design: Design, dish: Dish, dowels: readonly Point[]): Part {
  const { hub } = design;
  const { innerRadius, layout } = dish;
  const ticks = ribNumbers(layout).map((rib) => {
    const angle = (ribDirectionDeg(dish, rib) * Math.PI) / 180;
    return lineMark(contourFromPoints([polar(0.91 * innerRadius, angle), polar(0.99 * innerRadius, angle)]));
  });
  return blank({
    id: 'hub',
    kind: 'hub',
    material: hub.material,
    thickness: thicknessOf(design, hub.material),
    quantity: hub.layers,
    holes: [
      ...(hub.boltDiameter > 0 ? [throughHole({ x: 0, y: 0 }, hub.boltDiameter)] : []),
      ...dowels.map((at) => throughHole(at, hub.dowelDiameter)),
    ],
    marks: [...ticks, ...ribNumberLabels(dish)],
    ...(takesRibs(design) ? slottedShape(design, dish, slottedDisc(design, dish)) : layerShape(design, dish)),
  });
}

type Shape = Pick<Part, 'name' | 'outline' | 'edges' | 'seatCorners' | 'notes'>;

function layerShape(design: Design, dish: Dish): Shape {
  const outline = hubOutline(design, dish);
  const polygon = design.hub.shape === 'polygon';
  const rib = inUnits(design, dish.ribThickness);
  return {
    name: 'Hub layer',
    outline,
    edges: polygon ? [{ ring: 0, from: 0, to: outline.length - 1, role: 'seat' }] : [],
    seatCorners: [],
    notes: [
      polygon
        ? `Glue the layers with their flats aligned; each rib of ${rib} seats in the middle of its flat, at the scribed tick.`
        : `Glue the layers with their ticks aligned; each rib of ${rib} butts at its scribed tick.`,
    ],
  };
}

/** What a builder has to know of slots in the hub's edge. */
function slotNote(design: Design, dish: Dish): string {
  const play = inUnits(design, design.rib.fit);
  if (design.hub.build === 'layers')
    return `Glue the layers with their grooves aligned, and wipe the glue out of the grooves: each rib goes ${inUnits(design, grooveDepth(design))} deep into them, with ${play} of play.`;
  const [, upper = 0] = hubHeights(design, dish);
  return `One lies on the board before the ribs go in; the other is lowered over the ribs onto their noses, ${inUnits(design, upper)} above the board. The ribs go in the slots with ${play} of play.`;
}

function slottedShape(design: Design, dish: Dish, { outline, slots }: SlottedDisc): Shape {
  return {
    name: design.hub.build === 'layers' ? 'Hub layer' : 'Hub disc',
    outline,
    // fingers between grooves are too narrow for a tab: such layers are held by an onion skin
    edges:
      design.hub.build === 'layers'
        ? [{ ring: 0, from: 0, to: outline.length - 1, role: 'seat' }]
        : slots.map(({ edges: [from, to] }) => ({ ring: 0, from, to, role: 'seat' })),
    seatCorners: slots.flatMap(({ corners }) => corners.map((vertex) => ({ ring: 0, vertex }))),
    notes: [slotNote(design, dish)],
  };
}
