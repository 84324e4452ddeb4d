/** Where each copy of each part lies. */
import { rotate } from '../geometry/index.js';
import type { Dish } from '../dish/index.js';
import type { Design } from '../design/index.js';
import type { Part } from '../part/index.js';
import { type CleatStart, cleatPlaces, hubHeights, mirrorStarts, type SplicePlace } from '../parts/index.js';
import type { Frame, Vec3 } from './frame.js';
import type { AssembledPart, AssembledPlate, AssembledSheet } from './types.js';

/** What decides the places. */
export interface AssemblySource {
  readonly design: Design;
  readonly dish: Dish;
  readonly parts: readonly Part[];
  readonly cleatStart: CleatStart;
  /** Where the plates lie that join the segments of the board. */
  readonly splices: readonly SplicePlace[];
}

const level = (x: number, y: number, z: number, turn: number): Frame => ({
  origin: [x, y, z],
  x: [Math.cos(turn), Math.sin(turn), 0],
  y: [-Math.sin(turn), Math.cos(turn), 0],
});

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** A rib stands on its base, its drawing's x outward and its y up; its front then looks to the right from the hub. */
function ribFrame(dish: Dish, thickness: number, turn: number): Frame {
  const back = rotate({ x: dish.innerRadius, y: thickness / 2 }, turn);
  return { origin: [back.x, back.y, 0], x: [Math.cos(turn), Math.sin(turn), 0], y: [0, 0, 1] };
}

function ribs({ dish }: AssemblySource, part: Part): AssembledPlate[] {
  return dish.layout.ribs.map(({ rotationDeg }, k) => ({
    form: 'plate',
    part,
    copy: k + 1,
    rib: k + 1,
    frame: ribFrame(dish, part.thickness, radians(rotationDeg)),
  }));
}

function cleats({ design, dish, cleatStart }: AssemblySource, part: Part): AssembledPlate[] {
  const own = cleatPlaces(design, dish, cleatStart);
  return dish.layout.ribs.flatMap(({ rotationDeg }, k) =>
    own.map((place, i): AssembledPlate => {
      const at = rotate(place, radians(rotationDeg));
      return {
        form: 'plate',
        part,
        copy: k * own.length + i + 1,
        rib: k + 1,
        frame: level(at.x, at.y, 0, radians(rotationDeg + place.rotationDeg)),
      };
    }),
  );
}

/** As many plates of the hub as are cut, from the board upward. */
function hubPlates({ design, dish }: AssemblySource, part: Part): AssembledPlate[] {
  return hubHeights(design, dish)
    .slice(0, part.quantity)
    .map((height, k) => ({ form: 'plate', part, copy: k + 1, frame: level(0, 0, height, 0) }));
}

/** Splice plates lie under the board and are screwed from below: their fronts look down. */
function splices({ splices: places }: AssemblySource, part: Part, board: number): AssembledPlate[] {
  return places.map(({ direction, from, width }, k) => {
    const x: Vec3 = [Math.cos(direction), Math.sin(direction), 0];
    const y: Vec3 = [Math.sin(direction), -Math.cos(direction), 0];
    const corner = rotate({ x: from, y: width / 2 }, direction);
    return { form: 'plate', part, copy: k + 1, frame: { origin: [corner.x, corner.y, -board], x, y } };
  });
}

function sheets({ design, dish, parts }: AssemblySource, part: Part): AssembledSheet[] {
  const mirrors = parts.filter(({ kind }) => kind === 'reflector');
  const start = mirrorStarts(design, dish)[mirrors.indexOf(part)] ?? 0;
  const depth = part.kind === 'panel' ? dish.reflectorThickness : 0;
  return dish.layout.bays.map((bay, k) => ({ form: 'sheet', part, copy: k + 1, rib: k + 1, bay, depth, start }));
}

/** Battens lie on the panels, in the planes of the ribs. */
function battens({ dish }: AssemblySource, part: Part): AssembledSheet[] {
  return dish.layout.ribs.map((bay, k) => ({
    form: 'sheet',
    part,
    copy: k + 1,
    rib: k + 1,
    bay,
    depth: -part.thickness,
    start: 0,
  }));
}

/** Every copy of every part that the dish is made of; outlines of the user's own have no place. */
export function placeParts(source: AssemblySource): AssembledPart[] {
  const board = source.parts.find(({ kind }) => kind === 'board')?.thickness ?? 0;
  return source.parts.flatMap((part): AssembledPart[] => {
    switch (part.kind) {
      case 'rib':
        return ribs(source, part);
      case 'hub':
        return hubPlates(source, part);
      case 'cleat':
        return cleats(source, part);
      case 'board':
        return [{ form: 'plate', part, copy: 1, frame: level(0, 0, -part.thickness, 0) }];
      case 'splice':
        return splices(source, part, board);
      case 'batten':
        return battens(source, part);
      case 'panel':
      case 'reflector':
        return sheets(source, part);
      default:
        return [];
    }
  });
}
