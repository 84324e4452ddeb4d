/** Gauges to check the curve with, the focal stick, and the spacer for the rim. */
import { contourFromPoints, fitArcs, type FittedPath, strokeTextWidth } from '../geometry/index.js';
import { type Dish, facetAt } from '../dish/index.js';
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import { blank, lineMark, type Part, textMark } from '../part/index.js';
import { inUnits, thicknessOf } from './blank.js';
import { hubTop } from './hub-build.js';
import { gaugeShape } from './gauge-shape.js';
import { fitToBed } from './joint.js';

/** Width of the focal stick, and of the spacer's wood outside its notches (mm). */
const stickWidth = 40;
const spacerWood = 25;
/** Depth of the spacer's notches, and the play of a rib in them (mm): common practice, no source. */
const spacerNotch = 25;
const notchFit = 0.3;
/** A gauge in more pieces than this is no gauge. */
const maxPieces = 4;

function base(design: Design) {
  const { material } = design.template;
  return { kind: 'gauge' as const, material, thickness: thicknessOf(design, material), quantity: 1 };
}

/** The reflecting mid-line of a panel: x radius, y height above the board. */
function midLine(design: Design, dish: Dish): FittedPath {
  return fitArcs(
    {
      from: dish.litFrom,
      to: dish.litTo,
      at: (u) => ({ x: u, y: dish.baseHeight + facetAt(dish, u).z }),
      tangent: (u) => ({ x: 1, y: Math.tan(facetAt(dish, u).slopeAngle) }),
    },
    design.dish.arcTolerance,
  );
}

/**
 * The mirror's edge at a rib: x the radius along the rib, y height above the board. The edge's point at mid-line u
 * lies at u·cos α + w·sin α along the rib, w half the reflecting chord.
 */
function seamLine(design: Design, dish: Dish): FittedPath {
  const { halfAngle } = dish.layout;
  const [cos, sin, tan] = [Math.cos(halfAngle), Math.sin(halfAngle), Math.tan(halfAngle)];
  return fitArcs(
    {
      from: dish.litFrom,
      to: dish.litTo,
      at: (u) => {
        const { z, halfWidth } = facetAt(dish, u);
        return { x: u * cos + halfWidth * sin, y: dish.baseHeight + z };
      },
      tangent: (u) => ({ x: cos + tan * sin, y: Math.tan(facetAt(dish, u).slopeAngle) }),
    },
    design.dish.arcTolerance,
  );
}

function makeGauge(
  design: Design,
  curve: FittedPath,
  names: { readonly id: string; readonly name: string; readonly title: string; readonly note: string },
): Part {
  const shape = gaugeShape({
    side: curve.path,
    full: design.template.gauge === 'rim-to-rim',
    title: names.title,
  });
  return blank({
    ...base(design),
    id: names.id,
    name: names.name,
    outline: shape.outline,
    openings: shape.windows,
    marks: shape.marks,
    edges: shape.curve.map((run) => ({ ring: 0, ...run, role: 'optical' })),
    fitDeviation: curve.deviation,
    notes: [
      names.note,
      'Set its scribed marks on the inner end and the rim; look through the windows and from the side against a light. Never with the sun in the dish.',
    ],
  });
}

/** Height of the vessel's plane above the hub's top or, without a hub stack there, the board. */
function stickLength(design: Design, dish: Dish): number {
  return dish.baseHeight + dish.focusHeight.atRim + (design.vessel?.offset ?? 0) - hubTop(design, dish);
}

/** A stick that stands on the hub and reaches to the vessel. */
function focalStick(design: Design, dish: Dish): Part {
  const length = stickLength(design, dish);
  const focus = length - (design.vessel?.offset ?? 0);
  const bolt = design.hub.boltDiameter;
  // a foot cut out over the bolt's head and washer
  const half = Math.min(1.5 * bolt, stickWidth / 2 - 6);
  const foot: [number, number][] =
    bolt > 0
      ? [
          [0, stickWidth / 2 + half],
          [2 * bolt, stickWidth / 2 + half],
          [2 * bolt, stickWidth / 2 - half],
          [0, stickWidth / 2 - half],
        ]
      : [];
  const corners: [number, number][] = [[0, 0], [length, 0], [length, stickWidth], [0, stickWidth], ...foot];
  const across = (x: number) =>
    lineMark(
      contourFromPoints([
        { x, y: 0 },
        { x, y: stickWidth },
      ]),
    );
  const offset = Math.abs(length - focus) > 1e-6 && focus < length;
  const axis = lineMark(
    contourFromPoints([
      { x: bolt > 0 ? 2 * bolt : 0, y: stickWidth / 2 },
      { x: length, y: stickWidth / 2 },
    ]),
  );
  const height = 6;
  const text = design.vessel ? 'VESSEL' : 'FOCUS';
  return blank({
    ...base(design),
    id: 'focal-stick',
    name: 'Focal stick',
    outline: contourFromPoints(corners.map(([x, y]) => ({ x, y }))),
    marks: [
      axis,
      ...(offset ? [across(focus)] : []),
      textMark(text, { x: length - strokeTextWidth(text, height) - 4, y: stickWidth / 2 + 6 }, height),
      ...(offset ? [textMark('FOCUS', { x: focus - strokeTextWidth('FOCUS', height) - 2, y: 6 }, height)] : []),
    ],
    notes: [
      `Stands on the hub, plumb on the axis; its top is ${inUnits(design, length)} above the hub: there the vessel's underside hangs.`,
      'Use it in the shade or under the cover: the top of the stick is the focus.',
    ],
  });
}

