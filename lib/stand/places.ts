/** Where the stand's parts are while the dish looks up, and the bolts that hold them. */
import type { AssembledPart, AssembledPlate, Fastener } from '../assembly/index.js';
import { type Frame, toPart, toSpace } from '../assembly/frame.js';
import { rotate, type Vec3, vecAdd } from '../geometry/index.js';
import { boltOfClearance } from '../hardware/index.js';
import type { Part } from '../part/index.js';
import type { Cradle } from './cradle.js';
import type { Motion } from './pose.js';
import { sightHeight } from './sight.js';

/** A place of the cradle in the dish's axes. */
function inDish({ turn }: Cradle, [x, y, z]: Vec3): Vec3 {
  const at = rotate({ x, y }, turn);
  return [at.x, at.y, z];
}

/** Upright along x: the front looks towards -y; `back` is where its back lies. */
const alongX = (cradle: Cradle, back: number, z: number): Frame => ({
  origin: inDish(cradle, [0, back, z]),
  x: inDish(cradle, [1, 0, 0]),
  y: [0, 0, 1],
});

/** Upright along y, in the middle plane at `x`: the front looks towards +x. */
const alongY = (cradle: Cradle, x: number, z: number): Frame => ({
  origin: inDish(cradle, [x - cradle.sheet / 2, 0, z]),
  x: inDish(cradle, [0, 1, 0]),
  y: [0, 0, 1],
});

const level = (cradle: Cradle, x: number, y: number, z: number): Frame => ({
  origin: inDish(cradle, [x, y, z]),
  x: inDish(cradle, [1, 0, 0]),
  y: inDish(cradle, [0, 1, 0]),
});

function framesOf(cradle: Cradle, { id }: Part): Frame[] {
  const { arm, armY, sideY, sheet, thin, cross, beam, baseTop, ground, mountY, axis, focus, linkage } = cradle;
  switch (id) {
    case 'stand-side':
      return [alongX(cradle, sideY + sheet, baseTop), alongX(cradle, -sideY, baseTop)];
    case 'stand-arm':
      return [alongX(cradle, armY + sheet, 0), alongX(cradle, -armY, 0)];
    case 'stand-spacer':
      return Array.from({ length: cradle.spacers }, (_, k) => [
        alongX(cradle, armY + sheet + (k + 1) * thin, cradle.axis),
        alongX(cradle, -armY - sheet - k * thin, cradle.axis),
      ]).flat();
    case 'stand-cross':
      return [-1, 1].map((i) => alongY(cradle, i * cross.x, cross.top - cross.height));
    case 'stand-flange':
      // x of the part along y, so that its front looks down, onto the beam
      return [-1, 1].map((i) => ({
        origin: inDish(cradle, [i * cross.x, 0, cross.top + thin]),
        x: inDish(cradle, [0, 1, 0]),
        y: inDish(cradle, [1, 0, 0]),
      }));
    case 'stand-beam':
      return [-1, 1].map((i) => alongY(cradle, i * beam.x, baseTop));
    case 'stand-base':
      return [level(cradle, 0, 0, baseTop - thin)];
    case 'stand-pivot':
      return [level(cradle, 0, 0, ground)];
    case 'stand-sight-rear':
      return [level(cradle, 0, armY, arm.top)];
    case 'stand-sight-front':
      return [level(cradle, 0, armY, arm.top + thin + sightHeight)];
    case 'stand-lever':
      return [alongX(cradle, armY + sheet + thin, focus), alongX(cradle, -armY - sheet, focus)];
    case 'stand-link':
      return linkage === null
        ? []
        : [alongX(cradle, sideY + sheet + thin, axis), alongX(cradle, -sideY - sheet, axis)].map(
            ({ origin, ...rest }) => ({
              ...rest,
              origin: vecAdd(origin, inDish(cradle, [linkage.lever.x, 0, linkage.lever.y])),
            }),
          );
    case 'stand-packing':
      return [-1, 1].flatMap((i) => [-1, 1].map((j) => level(cradle, i * cross.x, j * mountY, cross.top + thin)));
    default:
      return [];
  }
}

/** How a part of the stand moves when the dish tilts. */
export function motionOf({ id }: Pick<Part, 'id'>): Motion {
  if (id === 'stand-lever') return 'level';
  if (id === 'stand-link') return 'link';
  return /^stand-(?:arm|cross|flange|packing|sight-rear|sight-front)$/.test(id) ? 'tilts' : 'stands';
}

/** Every copy of the stand's parts, the dish looking up. */
export function placeStand(cradle: Cradle, parts: readonly Part[]): AssembledPlate[] {
  return parts.flatMap((part) =>
    framesOf(cradle, part).map((frame, k): AssembledPlate => ({ form: 'plate', part, copy: k + 1, frame })),
  );
}

/** A plate whose hole lies on the axis of a bolt at a place, and how far before the place its far face is. */
function passedBy(plate: AssembledPlate, at: Vec3, direction: Vec3): boolean {
  const [x, y, height] = toPart(plate.frame, at);
  const { part } = plate;
  const tip = toPart(plate.frame, vecAdd(at, direction, -part.thickness));
  const through = Math.abs(tip[0] - x) + Math.abs(tip[1] - y) < 1e-6;
  const touches = Math.min(Math.abs(height), Math.abs(height - part.thickness)) < 1e-3;
  return through && touches && part.holes.some((hole) => Math.hypot(hole.x - x, hole.y - y) < 1);
}

/**
 * The bolts, read off the holes in the plates' edges: outward from an edge lie the plates that its bolt goes through.
 * @param others plates of the dish: the board's bolts go into the cross beams
 */
export function standBolts(plates: readonly AssembledPlate[], others: readonly AssembledPart[]): Fastener[] {
  const all = [
    ...plates,
    ...others.filter((one): one is AssembledPlate => one.form === 'plate' && one.part.kind === 'board'),
  ];
  return plates.flatMap((edge) =>
    edge.part.edgeHoles.map((hole): Fastener => {
      const { x, y, height, direction: angle, length, diameter } = hole;
      const start = toSpace(edge.frame, x, y, height);
      const direction = vecAdd(vecAdd([0, 0, 0], edge.frame.x, Math.cos(angle)), edge.frame.y, Math.sin(angle));
      const through: AssembledPlate[] = [];
      let entry = start;
      for (;;) {
        const next = all.find(
          (plate) => plate !== edge && !through.includes(plate) && passedBy(plate, entry, direction),
        );
        if (next === undefined) break;
        through.unshift(next);
        entry = vecAdd(entry, direction, -next.part.thickness);
      }
      const grip = through.reduce((sum, { part }) => sum + part.thickness, 0);
      const one = boltOfClearance(diameter);
      // the hole is bored for the bolt that was chosen, and a little deeper
      const sold = one.lengths.findLast((any) => any <= one.washer.thickness + grip + length) ?? null;
      return {
        joint: through.some(({ part }) => part.kind === 'board') ? 'board-to-stand' : 'stand-joint',
        item: { kind: 'bolt', size: one.size, diameter: one.diameter, length: sold, clearance: one.clearance },
        entry,
        direction,
        wood: grip + length,
        through: [...through, edge].map((part) => ({ part, passage: 'clearance' as const })),
      };
    }),
  );
}
