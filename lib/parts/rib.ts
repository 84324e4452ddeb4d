/**
 * The rib. Its frame: x along the rib from the inner end (add the inner radius for the distance from the axis),
 * y above the board's face.
 */
import {
  type Contour,
  contourFromPoints,
  cyclic,
  element,
  nearestOnContour,
  type Path,
  placePoint,
  type Point,
  reversed,
  strokeTextWidth,
  type Vertex,
} from '../geometry/index.js';
import type { Dish } from '../dish/index.js';
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import {
  blank,
  type EdgeRun,
  type Hole,
  type LineMark,
  lineMark,
  type Part,
  type SeatCorner,
  textMark,
  throughHole,
} from '../part/index.js';
import { grainThatFits, inUnits, thicknessOf } from './blank.js';
import { housedBase } from './housing.js';
import { battenPilots } from './battens.js';
import { grooveDepth, noseOf } from './hub-build.js';
import { lighteningHoles } from './lightening.js';
import { clampHole } from './clamp-hole.js';
import { type CleatStart, cleatPlaces, hasCleats, ribScrewRadii } from './plan.js';
import { tabDepth, tabPlaces } from './tabs.js';

/** Corners closer together than this are one (mm). */
const samePoint = 1e-6;

/** The rib's outline, anticlockwise from the inner end of its base, and what its edges are for. */
export interface RibOutline {
  readonly outline: Contour;
  readonly edges: readonly EdgeRun[];
  /** Top edge from the inner end to the rim, in the rib's frame. */
  readonly top: Path;
  /** Base and toe cut from the inner end outward, without tabs. */
  readonly underside: readonly Point[];
  /** Roots of tabs and nose, where board and hub must seat. */
  readonly seatCorners: readonly SeatCorner[];
}

/**
 * Outline of a rib.
 * @returns base with its tabs, toe cut (absent when the base reaches the rim), rim end, top curve inwards, inner end with
 * its nose
 */
export function ribOutline(design: Design, dish: Dish): RibOutline {
  const { innerRadius, apertureRadius, rimEndHeight } = dish;
  const length = apertureRadius - innerRadius;
  const toe = design.rib.toeRadius - innerRadius;
  const foot = Math.max(0, rimEndHeight - design.rib.rimHeight);
  // the ends are known exactly, and stand square to the last digit
  const last = dish.ribTop.path.length - 1;
  const top = dish.ribTop.path.map(({ x, y, bulge }, i): Vertex => ({
    x: i === 0 ? 0 : i === last ? length : x - innerRadius,
    y,
    bulge,
  }));
  const housed = housedBase(design, dish);
  const depth = housed.length > 0 ? grooveDepth(design) - design.rib.fit : tabDepth(design);
  const tabs = [...tabPlaces(design, dish), ...housed].map(({ from, to }) => ({
    from: from - innerRadius,
    to: to - innerRadius,
  }));
  const base: Point[] = [
    { x: 0, y: 0 },
    ...tabs.flatMap(({ from, to }) => [
      { x: from, y: 0 },
      { x: from, y: -depth },
      { x: to, y: -depth },
      { x: to, y: 0 },
    ]),
  ];
  // a base that reaches the rim, or a toe that stays on the base line, is no corner of its own
  const cut = toe < length - samePoint && foot > samePoint;
  const under = [...base, ...(cut ? [{ x: toe, y: 0 }] : []), { x: length, y: cut ? foot : 0 }];
  const nose = noseOf(design, dish);
  const inner: Point[] =
    nose === null
      ? []
      : [
          { x: 0, y: nose.high },
          { x: -nose.length, y: nose.high },
          { x: -nose.length, y: nose.low },
          { x: 0, y: nose.low },
        ];
  const body = [...contourFromPoints(under), ...reversed(top)];
  const outline = [...body, ...contourFromPoints(inner)];
  const roots = [
    ...tabs.flatMap((_, i) => [4 * i + 1, 4 * i + 4]),
    ...(nose === null ? [] : [body.length, body.length + 3]),
  ];
  return {
    outline,
    top,
    underside: cut
      ? [
          { x: 0, y: 0 },
          { x: toe, y: 0 },
          { x: length, y: foot },
        ]
      : [
          { x: 0, y: 0 },
          { x: length, y: 0 },
        ],
    edges: [
      { ring: 0, from: 0, to: base.length - 1, role: 'seat' },
      { ring: 0, from: under.length, to: body.length - 2, role: 'optical' },
      { ring: 0, from: body.length - 1, to: outline.length - 1, role: 'seat' },
    ],
    seatCorners: roots.map((vertex) => ({ ring: 0, vertex })),
  };
}

/** Least depth of a rib between its top edge and base or toe cut, mm, and how far along the rib it is. */
function minDepth(rib: RibOutline): { readonly depth: number; readonly x: number } {
  const under = rib.underside;
  const steps = 200;
  const length = cyclic(under, -1).x;
  const below = (x: number): number => {
    const toe = under.length === 3 ? element(under, 1) : cyclic(under, -1);
    const foot = cyclic(under, -1);
    return x <= toe.x ? 0 : (foot.y * (x - toe.x)) / (foot.x - toe.x);
  };
  // a strip under the top edge, so that only the distance to the underside counts
  const lid = [
    ...rib.top,
    { x: length, y: 2 * cyclic(rib.top, -1).y + 1, bulge: 0 },
    { x: 0, y: 2 * cyclic(rib.top, -1).y + 1, bulge: 0 },
  ];
  let min = { depth: Infinity, x: 0 };
  for (let i = 0; i <= steps; i++) {
    const x = (length * i) / steps;
    const { distance } = nearestOnContour(lid, { x, y: below(x) });
    if (distance < min.depth) min = { depth: distance, x };
  }
  return min;
}