/**
 * A bar that lies level across two ribs at the rim, its notches square to neither but along each rib: it holds them
 * at their angle and at equal distance. Seen in plan, x outward along the bisector.
 */
function rimSpacer(design: Design, dish: Dish): Part {
  const { apertureRadius: R, layout, ribThickness } = dish;
  const { halfAngle } = layout;
  const [cos, sin] = [Math.cos(halfAngle), Math.sin(halfAngle)];
  const half = (ribThickness + notchFit) / 2;
  const [inner, outer] = [R * cos - spacerNotch, R * cos + spacerWood];
  const reach = R * sin + half / cos + spacerWood;
  // corners of the notch of the rib on the positive side; it enters from the inner edge of the bar
  const onInner = (side: number): { x: number; y: number } => ({ x: inner, y: (inner * sin + side * half) / cos });
  const atEnd = (side: number): { x: number; y: number } => ({
    x: R * cos - side * half * sin,
    y: R * sin + side * half * cos,
  });
  const notch = [onInner(1), atEnd(1), atEnd(-1), onInner(-1)];
  const mirrored = notch.map(({ x, y }) => ({ x, y: -y })).reverse();
  const corners = [
    { x: inner, y: -reach },
    { x: outer, y: -reach },
    { x: outer, y: reach },
    { x: inner, y: reach },
    ...notch,
    ...mirrored,
  ];
  const text = 'RIM SPACER';
  return blank({
    ...base(design),
    id: 'rim-spacer',
    name: 'Rim spacer',
    quantity: 2,
    outline: contourFromPoints(corners),
    marks: [textMark(text, { x: R * cos + 10 + 6, y: -strokeTextWidth(text, 6) / 2 }, 6, Math.PI / 2)],
    seatCorners: [5, 6, 9, 10].map((vertex) => ({ ring: 0, vertex })),
    notes: [
      'Push it level over the rim ends of two neighbouring ribs while their glue sets: the notches bottom on the rim ends.',
      'Go round with two of them, so that one always stays on the pair before.',
    ],
  });
}

/** What the gauges cannot be made with. */
export function gaugeProblems(design: Design, dish: Dish): Diagnostic[] {
  const show = (mm: number) => inUnits(design, mm);
  const problems: Diagnostic[] = [];
  if (design.template.gauge === 'rim-to-rim' && dish.layout.ribs.length % 2 === 1)
    problems.push(
      diagnostic(
        'gauge',
        ['template', 'gauge'],
        'a rim-to-rim gauge needs an even number of ribs, so that rib lies across from rib',
        `dish.ribs is ${dish.layout.ribs.length}: use template.gauge: vertex-to-rim`,
      ),
    );
  if (stickLength(design, dish) < 2 * stickWidth)
    problems.push(
      diagnostic(
        'focal-stick',
        ['vessel', 'offset'],
        `the vessel's plane lies only ${show(stickLength(design, dish))} above the hub`,
        'use a larger vessel.offset or fewer hub.layers',
        'warning',
      ),
    );
  return problems;
}

/** Gauges for bare ribs, for the mirror over a rib and for the middle of a panel; focal stick; rim spacer. */
export function makeGauges(design: Design, dish: Dish): Part[] {
  const skinned = [
    makeGauge(design, seamLine(design, dish), {
      id: 'gauge-seam',
      name: 'Gauge for the mirror at the rib line',
      title: 'MIRROR AT RIB LINE',
      note: 'The negative of the mirror along a seam, over the middle of a rib.',
    }),
    makeGauge(design, midLine(design, dish), {
      id: 'gauge-panel',
      name: 'Gauge for the middle of a panel',
      title: 'MIRROR AT PANEL MIDDLE',
      note: 'The negative of the mirror along the middle of a panel.',
    }),
  ];
  const bare = makeGauge(design, dish.ribTop, {
    id: 'gauge-rib',
    name: 'Gauge for bare ribs',
    title: 'BARE RIB',
    note: 'The negative of a rib’s top edge, before the panels go on.',
  });
  const stick = stickLength(design, dish) > 2 * stickWidth ? [focalStick(design, dish)] : [];
  return [bare, ...skinned, ...stick, rimSpacer(design, dish)].flatMap(
    (part) =>
      fitToBed(part, design.template.bed, design.template.joint, maxPieces) ?? [
        { ...part, notes: [...part.notes, `It does not fit the bed even in ${maxPieces} pieces: cut it by hand.`] },
      ],
  );
}
