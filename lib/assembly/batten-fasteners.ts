/** Screws or pins of the battens, through the gap between two panels into the rib's top edge. */
import { flatten, type Vec3, vecAdd, vecUnit } from '../geometry/index.js';
import { screwLengthFrom, tipCover } from '../hardware/index.js';
import { ringsOf } from '../part/index.js';
import { battenFixing, battenFixedAt } from '../parts/index.js';
import { directionInPart, toPart } from './frame.js';
import type { AssemblySource } from './places.js';
import { sheetPoint, sheetShape } from './sheet-shape.js';
import type { AssembledPlate, AssembledSheet, Fastener, FastenerItem } from './types.js';

/** Chords of curved edges, mm. */
const chord = 0.01;

/** How far along an axis in a rib's plane it goes in and comes out of the wood, mm. */
function woodAlong({ part, frame }: AssembledPlate, entry: Vec3, direction: Vec3): readonly [number, number] {
  const [x, y] = toPart(frame, entry);
  const [dx, dy] = directionInPart(frame, direction);
  const met = ringsOf(part)
    .flatMap((ring) => {
      const points = flatten(ring, chord, 'on');
      return points.flatMap((p, i) => {
        const q = points[(i + 1) % points.length] ?? p;
        const [a, b] = [p, q].map((at) => (at.x - x) * dy - (at.y - y) * dx) as [number, number];
        if (a > 0 === b > 0) return [];
        const share = a / (a - b);
        return [(p.x + share * (q.x - p.x) - x) * dx + (p.y + share * (q.y - p.y) - y) * dy];
      });
    })
    .filter((along) => along > 0)
    .sort((one, other) => one - other);
  return [met[0] ?? 0, met[1] ?? 0];
}

export function battenFasteners(
  { design, dish }: AssemblySource,
  placed: { readonly plates: readonly AssembledPlate[]; readonly sheets: readonly AssembledSheet[] },
): Fastener[] {
  const battens = placed.sheets.filter(({ part }) => part.kind === 'batten');
  const ribs = placed.plates.filter(({ part }) => part.kind === 'rib');
  const [first] = battens;
  const [firstRib] = ribs;
  if (first === undefined || firstRib === undefined) return [];
  const fixing = battenFixing(design, dish);
  const shape = sheetShape(design, dish, first);
  // battens are copies of one part, as the ribs are: what a screw meets is the same in each
  const chords = battenFixedAt(first.part).map((x) => {
    const at = shape.at(x);
    const [top, under] = [0, first.part.thickness].map((below) => sheetPoint(shape, first.bay, at, 0, below)) as [
      Vec3,
      Vec3,
    ];
    const [before, wood] = woodAlong(firstRib, top, vecUnit(vecAdd(under, top, -1)));
    return { at, before, wood };
  });
  // all are of one length, so the shallowest place decides
  const wood = Math.min(...chords.map((one) => one.wood));
  const item: FastenerItem =
    fixing.kind === 'pin'
      ? { ...fixing, clearance: fixing.diameter }
      : {
          kind: 'wood-screw',
          size: fixing.screw.size,
          diameter: fixing.screw.diameter,
          length: screwLengthFrom(fixing.screw, fixing.wanted, wood - tipCover),
          headDiameter: fixing.screw.headDiameter,
          clearance: fixing.screw.clearance,
          pilot: fixing.screw.pilot,
        };
  const screwed = fixing.kind === 'wood-screw';
  return battens.flatMap((batten) => {
    const rib = ribs.find((one) => one.rib === batten.rib);
    return chords.map(({ at, before }): Fastener => {
      const entry = sheetPoint(shape, batten.bay, at, 0, 0);
      const below = sheetPoint(shape, batten.bay, at, 0, 1);
      return {
        joint: 'batten-to-rib',
        item,
        entry,
        direction: vecUnit(vecAdd(below, entry, -1)),
        wood,
        before,
        through: [
          { part: batten, passage: screwed ? 'clearance' : 'tight' },
          ...(rib === undefined ? [] : [{ part: rib, passage: screwed ? ('pilot' as const) : ('tight' as const) }]),
        ],
      };
    });
  });
}