/** Pilot holes for the screws from the cleats, at half the cleats' thickness above the base. */
function pilotHoles(design: Design, dish: Dish, cleatStart: CleatStart): Hole[] {
  const y = thicknessOf(design, design.cleat.material) / 2;
  return ribScrewRadii(design, dish, cleatStart).map((radius) =>
    throughHole({ x: radius - dish.innerRadius, y }, design.rib.pilotDiameter),
  );
}

/** The middle of each cleat that stands on the rib's front, scribed where the cleat goes. */
function linesForCleats(design: Design, dish: Dish, cleatStart: CleatStart): LineMark[] {
  const height = thicknessOf(design, design.cleat.material);
  // one on the right and one on the left share their middle, and the line is on the right
  return cleatPlaces(design, dish, cleatStart)
    .filter(({ y }) => y < 0)
    .map((place) => {
      const x = placePoint({ x: design.cleat.length / 2, y: 0 }, place).x - dish.innerRadius;
      return lineMark(
        contourFromPoints([
          { x, y: 0 },
          { x, y: height },
        ]),
      );
    });
}

/** How the rib stands on board and hub. */
function seatNotes(design: Design, dish: Dish): string[] {
  const radius = inUnits(design, dish.innerRadius);
  const play = inUnits(design, design.rib.fit);
  if (design.rib.joint === 'housing')
    return [
      `The inner end is ${radius} from the axis, in the grooves of the hub's ${design.hub.build === 'layers' ? 'layers' : 'discs'}.`,
      `The base goes into the groove of the board with ${play} of play, both sides together, and the same below it; the ends of the base, which lie on the board beyond the groove, carry the rib.`,
    ];
  const inner =
    noseOf(design, dish) === null
      ? `The inner end is ${radius} from the axis, square against the hub.`
      : `The curve starts ${radius} from the axis, at the bottoms of the slots in the hub's discs; the nose goes between the discs.`;
  return [
    inner,
    hasCleats(design)
      ? 'The scribed line is the middle of the cleat, on the face that the cleat goes on: the right one as seen from the hub.'
      : `The tabs go through the slots of the board with ${play} of play; the base, not the tabs, carries the rib.`,
  ];
}

/** Whether the rib keeps enough wood. */
export function ribProblems(design: Design, dish: Dish): Diagnostic[] {
  const show = (mm: number) => inUnits(design, mm);
  const problems: Diagnostic[] = [];
  const { depth, x } = minDepth(ribOutline(design, dish));
  const enough = 2 * dish.ribThickness;
  if (depth < enough) {
    const place = show(Math.round(dish.innerRadius + x));
    problems.push(
      diagnostic(
        'rib-thin',
        ['rib', x > design.rib.toeRadius - dish.innerRadius ? 'rimHeight' : 'toeRadius'],
        `the rib is only ${show(Math.round(10 * depth) / 10)} deep ${place} from the axis`,
        `use a larger rib.rimHeight or dish.baseHeight, so that ${show(enough)} is left (twice its thickness)`,
        'warning',
      ),
    );
  }
  const cleatThickness = thicknessOf(design, design.cleat.material);
  if (hasCleats(design) && dish.innerEndHeight < cleatThickness)
    problems.push(
      diagnostic(
        'cleat-too-thick',
        ['cleat', 'material'],
        `cleats of ${show(cleatThickness)} are higher than the ribs' inner ends (${show(dish.innerEndHeight)})`,
        'use a larger dish.baseHeight',
        'warning',
      ),
    );
  return problems;
}

/** The rib: one part, as often as the dish has ribs; its lettering carries the copy's number. */
export function makeRib(design: Design, dish: Dish, cleatStart: CleatStart): Part {
  const { rib } = design;
  const { outline, top, underside, edges, seatCorners } = ribOutline(design, dish);
  const length = dish.apertureRadius - dish.innerRadius;
  const pilots = pilotHoles(design, dish, cleatStart);
  const height = Math.min(8, dish.innerEndHeight / 5);
  const label = `RIB {n} OF ${dish.layout.ribs.length}`;
  const labelAt = { x: height, y: dish.innerEndHeight / 2 - height };
  // lettering, pilots and the seat of the cleat stay whole
  const keep = [
    { x: labelAt.x + strokeTextWidth(label, height), y: labelAt.y + height / 2 },
    ...pilots.map(({ x, y }) => ({ x, y })),
  ];
  const clamp =
    rib.clampHole > 0 && !rib.lightening ? clampHole({ outline, top, underside }, rib.clampHole, keep) : null;
  const openings = [
    ...(rib.lightening ? lighteningHoles(outline, rib.minWeb, keep) : []),
    ...(clamp === null ? [] : [clamp]),
  ];
  const cleatLines = linesForCleats(design, dish, cleatStart);
  return blank({
    id: 'rib',
    kind: 'rib',
    name: 'Rib',
    material: rib.material,
    thickness: dish.ribThickness,
    quantity: dish.layout.ribs.length,
    grain: grainThatFits(design, rib.material, 'along', length, dish.rimEndHeight),
    outline,
    openings,
    holes: pilots,
    edgeHoles: battenPilots(design, dish),
    marks: [...cleatLines, textMark(label, labelAt, height)],
    edges,
    seatCorners,
    fitDeviation: dish.ribTop.deviation,
    notes: [
      `The curved edge is the dish: cut it square to the face and sand all ribs together as a pack, never one alone.`,
      ...seatNotes(design, dish),
      ...(clamp === null ? [] : ['The hole near the rim takes a clamp.']),
    ],
  });
}
