/** The backer board: its layout lines and drill pattern, in the dish's plan (x along rib 1, axis at the origin). */
import {
  circle,
  contourFromPoints,
  type Contour,
  placePoint,
  type Point,
  polar,
  rectangle,
  strokeTextWidth,
} from '../geometry/index.js';
import { type Dish, ribNumbers } from '../dish/index.js';
import type { Design } from '../design/index.js';
import {
  blank,
  type Hole,
  type LineMark,
  lineMark,
  type Part,
  ringMark,
  type TextMark,
  textMark,
  throughHole,
} from '../part/index.js';
import { inUnits, thicknessOf } from './blank.js';
import { boardScrews, type CleatStart, hasCleats, type PlanItem, ribDirectionDeg } from './plan.js';
import { groovesOfRib } from './housing.js';
import { slotsOfRib } from './tabs.js';

/** Scribed lines keep this far from the board's edge (mm). */
const lineFromEdge = 2;

/** Outline of the whole board. */
export function boardOutline(design: Design): Contour {
  const half = design.board.size / 2;
  return design.board.shape === 'round' ? circle({ x: 0, y: 0 }, half) : rectangle(-half, -half, half, half);
}

/** From the axis to the board's edge in a direction (radians). */
export function edgeRadius(design: Design, angle: number): number {
  const half = design.board.size / 2;
  if (design.board.shape === 'round') return half;
  return half / Math.max(Math.abs(Math.cos(angle)), Math.abs(Math.sin(angle)));
}

/** What is scribed and lettered for one rib. */
export function ribMarks(
  design: Design,
  dish: Dish,
  items: readonly PlanItem[],
  rib: number,
): { readonly lines: readonly LineMark[]; readonly label: TextMark } {
  const rotationDeg = ribDirectionDeg(dish, rib);
  const angle = (rotationDeg * Math.PI) / 180;
  const end = edgeRadius(design, angle) - lineFromEdge;
  const line = lineMark(contourFromPoints([polar(dish.innerRadius, angle), polar(end, angle)]));
  const cleats = items.flatMap((item) => (item.kind === 'cleat' && item.rib === rib ? [ringMark(item.outline)] : []));
  const height = Math.min(8, design.board.size / 60);
  const text = String(rib);
  const width = strokeTextWidth(text, height);
  const turned = (x: number, y: number): Point => placePoint({ x, y }, { x: 0, y: 0, rotationDeg, mirrored: false });
  // anticlockwise of the line, where no single cleat stands; a slanting edge of the board pushes it inward
  const top = dish.ribThickness / 2 + 1.5 * height;
  const fits = (x: number): boolean =>
    [turned(x, top), turned(x + width, top), turned(x, top - height), turned(x + width, top - height)].every(
      (corner) => Math.hypot(corner.x, corner.y) <= edgeRadius(design, Math.atan2(corner.y, corner.x)) - lineFromEdge,
    );
  let x = end - height / 2 - width;
  while (x > dish.innerRadius && !fits(x)) x -= height / 2;
  const at = turned(x, top - height);
  // where there are slots, they show where a rib goes
  return { lines: hasCleats(design) ? [line, ...cleats] : [], label: textMark(text, at, height, angle) };
}

/** The hub's outline, scribed. */
function hubScribe(items: readonly PlanItem[]): LineMark[] {
  return items.flatMap((item) => (item.kind === 'hub' ? [ringMark(item.outline)] : []));
}

/** Pilot holes for the cleats of some ribs. */
function pilotHoles(design: Design, dish: Dish, start: CleatStart, ribs: ReadonlySet<number>): Hole[] {
  return boardScrews(design, dish, start)
    .filter(({ rib }) => ribs.has(rib))
    .map(({ at }) => throughHole(at, design.board.pilotDiameter));
}

/** Slots as openings, whose corners the tabs' edges meet. */
export function slotsInBoard(slots: readonly Contour[]): Pick<Part, 'openings' | 'seatCorners'> {
  return {
    openings: slots,
    seatCorners: slots.flatMap((slot, i) => slot.map((_, vertex) => ({ ring: i + 1, vertex }))),
  };
}

/** The board in one piece. */
export function makeUndividedBoard(
  design: Design,
  dish: Dish,
  items: readonly PlanItem[],
  start: CleatStart,
  mounting: readonly Point[],
  dowels: readonly Point[],
): Part {
  const { board } = design;
  const ribs = ribNumbers(dish.layout);
  const marks = ribs.map((rib) => ribMarks(design, dish, items, rib));
  const centre = board.centreHole > 0 ? [throughHole({ x: 0, y: 0 }, board.centreHole)] : [];
  return blank({
    id: 'board',
    kind: 'board',
    name: 'Backer board',
    material: board.material,
    thickness: thicknessOf(design, board.material),
    quantity: 1,
    outline: boardOutline(design),
    ...slotsInBoard(ribs.flatMap((rib) => slotsOfRib(design, dish, ribDirectionDeg(dish, rib)))),
    pockets: ribs.flatMap((rib) => groovesOfRib(design, dish, ribDirectionDeg(dish, rib))),
    holes: [
      ...pilotHoles(design, dish, start, new Set(ribs)),
      ...centre,
      ...dowels.map((at) => throughHole(at, design.hub.dowelDiameter)),
      ...mounting.map((at) => throughHole(at, board.mountingDiameter)),
    ],
    marks: [...hubScribe(items), ...marks.flatMap(({ lines }) => lines), ...marks.map(({ label }) => label)],
    notes: hasCleats(design)
      ? [
          `Long scribed lines are the middles of the ribs: half of a ${inUnits(design, dish.ribThickness)} rib is on either side.`,
          'The rectangles are the cleats; the outline in the middle is the hub.',
        ]
      : [
          `The outline in the middle is the hub. Each rib goes into the ${design.rib.joint === 'housing' ? 'groove' : 'slots'} beside its number, from this face.`,
        ],
  });
}
