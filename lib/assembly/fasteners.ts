/** Every fastener at its place: read off the holes of the part through which it is driven. */
import {
  bolt,
  boltLengthFor,
  dowels,
  pinDepth,
  screwLengthWithin,
  teeBoltLength,
  tipCover,
  type WoodScrew,
  woodScrew,
  woodScrewWithin,
  sizeSystemOf,
} from '../hardware/index.js';
import { panelFixing, pinPlaces, splicePilots } from '../parts/index.js';
import { battenFasteners } from './batten-fasteners.js';
import { isPlate, isSheet } from './copies.js';
import { backOf, frontOf, toPart, toSpace } from './frame.js';
import { type Vec3, vecAdd, vecDot, vecUnit } from '../geometry/index.js';
import type { AssemblySource } from './places.js';
import { sheetPoint, sheetShape } from './sheet-shape.js';
import type { Fastener, FastenerItem, AssembledPart, AssembledPlate, AssembledSheet } from './types.js';

function screwItem(screw: WoodScrew, wood: number): FastenerItem {
  const { size, diameter, headDiameter, clearance, pilot } = screw;
  return {
    kind: 'wood-screw',
    size,
    diameter,
    length: screwLengthWithin(screw, wood - tipCover),
    headDiameter,
    clearance,
    pilot,
  };
}

function boltItem(size: string, grip: number | null): FastenerItem {
  const one = bolt(size);
  return {
    kind: 'bolt',
    size,
    diameter: one.diameter,
    length: grip === null ? null : boltLengthFor(one, grip),
    clearance: one.clearance,
  };
}

function teeBoltItem(size: string, wood: number): FastenerItem {
  const { diameter, clearance } = bolt(size);
  return { kind: 'bolt', size, diameter, length: teeBoltLength(size, wood), clearance };
}

/** The name of the dowel that fits tight; its diameter where none that is sold does. */
const dowelSize = (diameter: number): string =>
  dowels.find((dowel) => Math.abs(dowel.diameter - diameter) < 0.05)?.size ?? `${diameter} mm`;

interface Placed {
  readonly plates: readonly AssembledPlate[];
  readonly sheets: readonly AssembledSheet[];
}

const ofKind = ({ plates }: Placed, kind: string): AssembledPlate[] => plates.filter(({ part }) => part.kind === kind);

/** The segment of the board that covers a place in plan, judged by its own holes: the one with the nearest. */
function boardUnder(placed: Placed, [x, y]: Vec3): AssembledPlate[] {
  let best: { readonly board: AssembledPlate; readonly off: number } | null = null;
  for (const board of ofKind(placed, 'board'))
    for (const hole of board.part.holes) {
      const off = Math.hypot(hole.x - x, hole.y - y);
      if (best === null || off < best.off) best = { board, off };
    }
  return best === null ? [] : [best.board];
}

function cleatFasteners({ design, dish }: AssemblySource, placed: Placed): Fastener[] {
  const screw = woodScrew(design.cleat.screw);
  const ribs = new Map(ofKind(placed, 'rib').map((rib) => [rib.rib, rib]));
  return ofKind(placed, 'cleat').flatMap((cleat): Fastener[] => {
    const { part, frame } = cleat;
    const down = backOf(frame);
    const intoBoard = part.holes.map(({ x, y }): Fastener => {
      const entry = toSpace(frame, x, y, part.thickness);
      const board = boardUnder(placed, entry);
      const wood = part.thickness + (board[0]?.part.thickness ?? 0);
      return {
        joint: 'cleat-to-board',
        item: screwItem(screw, wood),
        entry,
        direction: down,
        wood,
        through: [
          { part: cleat, passage: 'clearance' },
          ...board.map((one) => ({ part: one, passage: 'pilot' as const })),
        ],
      };
    });
    const rib = ribs.get(cleat.rib);
    const intoRib = part.edgeHoles.map(({ x, y, height, direction, length }): Fastener => {
      const along = vecAdd(vecAdd([0, 0, 0], frame.x, Math.cos(direction)), frame.y, Math.sin(direction));
      const wood = length + dish.ribThickness;
      return {
        joint: 'cleat-to-rib',
        item: screwItem(screw, wood),
        entry: toSpace(frame, x, y, height),
        direction: vecUnit(along),
        wood,
        through: [
          { part: cleat, passage: 'clearance' },
          ...(rib === undefined ? [] : [{ part: rib, passage: 'pilot' as const }]),
        ],
      };
    });
    return [...intoBoard, ...intoRib];
  });
}

