/** The plates that lie under the joints of a board in segments. */
import { contourFromPoints, type Point, rotate } from '../geometry/index.js';
import type { Design } from '../design/index.js';
import { screwLengthWithin, tipCover, woodScrew } from '../hardware/index.js';
import { blank, lineMark, type Part, throughHole } from '../part/index.js';
import { inUnits } from './blank.js';

/** Greatest distance between two screws of a plate, mm: common practice, no source. */
const plateScrewSpacing = 120;

/** Plates under the joints of a board in segments. */
export interface Plates {
  /** Directions of the joints, ascending, radians. */
  readonly joints: readonly number[];
  /** The plates lie from this radius to that, centred on the joints. */
  readonly plateFrom: number;
  readonly plateTo: number;
}

/** Where a splice plate lies under the board: centred on a joint, its inner end `from` mm off the axis. */
export interface SplicePlace {
  /** Direction of the joint, radians. */
  readonly direction: number;
  readonly from: number;
  readonly width: number;
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
export function makeSplice(design: Design, division: Plates, thickness: number): Part {
  const { board, cleat } = design;
  const length = division.plateTo - division.plateFrom;
  const width = board.spliceWidth;
  const end = Math.min(30, length / 4);
  const gaps = Math.max(1, Math.ceil((length - 2 * end) / plateScrewSpacing));
  const along = Array.from({ length: gaps + 1 }, (_, i) => end + ((length - 2 * end) * i) / gaps);
  const screwed = screwLengthWithin(woodScrew(cleat.screw), 2 * thickness - tipCover) !== null;
  const holes = (screwed ? along : []).flatMap((x) =>
    [width / 4, (3 * width) / 4].map((y) => ({
      ...throughHole({ x, y }, cleat.screwDiameter),
      ...(cleat.headDiameter > cleat.screwDiameter ? { countersink: cleat.headDiameter } : {}),
    })),
  );
  return blank({
    id: 'splice',
    kind: 'splice',
    name: 'Splice plate',
    material: board.material,
    thickness,
    quantity: division.joints.length,
    outline: contourFromPoints([
      { x: 0, y: 0 },
      { x: length, y: 0 },
      { x: length, y: width },
      { x: 0, y: width },
    ]),
    holes,
    marks: [
      lineMark(
        contourFromPoints([
          { x: 0, y: width / 2 },
          { x: length, y: width / 2 },
        ]),
      ),
    ],
    notes: [
      `${screwed ? 'Glue and screw' : 'Glue'} it under a joint, the scribed line on the joint, its inner end ${inUnits(design, Math.round(division.plateFrom))} from the axis.`,
    ],
  });
}
