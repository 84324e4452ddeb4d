/**
 * A board larger than its stock: sectors that meet on the axis, with plates under their joints. A joint runs outward
 * between two ribs, so it misses them; within its bay it takes the direction that keeps furthest off the screws.
 */
import {
  bulgeOfSweep,
  type Contour,
  contourFromPoints,
  element,
  intersectPolygons,
  nearestOnEdge,
  type Path,
  type Point,
  polar,
  polygonArea,
  rotate,
  type StraightEdge,
  strokeTextWidth,
} from '../geometry/index.js';
import { type Dish, ribNumbers, screwFromJoint } from '../dish/index.js';
import type { Design } from '../design/index.js';
import { teeNut } from '../hardware/index.js';
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import { ringFits } from './bed.js';
import {
  blank,
  type LineMark,
  lineMark,
  type Part,
  ringMark,
  type TextMark,
  textMark,
  throughHole,
} from '../part/index.js';
import { inUnits, thicknessOf, usableSize } from './blank.js';
import { boardOutline, edgeRadius, ribMarks, slotsInBoard } from './board.js';
import { hubReach } from './hub-build.js';
import { boardScrews, type CleatStart, hasCleats, type PlanItem, ribDirectionDeg } from './plan.js';
import { boltPlaces, makeSplice, type Plates, plateScrews, splicePilots } from './splices.js';
import { groovesOfRib } from './housing.js';
import { slotsOfRib } from './tabs.js';

/** More pieces than this are no board. */
const maxSegments = 12;
const bayTrials = 201;
/** From the board's edge to a plate's end, mm. */
const plateFromEdge = 10;

const fullTurn = 2 * Math.PI;

/** A sector of the board between two joints, anticlockwise, radians. */
export interface Sector {
  readonly from: number;
  readonly to: number;
}

/** A region that covers a sector as far out as the board goes. */
function wedge(sector: Sector, reach: number): Point[] {
  const steps = Math.ceil((sector.to - sector.from) / (Math.PI / 4));
  const rim = Array.from({ length: steps + 1 }, (_, i) =>
    polar(reach, sector.from + ((sector.to - sector.from) * i) / steps),
  );
  return [{ x: 0, y: 0 }, ...rim];
}

function sectorOutline(design: Design, sector: Sector): Contour {
  const half = design.board.size / 2;
  if (design.board.shape === 'round')
    return [
      { x: 0, y: 0, bulge: 0 },
      { ...polar(half, sector.from), bulge: bulgeOfSweep(sector.to - sector.from) },
      { ...polar(half, sector.to), bulge: 0 },
    ];
  const [piece] = intersectPolygons([boardOutline(design)], [wedge(sector, 4 * half)]);
  return contourFromPoints(piece ?? []);
}

/** Sheets of the board's material, inside their margins. */
function boardSheets(design: Design): { readonly width: number; readonly height: number }[] {
  return design.stock.flatMap((item) => {
    const size = item.material === design.board.material && item.size ? usableSize(item) : null;
    return size === null ? [] : [size];
  });
}

/** Whether the board is made in segments: it is to come apart, or has sheets to come from and fits none of them. */
export function needsSegments(design: Design): boolean {
  const { material, size, shape, splice } = design.board;
  if (splice === 'bolted') return true;
  const ours = design.stock.filter((item) => item.material === material);
  if (ours.length === 0 || ours.some((item) => item.outline !== undefined)) return false;
  const sheets = boardSheets(design);
  if (shape === 'square') return !ringFits(boardOutline(design), sheets);
  return !sheets.some(({ width, height }) => Math.min(width, height) >= size);
}

/** Whether a ring lies on both sides of a ray from the axis. */
function crossesRay(ring: Contour, angle: number): boolean {
  const turned = ring.map((vertex) => rotate(vertex, -angle)).filter(({ x }) => x > 0);
  return turned.some(({ y }) => y > -1) && turned.some(({ y }) => y < 1);
}

