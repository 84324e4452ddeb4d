/** Screws, bolts and dowels where the file leaves them out, and the holes that they need. Millimetres. */
import { type CleatSpace, cleatSize, type FoundCleat } from './cleat-size.js';
import {
  type Bolt,
  bolt,
  boltForHole,
  bolts,
  washerSpace,
  type Dowel,
  holeIsMade,
  dowelRoom,
  dowelStagger,
  dowels,
  pinDepth,
  pinReach,
  type SizeSystem,
  sizeSystemOf,
  woodAtPin,
  type WoodScrew,
  woodScrew,
  woodScrews,
  woodScrewWithin,
} from '../hardware/index.js';
import { type DishShape, pinFromEdge } from '../dish/index.js';
import type { Design } from './design.js';
import type { DesignFile } from './schema.js';
import type { RibJoint } from './sections/structure.js';

/** No thicker screw is taken unless it is asked for: 4 mm or no 8. */
const usualScrew = { metric: 4, inch: 0.164 * 25.4 };
const usualBolt = { metric: 'M8', inch: '5/16 in' };
const thickestDowel = 8;

export interface HardwareSizes {
  readonly cleat: Pick<
    Design['cleat'],
    'length' | 'width' | 'screw' | 'screwDiameter' | 'headDiameter' | 'ribScrews' | 'downScrews'
  >;
  readonly hub: Pick<Design['hub'], 'bolt' | 'boltDiameter' | 'dowels' | 'dowelDiameter'>;
  readonly board: Pick<Design['board'], 'pilotDiameter' | 'centreHole' | 'mountingBolt' | 'mountingDiameter'>;
  readonly ribPilot: number;
  readonly joint: RibJoint;
}

function screwOf(file: DesignFile, cleatThickness: number, system: SizeSystem): WoodScrew {
  const { screw, screwDiameter } = file.cleat;
  if (screw !== undefined) return woodScrew(screw);
  return woodScrewWithin(screwDiameter ?? Math.min(usualScrew[system], 0.3 * cleatThickness), system);
}

function hubBolt(file: DesignFile, hubRadius: number, system: SizeSystem): Bolt {
  const { bolt: size, boltDiameter } = file.hub;
  if (size !== undefined) return bolt(size);
  if (boltDiameter !== undefined && boltDiameter > 0) return boltForHole(boltDiameter, system);
  const usual = bolt(usualBolt[system]);
  // a third of the hub at most, so that wood and dowels have room
  const smaller = bolts.findLast(
    (one) =>
      one.system === system &&
      one.diameter <= usual.diameter &&
      3 * one.clearance <= 2 * hubRadius &&
      holeIsMade(file.process, one.clearance),
  );
  return smaller ?? boltForHole(0, system);
}

/** The thickest dowel of a sixth of the hub's radius, of a quarter where the tools at hand make no smaller hole. */
function usualDowel(file: DesignFile, hubRadius: number, axisHole: number, system: SizeSystem): Dowel | null {
  const fits = (diameter: number): boolean => {
    const { from, to } = dowelRoom(diameter, hubRadius, axisHole);
    return to - from >= dowelStagger;
  };
  const within = (max: number): Dowel | undefined =>
    dowels.findLast(
      (dowel) =>
        dowel.system === system &&
        dowel.diameter <= Math.min(thickestDowel, max) &&
        fits(dowel.diameter) &&
        holeIsMade(file.process, dowel.diameter),
    );
  return within(hubRadius / 6) ?? within(hubRadius / 4) ?? null;
}

/** The thickest bolt to the stand, up to that of the hub, whose washer has room between two ribs or rib and cleat. */
function usualMounting(file: DesignFile, axis: Bolt, space: CleatSpace, { size, start }: FoundCleat): Bolt {
  const turn = Math.PI / space.ribs;
  const outside = space.toeRadius;
  const fits = ({ clearance }: Bolt): boolean => {
    const needed = washerSpace(clearance);
    const widths: readonly (readonly [number, number])[] = [
      [Math.min(outside, space.boardSize / 2) - needed, size.width],
      ...(start === null ? [] : [[start - needed, 0] as const]),
    ];
    return widths.some(
      ([radius, width]) =>
        radius >= space.innerRadius + needed && 2 * radius * Math.sin(turn) - space.ribThickness - width >= 2 * needed,
    );
  };
  const sold = bolts.filter(({ system, diameter }) => system === axis.system && diameter <= axis.diameter);
  return sold.findLast((one) => fits(one) && holeIsMade(file.process, one.clearance)) ?? axis;
}

