/** Screws, bolts and dowels where the file leaves them out, and the holes that they need. Millimetres. */
import {
  type Bolt,
  bolt,
  boltForHole,
  bolts,
  type Dowel,
  dowelRoom,
  dowelStagger,
  dowels,
  screwLengthWithin,
  type SizeSystem,
  tipCover,
  type WoodScrew,
  woodScrew,
  woodScrewWithin,
} from '../hardware/index.js';
import { inInches } from '../units/index.js';
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
    (one) => one.system === system && one.diameter <= usual.diameter && 3 * one.clearance <= 2 * hubRadius,
  );
  return smaller ?? boltForHole(0, system);
}

/** Whether the process makes a hole of that diameter: a router mills what is wider than its bit, and drills the rest. */
function canBeMade({ process }: DesignFile, diameter: number): boolean {
  if (process.kind !== 'router' || diameter >= process.toolDiameter) return true;
  return process.drillBits.some((bit) => Math.abs(bit - diameter) < 1e-6);
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
        canBeMade(file, dowel.diameter),
    );
  return within(hubRadius / 6) ?? within(hubRadius / 4) ?? null;
}

export interface HardwareSource {
  readonly cleatThickness: number;
  readonly boardThickness: number;
  readonly hubRadius: number;
  /** Null for cleats, glued or screwed as their thickness allows. */
  readonly joint: RibJoint | null;
}

/** Thread that a screw from a cleat needs in the rib, in shanks: common practice, no source. */
const ribBite = 2.5;

/** Wood between a screw's head and the end of the cleat, mm: common practice, no source. */
const woodAtHead = 2;

/** Size of a cleat in proportion to the dish; its width is what the longest screw sold still passes. */
function cleatSize(
  file: DesignFile,
  screw: WoodScrew,
  ribScrews: number,
  downScrews: number,
): Pick<Design['cleat'], 'length' | 'width'> {
  const share = Math.min(1.5, Math.max(0.5, file.dish.aperture / 1500));
  const width = Math.round(36 * share);
  // screws of both kinds at even steps, with wood between a head and the end of the cleat
  const forScrews = 2 * (ribScrews + downScrews) * (screw.headDiameter / 2 + woodAtHead);
  const longest = (screw.lengths.at(-1) ?? 0) - ribBite * screw.diameter;
  return {
    length: file.cleat.length ?? Math.max(Math.round(80 * share), Math.ceil(forScrews)),
    width: file.cleat.width ?? (ribScrews === 0 ? width : Math.max(12, Math.min(width, Math.floor(longest)))),
  };
}

function cleatSizes(
  file: DesignFile,
  screw: WoodScrew,
  { cleatThickness, boardThickness, joint }: HardwareSource,
): HardwareSizes['cleat'] {
  const glued = joint === 'glued-cleat';
  const ribScrews = file.cleat.ribScrews ?? (glued || cleatThickness < 3 * screw.diameter ? 0 : 2);
  const downLength = screwLengthWithin(screw, cleatThickness + boardThickness - tipCover);
  const downScrews = file.cleat.downScrews ?? (glued || downLength === null ? 0 : 2);
  return {
    screw: screw.size,
    screwDiameter: file.cleat.screwDiameter ?? screw.clearance,
    headDiameter: file.cleat.headDiameter ?? screw.headDiameter,
    ribScrews,
    downScrews,
    ...cleatSize(file, screw, ribScrews, downScrews),
  };
}

function mountingBolt({ board }: DesignFile, axis: Bolt, system: SizeSystem): Bolt {
  if (board.mountingBolt !== undefined) return bolt(board.mountingBolt);
  return board.mountingDiameter === undefined ? axis : boltForHole(board.mountingDiameter, system);
}

/** The hardware of a design, each size either stated or by what it is to hold. */
export function hardwareSizes(file: DesignFile, source: HardwareSource): HardwareSizes {
  const { hubRadius, cleatThickness } = source;
  const system = inInches(file.units) ? 'inch' : 'metric';
  const screw = screwOf(file, cleatThickness, system);
  const axis = hubBolt(file, hubRadius, system);
  const boltDiameter = file.hub.boltDiameter ?? axis.clearance;
  const centreHole = file.board.centreHole ?? boltDiameter;
  const mounting = mountingBolt(file, axis, system);
  const dowel = usualDowel(file, hubRadius, Math.max(boltDiameter, centreHole), system);
  const cleat = cleatSizes(file, screw, source);
  const screwed = cleat.downScrews + cleat.ribScrews > 0;
  return {
    joint: source.joint ?? (screwed ? 'screwed-cleat' : 'glued-cleat'),
    cleat,
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

/** How panels are held where the file does not say. */
export function usualFixing(
  file: DesignFile,
  panel: { readonly kind: string; readonly thickness: number },
  ribThickness: number,
): 'glue' | 'pins' {
  const wood = panel.kind === 'plywood' || panel.kind === 'hardboard' || panel.kind === 'mdf';
  const fits = panel.thickness <= pinned.panel && ribThickness >= pinned.rib;
  return wood && fits && file.reflector.material !== undefined ? 'pins' : 'glue';
}