/** Direction of the joints within their bay, from the rib before it, and the distance it keeps off screws and ribs. */
function jointInBay(
  design: Design,
  dish: Dish,
  start: CleatStart,
  items: readonly PlanItem[],
): { readonly angle: number; readonly clearance: number } {
  const bay = 2 * dish.layout.halfAngle;
  const screws = boardScrews(design, dish, start).filter(({ rib }) => rib <= 2);
  const cleats = design.board.splice === 'bolted' ? items : [];
  const away = (angle: number): number => {
    // what comes apart has no cleat glued across a joint
    if (cleats.some((item) => item.kind === 'cleat' && item.rib <= 2 && crossesRay(item.outline, angle))) return 0;
    const ray: StraightEdge = { kind: 'straight', from: { x: 0, y: 0 }, to: polar(design.board.size, angle) };
    // the inner corners of the two ribs beside the bay come closest to it
    const ribs = dish.innerRadius * Math.min(Math.sin(angle), Math.sin(bay - angle)) - dish.ribThickness / 2;
    if (ribs < 0) return ribs;
    return screws.reduce((min, { at }) => Math.min(min, nearestOnEdge(ray, at).distance), Infinity);
  };
  let best = { angle: bay / 2, clearance: away(bay / 2) };
  for (let i = 1; i < bayTrials; i++) {
    const angle = (bay * i) / bayTrials;
    const clearance = away(angle);
    if (clearance > best.clearance) best = { angle, clearance };
  }
  return best;
}

/** How the board is divided. */
export interface Division extends Plates {
  readonly sectors: readonly Sector[];
  readonly problems: readonly Diagnostic[];
}

/** Divides a board that fits no sheet into as few alike sectors as do. */
export function divideBoard(design: Design, dish: Dish, start: CleatStart, items: readonly PlanItem[]): Division {
  const show = (mm: number) => inUnits(design, mm);
  const { size, spliceWidth } = design.board;
  const bay = 2 * dish.layout.halfAngle;
  const { angle, clearance } = jointInBay(design, dish, start, items);
  const jointsFor = (count: number): number[] =>
    Array.from({ length: count }, (_, i) => bay * Math.floor((i * dish.layout.ribs.length) / count) + angle);
  const sectorsOf = (joints: readonly number[]): Sector[] =>
    joints.map((from, i) => ({ from, to: joints[i + 1] ?? element(joints, 0) + fullTurn }));
  const problems: Diagnostic[] = [];
  const counts = Array.from({ length: Math.min(maxSegments, dish.layout.ribs.length) - 1 }, (_, i) => i + 2).filter(
    (n) => n >= (design.board.segments ?? 2),
  );
  const sheets = boardSheets(design);
  const count = counts.find((n) =>
    sectorsOf(jointsFor(n)).every((sector) => ringFits(sectorOutline(design, sector), sheets)),
  );
  const joints = jointsFor(count ?? counts[0] ?? 2);
  if (count === undefined)
    problems.push(
      diagnostic(
        'board-too-large',
        ['board', 'size'],
        `board.size of ${show(size)} cannot be cut from the sheets of ${design.board.material} in ${counts.at(-1) ?? 1} segments or fewer`,
        `use sheets at least ${show(size / 2)} long inside their margins, or a smaller board`,
      ),
    );
  if (clearance < screwFromJoint)
    problems.push(
      diagnostic(
        'joint-meets-screw',
        ['cleat', 'start'],
        `the board is made in segments, whose joints come within ${show(Math.max(0, Math.round(10 * clearance) / 10))} of a cleat screw`,
        'use a larger cleat.start or a smaller cleat.width',
      ),
    );
  const spread = Math.min(...sectorsOf(joints).map(({ from, to }) => to - from));
  const plateFrom = Math.max(
    40,
    design.board.centreHole,
    joints.length > 2 ? spliceWidth / 2 / Math.tan(spread / 2) + 5 : 0,
  );
  const plateTo = Math.min(...joints.map((joint) => edgeRadius(design, joint))) - plateFromEdge;
  const bolts = boltPlaces(design, items, element(joints, 0), { plateFrom, plateTo });
  if (design.board.splice === 'bolted' && bolts.length < 2)
    problems.push(
      diagnostic(
        'splice-bolt',
        ['board', 'spliceBolt'],
        `beside a joint of the board there is room for ${bolts.length} tee nuts between ribs and cleats; two are needed`,
        'use thinner bolts, a wider board.spliceWidth, smaller cleats or fewer ribs',
      ),
    );
  problems.push(...overJoints(design));
  return { joints, sectors: sectorsOf(joints), plateFrom, plateTo, bolts, problems };
}