function mountingBolt(file: DesignFile, axis: Bolt, space: CleatSpace, cleat: FoundCleat): Bolt {
  const { board } = file;
  if (board.mountingBolt !== undefined) return bolt(board.mountingBolt);
  if (board.mountingDiameter !== undefined) return boltForHole(board.mountingDiameter, axis.system);
  return usualMounting(file, axis, space, cleat);
}

const systemOf = (file: DesignFile): SizeSystem => sizeSystemOf(file.units);

/** The cleats in that space; without a start where none stands in it. */
export function usualCleat(file: DesignFile, space: CleatSpace, rows: number): FoundCleat {
  return cleatSize(space, { ...file.cleat, rows }, screwOf(file, space.cleatThickness, systemOf(file)));
}

/** The hardware of a design, each size either stated or by what it is to hold. */
export function hardwareSizes(file: DesignFile, space: CleatSpace, cleat: FoundCleat): HardwareSizes {
  const { innerRadius: hubRadius, cleatThickness } = space;
  const system = systemOf(file);
  const screw = screwOf(file, cleatThickness, system);
  const axis = hubBolt(file, hubRadius, system);
  const boltDiameter = file.hub.boltDiameter ?? axis.clearance;
  const centreHole = file.board.centreHole ?? boltDiameter;
  const mounting = mountingBolt(file, axis, space, cleat);
  const dowel = usualDowel(file, hubRadius, Math.max(boltDiameter, centreHole), system);
  return {
    joint: space.joint ?? (cleat.size.downScrews + cleat.size.ribScrews > 0 ? 'screwed-cleat' : 'glued-cleat'),
    cleat: {
      screw: screw.size,
      screwDiameter: file.cleat.screwDiameter ?? screw.clearance,
      headDiameter: file.cleat.headDiameter ?? screw.headDiameter,
      ...cleat.size,
    },
    hub: {
      bolt: axis.size,
      boltDiameter,
      dowels: file.hub.dowels ?? (dowel === null && file.hub.dowelDiameter === undefined ? 0 : 2),
      dowelDiameter: file.hub.dowelDiameter ?? dowel?.diameter ?? thickestDowel,
    },
    board: {
      pilotDiameter: file.board.pilotDiameter ?? screw.pilot,
      centreHole,
      mountingBolt: mounting.size,
      mountingDiameter: file.board.mountingDiameter ?? mounting.clearance,
    },
    ribPilot: file.rib.pilotDiameter ?? screw.pilot,
  };
}

/** Thickest panel that pins hold down, and thinnest rib that takes them without splitting, mm: common practice, no source. */
const pinned = { panel: 6, rib: 9 };

/** How panels are held where the file does not say: by pins where they stay within the ribs. */
export function usualFixing(
  file: DesignFile,
  panel: { readonly kind: string; readonly thickness: number },
  shape: DishShape,
): 'glue' | 'pins' {
  const wood = ['plywood', 'osb', 'hardboard', 'mdf'].includes(panel.kind);
  if (!wood || panel.thickness > pinned.panel || shape.ribThickness < pinned.rib) return 'glue';
  const rimSlope = shape.profile.slopeAngle(shape.apertureRadius);
  const fromEdge = pinFromEdge(shape, rimSlope, pinReach(panel.thickness, pinDepth));
  return fromEdge >= woodAtPin && file.reflector.material !== undefined ? 'pins' : 'glue';
}

/** No thicker screw holds a batten unless it is asked for, mm. */
const battenScrewLimit = 3.5;

/** The screw of the battens where the file does not say; none where the gap is too narrow for any. */
export function usualBattenScrew(file: DesignFile, ribThickness: number): string | undefined {
  const { battenScrew, fixing, gap } = file.panel;
  if (battenScrew !== undefined || fixing !== 'battens') return battenScrew;
  const limit = Math.min(battenScrewLimit, ribThickness / 4, gap) + 1e-9;
  return woodScrews.findLast(
    (screw) => screw.system === systemOf(file) && screw.diameter <= limit && holeIsMade(file.process, screw.clearance),
  )?.size;
}
