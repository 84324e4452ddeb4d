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
  type Point,
  reversed,
  strokeTextWidth,
  type Vertex,
} from '../geometry/index.js';
import type { Dish } from '../dish/index.js';
import type { Design } from '../design/index.js';
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import { blank, type EdgeRun, type Hole, lineMark, type Part, textMark, throughHole } from '../part/index.js';
import { grainThatFits, inUnits, thicknessOf } from './blank.js';
import { lighteningHoles } from './lightening.js';
import { ribScrewRadii } from './plan.js';

/** Corners closer together than this are one (mm). */
const samePoint = 1e-6;

/** The rib's outline, anticlockwise from the inner end of its base, and what its edges are for. */
export interface RibOutline {
  readonly outline: Contour;
  readonly edges: readonly EdgeRun[];
  /** Top edge from the inner end to the rim, in the rib's frame. */
  readonly top: Path;
}

/**
 * Outline of a rib.
 * @returns base, toe cut (absent when the base reaches the rim), rim end, top curve inwards, inner end
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
  const under: Point[] = [{ x: 0, y: 0 }];
  // a base that reaches the rim, or a toe that stays on the base line, is no corner of its own
  if (toe < length - samePoint && foot > samePoint) under.push({ x: toe, y: 0 }, { x: length, y: foot });
  else under.push({ x: length, y: 0 });
  const outline = [...contourFromPoints(under), ...reversed(top)];
  const lastTop = outline.length - 2;
  return {
    outline,
    top,
    edges: [
      { ring: 0, from: 0, to: 0, role: 'seat' },
      { ring: 0, from: under.length, to: lastTop, role: 'optical' },
      { ring: 0, from: lastTop + 1, to: lastTop + 1, role: 'seat' },
    ],
  };
}

/** Least depth of a rib between its top edge and base or toe cut, mm, and how far along the rib it is. */
function minDepth(rib: RibOutline): { readonly depth: number; readonly x: number } {
  const under = contourFromPoints(rib.outline.slice(0, rib.outline.length - rib.top.length));
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
function pilotHoles(design: Design, dish: Dish, cleatStart: number): Hole[] {
  const y = thicknessOf(design, design.cleat.material) / 2;
  return ribScrewRadii(design, dish, cleatStart).map((radius) =>
    throughHole({ x: radius - dish.innerRadius, y }, design.rib.pilotDiameter),
  );
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
        `use a larger rib.rimHeight or dish.baseHeight, so that ${show(enough)} are left (twice its thickness)`,
        'warning',
      ),
    );
  }
  const cleatThickness = thicknessOf(design, design.cleat.material);
  if (dish.innerEndHeight < cleatThickness)
    problems.push(
      diagnostic(
        'cleat-too-thick',
        ['cleat', 'material'],
        `cleats of ${show(cleatThickness)} stand higher than the ribs' inner ends (${show(dish.innerEndHeight)})`,
        'use a larger dish.baseHeight',
        'warning',
      ),
    );
  return problems;
}

/** The rib: one part, as often as the dish has ribs; its lettering carries the copy's number. */
export function makeRib(design: Design, dish: Dish, cleatStart: number): Part {
  const { rib } = design;
  const { outline, edges } = ribOutline(design, dish);
  const length = dish.apertureRadius - dish.innerRadius;
  const pilots = pilotHoles(design, dish, cleatStart);
  const cleatMiddle = cleatStart + design.cleat.length / 2 - dish.innerRadius;
  const height = Math.min(8, dish.innerEndHeight / 5);
  const label = `RIB {n} OF ${dish.layout.ribs.length}`;
  const labelAt = { x: height, y: dish.innerEndHeight / 2 - height };
  // lettering, pilots and the seat of the cleat stay whole
  const keep = [
    { x: labelAt.x + strokeTextWidth(label, height), y: labelAt.y + height / 2 },
    ...pilots.map(({ x, y }) => ({ x, y })),
  ];
  const openings = rib.lightening ? lighteningHoles(outline, rib.minWeb, keep) : [];
  const cleatLine = lineMark(
    contourFromPoints([
      { x: cleatMiddle, y: 0 },
      { x: cleatMiddle, y: thicknessOf(design, design.cleat.material) },
    ]),
  );
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
    marks: [cleatLine, textMark(label, labelAt, height)],
    edges,
    fitDeviation: dish.ribTop.deviation,
    notes: [
      `The curved edge is the dish: cut it square to the face and sand all ribs together as a pack, never one alone.`,
      `The inner end stands ${inUnits(design, dish.innerRadius)} from the axis, square against the hub.`,
      `The scribed line is the middle of the cleat, on the face on which the cleat goes: the right one as seen from the hub.`,
    ],
  });
}