/**
 * The bolt on the axis through all plates of the hub and the board, and the dowels: through all layers of a stack, or
 * the lower of two discs, as the ribs hold the upper one in register.
 */
function hubFasteners({ design }: AssemblySource, placed: Placed): Fastener[] {
  const plates = ofKind(placed, 'hub');
  const [lowest] = plates;
  if (lowest === undefined) return [];
  const indexed = design.hub.build === 'slotted-discs' ? [lowest] : plates;
  return lowest.part.holes.map(({ x, y, diameter }): Fastener => {
    const onAxis = Math.hypot(x, y) < 1e-6;
    const through = (onAxis ? plates : indexed).toReversed();
    const { part, frame } = through[0] ?? lowest;
    const entry = toSpace(frame, x, y, part.thickness);
    const board = boardUnder(placed, entry);
    const wood = entry[2] + (board[0]?.part.thickness ?? 0);
    const item: FastenerItem = onAxis
      ? boltItem(design.hub.bolt, wood)
      : { kind: 'dowel', size: dowelSize(diameter), diameter, length: wood, clearance: diameter };
    // segments meet on the axis: their hole is bored when they are joined
    const under =
      onAxis && !board.some((one) => one.part.holes.some((hole) => Math.hypot(hole.x, hole.y) < 1)) ? [] : board;
    return {
      joint: onAxis ? 'hub-bolt' : 'hub-dowel',
      item,
      entry,
      direction: backOf(frame),
      wood,
      through: [...through, ...under].map((one) => ({
        part: one,
        passage: onAxis ? ('clearance' as const) : ('tight' as const),
      })),
    };
  });
}

/** Bolts to the stand: their holes are those of the board that nothing else is driven through. */
function standFasteners({ design }: AssemblySource, placed: Placed, others: readonly Fastener[]): Fastener[] {
  return ofKind(placed, 'board').flatMap((board) =>
    board.part.holes.flatMap(({ x, y, diameter }): Fastener[] => {
      const entry = toSpace(board.frame, x, y, board.part.thickness);
      const taken = others.some(
        ({ entry: at, through }) =>
          through.some(({ part }) => part === board) && Math.hypot(at[0] - entry[0], at[1] - entry[1]) < diameter / 2,
      );
      if (taken || diameter !== design.board.mountingDiameter) return [];
      return [
        {
          joint: 'board-to-stand',
          item: boltItem(design.board.mountingBolt, null),
          entry,
          direction: [0, 0, -1],
          wood: Infinity,
          through: [{ part: board, passage: 'clearance' }],
        },
      ];
    }),
  );
}

/** Screws of the splice plates, from below, and bolts from below into tee nuts of the segment that comes off. */
function spliceFasteners({ design }: AssemblySource, placed: Placed): Fastener[] {
  const screw = woodScrew(design.cleat.screw);
  const { splice, spliceBolt, spliceWidth } = design.board;
  return ofKind(placed, 'splice').flatMap((plate) =>
    plate.part.holes.map(({ x, y }): Fastener => {
      const wood = 2 * plate.part.thickness;
      const entry = toSpace(plate.frame, x, y, plate.part.thickness);
      const common = { entry, direction: backOf(plate.frame), wood };
      const bolted = splice === 'bolted' && y > spliceWidth / 2;
      const under = bolted || splicePilots(design) ? boardUnder(placed, entry) : [];
      const inBoard = bolted ? ('clearance' as const) : ('pilot' as const);
      return {
        joint: bolted ? 'splice-bolt' : 'splice-to-board',
        item: bolted ? teeBoltItem(spliceBolt, wood) : screwItem(screw, wood),
        ...common,
        through: [{ part: plate, passage: 'clearance' as const }, ...under.map((part) => ({ part, passage: inBoard }))],
      };
    }),
  );
}

