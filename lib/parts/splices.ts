/** The plates that lie under the joints of a board in segments. */
import { contourFromPoints, distance, type Point, rectangle, rotate } from '../geometry/index.js';
import type { Design } from '../design/index.js';
import { bolt, holeIsMade, screwLengthWithin, teeNut, tipCover, woodScrew } from '../hardware/index.js';
import { blank, lineMark, type Part, throughHole } from '../part/index.js';
import { inUnits } from './blank.js';
import { clearanceAt, type PlanItem } from './plan.js';

/** Greatest distance between two screws of a plate, mm: common practice, no source. */
const plateScrewSpacing = 120;

/** Greatest distance between two bolts of a plate, mm, and wood between a tee nut and an edge: common practice, no source. */
const boltSpacing = 180;
const woodAtNut = 3;
/** Clear space round the flange of a tee nut, mm. */
const clearOfNut = 1;

/**
 * Bolts beside a joint, from the outer end of its plate inward: where the flange of a tee nut has wood to the joint and
 * clears all that stands on the board.
 */
export function boltPlaces(
  design: Design,
  items: readonly PlanItem[],
  joint: number,
  { plateFrom, plateTo }: Pick<Plates, 'plateFrom' | 'plateTo'>,
): Point[] {
  const { splice, spliceBolt, spliceWidth } = design.board;
  if (splice !== 'bolted') return [];
  const half = teeNut(spliceBolt).flange / 2;
  const free = (place: Point): boolean => clearanceAt(rotate(place, joint), items) >= half + clearOfNut;
  const found: Point[] = [];
  const end = half + woodAtNut + 10;
  for (let x = plateTo - end; x > plateFrom + end;) {
    let place: Point | null = null;
    for (let off = half + woodAtNut; place === null && off <= spliceWidth / 2 - half; off++)
      if (free({ x, y: -off })) place = { x, y: -off };
    if (place !== null) found.push(place);
    x -= place === null ? 5 : boltSpacing;
  }
  return found;
}

/** Plates under the joints of a board in segments. */
export interface Plates {
  /** Directions of the joints, ascending, radians. */
  readonly joints: readonly number[];
  /** The plates lie from this radius to that, centred on the joints. */
  readonly plateFrom: number;
  readonly plateTo: number;
  /** Bolts of a plate that comes apart: x along the joint from the axis, y to its left, where the bolted segment is right. */
  readonly bolts: readonly Point[];
}

/** Where a splice plate lies under the board: centred on a joint, its inner end `from` mm off the axis. */
export interface SplicePlace {
  /** Direction of the joint, radians. */
  readonly direction: number;
  readonly from: number;
  readonly width: number;
}

/** From a screw of a plate to one of a cleat, and to the edge of a slot, in shanks: common practice, no source. */
const fromScrew = 3;
const fromSlot = 2;
/** Steps in which a screw moves along its plate to a free place, mm. */
const along = 2;

/** Whether the screws of the plates have pilots in the board: where the tools at hand make them. */
export function splicePilots({ board, cleat, process }: Design): boolean {
  return cleat.screwDiameter > board.pilotDiameter && holeIsMade(process, board.pilotDiameter);
}

/**
 * Screws of a plate, as its bolts: at even distances on both sides of its joint, on the left alone where it is bolted,
 * moved along it where one would meet a screw of a cleat, a dowel or a slot at any joint. None where no screw that is sold is short enough.
 * @param taken screws and dowels in the board
 * @param slotted outlines over the slots and grooves of the board
 */
export function plateScrews(
  design: Design,
  { joints, plateFrom, plateTo }: Pick<Plates, 'joints' | 'plateFrom' | 'plateTo'>,
  thickness: number,
  taken: readonly Point[],
  slotted: readonly PlanItem[],
): Point[] {
  const { diameter, ...screw } = woodScrew(design.cleat.screw);
  if (screwLengthWithin({ diameter, ...screw }, 2 * thickness - tipCover) === null) return [];
  const length = plateTo - plateFrom;
  const end = Math.min(30, length / 4);
  const gaps = Math.max(1, Math.ceil((length - 2 * end) / plateScrewSpacing));
  const free = (place: Point): boolean =>
    joints.every((joint) => {
      const at = rotate(place, joint);
      return (
        taken.every((other) => distance(other, at) >= fromScrew * diameter) &&
        clearanceAt(at, slotted) >= fromSlot * diameter
      );
    });
  const sides = design.board.splice === 'bolted' ? [1] : [1, -1];
  return Array.from({ length: gaps + 1 }, (_, i) => plateFrom + end + ((length - 2 * end) * i) / gaps).flatMap((x) =>
    sides.flatMap((side) => {
      const y = (side * design.board.spliceWidth) / 4;
      for (let off = 0; off < plateScrewSpacing / 3; off += along)
        for (const at of off === 0 ? [x] : [x + off, x - off])
          if (at >= plateFrom + end / 2 && at <= plateTo - end / 2 && free({ x: at, y })) return [{ x: at, y }];
      return [];
    }),
  );
}

/** One plate under each joint. */
export function splicePlaces(design: Design, { joints, plateFrom }: Plates): SplicePlace[] {
  return joints.map((direction) => ({ direction, from: plateFrom, width: design.board.spliceWidth }));
}

/** Distance of a place from the nearest plate, 0 over one. */
export function distanceToPlates(design: Design, division: Plates): (place: Point) => number {
  const half = design.board.spliceWidth / 2;
  return (place) =>
    division.joints.reduce((min, joint) => {
      const { x, y } = rotate(place, -joint);
      const along = Math.max(division.plateFrom - x, x - division.plateTo, 0);
      return Math.min(min, Math.hypot(along, Math.max(Math.abs(y) - half, 0)));
    }, Infinity);
}

/** The plates that lie under the joints, screwed from below. */
export function makeSplice(design: Design, division: Plates, thickness: number, screwed: readonly Point[]): Part {
  const { board, cleat } = design;
  const length = division.plateTo - division.plateFrom;
  const width = board.spliceWidth;
  const bolted = board.splice === 'bolted';
  const clearance = bolt(board.spliceBolt).clearance;
  const own = ({ x, y }: Point): Point => ({ x: x - division.plateFrom, y: width / 2 - y });
  const bolts = division.bolts.map((place) => throughHole(own(place), clearance));
  const screws = screwed.map((place) => ({
    ...throughHole(own(place), cleat.screwDiameter),
    ...(cleat.headDiameter > cleat.screwDiameter ? { countersink: cleat.headDiameter } : {}),
  }));
  return blank({
    id: 'splice',
    kind: 'splice',
    name: 'Splice plate',
    material: board.material,
    thickness,
    quantity: division.joints.length,
    outline: rectangle(0, 0, length, width),
    holes: [...screws, ...bolts],
    marks: [
      lineMark(
        contourFromPoints([
          { x: 0, y: width / 2 },
          { x: length, y: width / 2 },
        ]),
      ),
    ],
    notes: [
      `${screws.length > 0 ? 'Glue and screw' : 'Glue'} it under ${bolted ? 'the edge of a segment' : 'a joint'}, the scribed line on the joint, its inner end ${inUnits(design, Math.round(division.plateFrom))} from the axis.`,
      ...(bolted ? ['The half with the bolts stays dry: the next segment lies on it.'] : []),
    ],
  });
}