/** Panels over the joints of a board that comes apart have to come off. */
function overJoints({ board, panel }: Design): Diagnostic[] {
  if (board.splice !== 'bolted') return [];
  const pinned = panel.fixing === 'battens' && panel.battenScrew === undefined;
  if (panel.fixing !== 'glue' && !pinned) return [];
  return [
    diagnostic(
      'panels-over-joints',
      ['panel', pinned ? 'gap' : 'fixing'],
      `the board has to come apart, but panels ${pinned ? 'held by pinned battens' : 'glued'} over its joints would hold it together`,
      pinned
        ? 'use a panel.gap wide enough for screws, 2.5 mm or more'
        : 'use panel.fixing: pins, so that those panels are fixed with screws, or battens',
      'warning',
    ),
  ];
}

const within = (sector: Sector, angle: number): boolean => {
  const past = (((angle - sector.from) % fullTurn) + fullTurn) % fullTurn;
  return past < sector.to - sector.from;
};

/** The hub's outline inside a sector, as an open line. */
function hubPiece(design: Design, dish: Dish, sector: Sector): LineMark {
  const { halfAngle } = dish.layout;
  const reach = hubReach(design, dish);
  if (design.hub.shape === 'round') {
    const arc: Path = [
      { ...polar(reach, sector.from), bulge: bulgeOfSweep(sector.to - sector.from) },
      { ...polar(reach, sector.to), bulge: 0 },
    ];
    return lineMark(arc);
  }
  const bay = 2 * halfAngle;
  const onFlat = (angle: number): Point => polar(reach / Math.cos(angle - bay * Math.round(angle / bay)), angle);
  const corners: Point[] = [];
  for (let k = Math.ceil((sector.from - halfAngle) / bay); halfAngle + k * bay < sector.to; k++)
    corners.push(polar(reach / Math.cos(halfAngle), halfAngle + k * bay));
  const points = [onFlat(sector.from), ...corners, onFlat(sector.to)];
  // a joint through a corner of the hub names that corner once
  const distinct = points.filter(
    (p, i) => i === 0 || Math.hypot(p.x - element(points, i - 1).x, p.y - element(points, i - 1).y) > 1e-6,
  );
  return lineMark(contourFromPoints(distinct));
}

/** A scribed ring cut off at the joints of a sector. */
function clipScribe(scribe: LineMark, sector: Sector, reach: number): LineMark[] {
  if (!scribe.closed) return [scribe];
  const area = polygonArea(scribe.vertices);
  return intersectPolygons([scribe.vertices], [wedge(sector, reach)]).map((piece) =>
    Math.abs(polygonArea(piece) - area) < 1e-3 ? scribe : ringMark(contourFromPoints(piece)),
  );
}