/**
 * Panels over a joint of a board that comes apart are held by screws that can be drawn, where others have pins: through the
 * seam into the middle of the rib where it is wide enough for them, a cup under each head; through the panel where not.
 */
function overJoints({ design, dish, splices }: AssemblySource, fasteners: readonly Fastener[]): Fastener[] {
  if (design.board.splice !== 'bolted') return [...fasteners];
  const bay = 2 * dish.layout.halfAngle;
  const bays = new Set(splices.map(({ direction }) => 1 + Math.floor(direction / bay)));
  const screw = woodScrewWithin(2.5, sizeSystemOf(design.units));
  const item = screwItem(screw, dish.panelThickness + pinDepth + tipCover);
  const inSeam = screw.diameter <= dish.seamGap;
  return fasteners.map((one) => {
    if (!bays.has(one.through[0]?.part.rib ?? 0)) return one;
    return { ...one, joint: 'panel-over-joint', item, ...(inSeam ? inMiddle(one) : {}) };
  });
}

/** A fastener moved along its panel's chord into the middle plane of its rib, and turned into that plane. */
function inMiddle({ entry, direction, through }: Fastener): Pick<Fastener, 'entry' | 'direction'> {
  const rib = through[1]?.part;
  const panel = through[0]?.part;
  if (rib?.form !== 'plate' || panel?.form !== 'sheet') return { entry, direction };
  const turn = (panel.bay.rotationDeg * Math.PI) / 180;
  const across: Vec3 = [-Math.sin(turn), Math.cos(turn), 0];
  const front = frontOf(rib.frame);
  const off = toPart(rib.frame, entry)[2] - rib.part.thickness / 2;
  const along = vecDot(direction, front);
  return {
    entry: vecAdd(entry, across, -off / vecDot(across, front)),
    direction: vecUnit(vecAdd(direction, front, -along)),
  };
}

function pinFasteners({ design, dish }: AssemblySource, placed: Placed): Fastener[] {
  const panels = placed.sheets.filter(({ part }) => part.kind === 'panel');
  const places = pinPlaces(design, dish);
  if (places.length === 0) return [];
  const ribs = ofKind(placed, 'rib');
  const fixing = panelFixing(design, dish);
  if (fixing === null) return [];
  const item: FastenerItem = { ...fixing, clearance: fixing.diameter };
  const [first] = panels;
  if (first === undefined) return [];
  // the panels are copies of one part, so that a pin's chord is the same in each
  const shape = sheetShape(design, dish, first);
  const chords = places.map((place) => ({ ...place, facet: shape.at(place.x) }));
  return panels.flatMap((panel) =>
    chords.map(({ facet, y, side }): Fastener => {
      const across = side === 'before' ? -y : y;
      const entry = sheetPoint(shape, panel.bay, facet, across, 0);
      const below = sheetPoint(shape, panel.bay, facet, across, 1);
      const rib = ribs[((panel.rib ?? 1) - 1 + (side === 'before' ? 0 : 1)) % ribs.length];
      return {
        joint: 'panel-to-rib',
        item,
        entry,
        direction: vecUnit(vecAdd(below, entry, -1)),
        wood: Infinity,
        through: [
          { part: panel, passage: 'tight' },
          ...(rib === undefined ? [] : [{ part: rib, passage: 'tight' as const }]),
        ],
      };
    }),
  );
}

/** All fasteners of the parts as placed. */
export function placeFasteners(source: AssemblySource, all: readonly AssembledPart[]): Fastener[] {
  const placed: Placed = { plates: all.filter(isPlate), sheets: all.filter(isSheet) };
  const held = [...cleatFasteners(source, placed), ...hubFasteners(source, placed)];
  const splices = spliceFasteners(source, placed);
  return [
    ...held,
    ...standFasteners(source, placed, [...held, ...splices]),
    ...splices,
    ...overJoints(source, pinFasteners(source, placed)),
    ...battenFasteners(source, placed),
  ];
}
