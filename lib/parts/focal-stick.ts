/** The focal stick: two blades, halved across each other, that stand on the hub by themselves and reach to the vessel. */
import { type Contour, contourFromPoints, type Point, strokeTextWidth } from '../geometry/index.js';
import type { Dish } from '../dish/index.js';
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import { blank, lineMark, type Part, textMark } from '../part/index.js';
import { inUnits } from './blank.js';
import { gaugeBlank } from './gauge-blank.js';
import { hubTop } from './hub-build.js';

/** Width of the stick, and the widest foot, mm. */
const width = 40;
const maxFoot = 120;
/** A foot of more than this share of the hub would touch the ribs. */
const footShare = 1.8;
/** Height of the foot, mm, on a stick that is long enough. */
const footHeight = 120;
/** Play of the two blades in each other, mm: common practice, no source. */
const halvingFit = 0.2;
/** Wood between the cut-out for the bolt and the edge of the foot, and up to the halving, mm. */
const footWood = 6;
const woodOverBolt = 10;

/** Height of the vessel's plane above the hub's top or, without a hub stack there, the board. */
function stickLength(design: Design, dish: Dish): number {
  return dish.baseHeight + dish.focusHeight.atRim + (design.vessel?.offset ?? 0) - hubTop(design, dish);
}

/** A warning where the vessel stands too low for a stick. */
export function focalStickProblems(design: Design, dish: Dish): Diagnostic[] {
  const length = stickLength(design, dish);
  return length >= 2 * width
    ? []
    : [
        diagnostic(
          'focal-stick',
          ['vessel', 'offset'],
          `the vessel's plane is only ${inUnits(design, length)} above the hub`,
          'use a larger vessel.offset or fewer hub.layers',
          'warning',
        ),
      ];
}

/** A blade from one of its sides, as [up the stick, out from its middle], listed so that the other side follows back. */
function blade(side: readonly (readonly [number, number])[]): Contour {
  return contourFromPoints([...side.map(([x, y]) => ({ x, y: -y })), ...side.toReversed().map(([x, y]) => ({ x, y }))]);
}

/** The outlines of the stick and of the foot across it, x up from the hub, y from the middle. */
function blades(design: Design, dish: Dish, length: number, thickness: number) {
  const { template, hub } = design;
  const half = width / 2;
  const foot = Math.max(width, Math.min(maxFoot, footShare * dish.innerRadius)) / 2;
  const high = Math.min(footHeight, 0.75 * length);
  const bit = template.process === 'router' ? template.toolDiameter : 0;
  const slot = (Math.max(thickness, bit) + halvingFit) / 2;
  // the foot is cut out over the bolt's head and washer
  const bolt = { high: 2 * hub.boltDiameter, half: Math.min(1.5 * hub.boltDiameter, foot - footWood) };
  const halving = Math.max(high / 2, bolt.high + woodOverBolt);
  const bolted = hub.boltDiameter > 0;
  const overBolt: [number, number][] = bolted
    ? [
        [bolt.high, bolt.half],
        [0, bolt.half],
      ]
    : [];
  const flare: [number, number][] = foot > half ? [[high, half]] : [];
  return {
    halving,
    stick: blade([[halving, slot], [bolted ? bolt.high : 0, slot], ...overBolt, [0, foot], ...flare, [length, half]]),
    foot: blade([...overBolt, [0, foot], [high, half], [high, slot], [halving, slot]]),
    /** Greatest width of the foot. */
    across: 2 * foot,
  };
}

/** The stick and the foot that is halved across it; none where the vessel is close to the hub. */
export function focalStick(design: Design, dish: Dish): Part[] {
  const length = stickLength(design, dish);
  if (length < 2 * width) return [];
  const of = gaugeBlank(design);
  const { halving, stick, foot, across } = blades(design, dish, length, of.thickness);
  const focus = length - (design.vessel?.offset ?? 0);
  const offset = Math.abs(length - focus) > 1e-6 && focus < length;
  const height = 6;
  const text = design.vessel ? 'VESSEL' : 'FOCUS';
  const line = (from: Point, to: Point) => lineMark(contourFromPoints([from, to]));
  return [
    blank({
      ...of,
      id: 'focal-stick',
      name: 'Focal stick',
      outline: stick,
      marks: [
        line({ x: halving, y: 0 }, { x: length, y: 0 }),
        ...(offset ? [line({ x: focus, y: -width / 2 }, { x: focus, y: width / 2 })] : []),
        textMark(text, { x: length - strokeTextWidth(text, height) - 4, y: height }, height),
        ...(offset
          ? [textMark('FOCUS', { x: focus - strokeTextWidth('FOCUS', height) - 2, y: 6 - width / 2 }, height)]
          : []),
      ],
      notes: [
        `Stands on the hub, plumb on the axis; its top is ${inUnits(design, length)} above the hub, where the vessel's underside hangs.`,
        'Put the foot over the bolt, lower the stick into it, and glue the two square to each other.',
        'Use it in the shade or under the cover: the top of the stick is the focus.',
      ],
    }),
    blank({
      ...of,
      id: 'focal-stick-foot',
      name: 'Foot of the focal stick',
      outline: foot,
      marks: [textMark('FOOT', { x: 6, y: 10 - across / 2 }, height)],
      notes: ['Slots together with the focal stick, across it.'],
    }),
  ];
}