/** The segments `board-1` ... and their splice plates. */
export function makeSegments(
  design: Design,
  dish: Dish,
  items: readonly PlanItem[],
  start: CleatStart,
  division: Division,
  mounting: readonly Point[],
  dowels: readonly Point[],
): Part[] {
  const { board } = design;
  const thickness = thicknessOf(design, board.material);
  const screws = boardScrews(design, dish, start);
  const slotted = hasCleats(design) ? [] : items.filter(({ kind }) => kind === 'rib');
  const taken = [...screws.map(({ at }) => at), ...dowels];
  const plated = plateScrews(design, division, thickness, taken, slotted);
  // a screw left of its joint goes into the segment that begins there, one on the right into that which ends there
  const platePilots = (sector: Sector): Point[] =>
    splicePilots(design) ? plated.map((at) => rotate(at, at.y > 0 ? sector.from : sector.to)) : [];
  const angleOf = ({ x, y }: Point): number => Math.atan2(y, x);
  const segments = division.sectors.map((sector, i): Part => {
    const ribs = ribNumbers(dish.layout).filter((rib) => within(sector, (ribDirectionDeg(dish, rib) * Math.PI) / 180));
    const marks = ribNumbers(dish.layout).map((rib) => ({ rib, ...ribMarks(design, dish, items, rib) }));
    const scribes = marks.flatMap(({ rib, lines: all }) =>
      all.flatMap((scribe) =>
        scribe.closed ? clipScribe(scribe, sector, 4 * board.size) : ribs.includes(rib) ? [scribe] : [],
      ),
    );
    const here = (place: Point): boolean => within(sector, angleOf(place));
    const others = division.sectors.map((_, k) => k + 1).filter((k) => k !== i + 1);
    return blank({
      id: `board-${i + 1}`,
      kind: 'board',
      name: `Backer board, segment ${i + 1} of ${division.sectors.length}`,
      material: board.material,
      thickness,
      quantity: 1,
      outline: sectorOutline(design, sector),
      ...slotsInBoard(ribs.flatMap((rib) => slotsOfRib(design, dish, ribDirectionDeg(dish, rib)))),
      pockets: ribs.flatMap((rib) => groovesOfRib(design, dish, ribDirectionDeg(dish, rib))),
      holes: [
        ...screws.flatMap(({ at }) => (here(at) ? [throughHole(at, board.pilotDiameter)] : [])),
        ...dowels.flatMap((at) => (here(at) ? [throughHole(at, design.hub.dowelDiameter)] : [])),
        ...mounting.flatMap((at) => (here(at) ? [throughHole(at, board.mountingDiameter)] : [])),
        ...platePilots(sector).map((at) => throughHole(at, board.pilotDiameter)),
        // the plate under the joint at its end belongs to the next segment
        ...division.bolts.map((at) => throughHole(rotate(at, sector.to), teeNut(board.spliceBolt).hole)),
      ],
      marks: [
        hubPiece(design, dish, sector),
        ...scribes,
        ...marks.filter(({ rib }) => ribs.includes(rib)).map(({ label }) => label),
        segmentLabel(design, dish, sector, i + 1),
      ],
      notes: [
        `Carries ribs ${ribs.join(', ')}; goes ${others.length === 1 ? 'against segment' : 'between segments'} ${neighbours(i, division.sectors.length)}.`,
        ...(board.centreHole > 0
          ? [
              `Bore the centre hole of ${inUnits(design, board.centreHole)} where the joints meet, after the segments are joined.`,
            ]
          : []),
      ],
    });
  });
  return [...segments, makeSplice(design, division, thickness, plated)];
}

function neighbours(index: number, count: number): string {
  const before = ((index + count - 1) % count) + 1;
  const after = ((index + 1) % count) + 1;
  return before === after ? String(after) : `${before} and ${after}`;
}

/** The segment's number, in the bay before its middle, near the edge, where nothing stands. */
function segmentLabel(design: Design, dish: Dish, sector: Sector, number: number): TextMark {
  const bay = 2 * dish.layout.halfAngle;
  const angle = bay * (Math.floor((sector.from + sector.to) / 2 / bay) + 0.5);
  const text = `SEGMENT ${number}`;
  const height = Math.min(8, design.board.size / 60);
  const radius = edgeRadius(design, angle) - 10 - strokeTextWidth(text, height);
  return textMark(text, polar(radius, angle), height, angle);
}
